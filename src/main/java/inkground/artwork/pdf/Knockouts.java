package inkground.artwork.pdf;

import inkground.artwork.BlendMode;
import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Style;
import inkground.geometry.Box;
import java.util.List;

/**
 * Things that are one object though they are painted in parts: fill and stroke of one path (ISO 32000-2 §11.7.4.4), the
 * glyphs of a text object (§9.3.8). Where they are transparent, a part replaces those beneath it instead of blending.
 */
final class Knockouts {
    private Knockouts() {}

    /** @return whether what lies beneath can be seen through it */
    static boolean transparent(Style style) {
        return style.alpha() < 1 || style.softMask() != null || style.blend() != BlendMode.NORMAL;
    }

    /** @return whether painting the parts one by one differs from painting them as one */
    static boolean matters(List<Op> parts) {
        return parts.size() > 1 && parts.stream().anyMatch(op -> op instanceof Op.Group || transparent(op.style()));
    }

    /** @return a non-isolated knockout group of the parts */
    static Op group(List<Op> parts, Clip clip, Origin origin) {
        return group(parts, true, Style.PLAIN, clip, origin);
    }

    /** Fill and stroke of one path as one object; where both overprint, by one alpha, the stroke overprints the fill too. */
    static Op group(Op.Fill fill, Op.Stroke stroke, Clip clip, Origin origin) {
        Style style = fill.style();
        if (!style.overprint()
                || !stroke.style().overprint()
                || style.alpha() != stroke.style().alpha()) {
            return group(List.of(fill, stroke), clip, origin);
        }
        List<Op> parts = List.of(
                new Op.Fill(
                        fill.path(), fill.rule(), fill.paint(), fill.text(), alone(style), fill.clip(), fill.origin()),
                new Op.Stroke(
                        stroke.path(),
                        stroke.pen(),
                        stroke.penToPage(),
                        stroke.paint(),
                        stroke.text(),
                        alone(stroke.style()),
                        stroke.clip(),
                        stroke.origin()));
        Style whole = new Style(style.alpha(), style.blend(), false, 0, style.softMask(), style.alphaIsShape());
        return group(parts, false, whole, clip, origin);
    }

    /** What of a style is not the group's: its overprint. */
    private static Style alone(Style style) {
        return new Style(1, BlendMode.NORMAL, style.overprint(), style.overprintMode(), null, false, style.transfer());
    }

    private static Op group(List<Op> parts, boolean knockout, Style style, Clip clip, Origin origin) {
        Box bounds = parts.stream().map(Op::bounds).reduce(Box::union).orElse(Box.EMPTY);
        return new Op.Group(parts, bounds, false, knockout, null, style, clip, origin);
    }
}
