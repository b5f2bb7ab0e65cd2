package inkground.artwork.svg;

import inkground.base.Refusal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/**
 * Size of a drawing: SVG 2 §8.2 and CSS Values and Units Level 3 §6.2.
 *
 * @param widthPx in px, 96 to the inch
 * @param heightPx in px
 * @param stated whether the file states it; otherwise one unit is taken as one px
 * @param shaped whether the file states it or at least the ratio of its sides
 */
record PageSize(double widthPx, double heightPx, boolean stated, boolean shaped) {
    /** 20 m, as for PDF pages. */
    private static final double MOST_PX = 20_000 / 25.4 * 96;

    private static final double LEAST_PX = 0.01;
    private static final double DEFAULT_WIDTH = 300;
    private static final double DEFAULT_HEIGHT = 150;
    private static final Pattern LENGTH =
            Pattern.compile("([+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?)\\s*(px|pt|pc|mm|cm|in|q|em|rem|ex)?");

    static PageSize of(Element svg, String name) throws Refusal {
        double width = length(svg, "width");
        double height = length(svg, "height");
        double[] box = viewBox(svg.getAttributeNS(null, "viewBox"));
        boolean stated = width >= 0 || height >= 0;
        if (width < 0 && height < 0) {
            width = box == null ? DEFAULT_WIDTH : box[2];
            height = box == null ? DEFAULT_HEIGHT : box[3];
        } else if (height < 0) {
            height = box == null ? DEFAULT_HEIGHT : width * box[3] / box[2];
        } else if (width < 0) {
            width = box == null ? DEFAULT_WIDTH : height * box[2] / box[3];
        }
        if (!(width >= LEAST_PX) || !(height >= LEAST_PX)) {
            throw new Refusal(name + " is a drawing of no size. Give its first element a width and a height.");
        }
        if (width > MOST_PX || height > MOST_PX) {
            throw new Refusal(String.format(
                    Locale.ROOT,
                    "%s is %.1f × %.1f m large; the limit is 20 m. Check the units of its width and height.",
                    name,
                    width / 96 * 0.0254,
                    height / 96 * 0.0254));
        }
        return new PageSize(width, height, stated, stated || box != null);
    }

    /** @return px; below 0 when not stated or in percent */
    private static double length(Element svg, String side) {
        String text = svg.getAttributeNS(null, side);
        Matcher style =
                Pattern.compile("(?<![-\\w])" + side + "\\s*:\\s*([^;!]+)").matcher(svg.getAttributeNS(null, "style"));
        if (style.find()) {
            text = style.group(1);
        }
        Matcher m = LENGTH.matcher(text.trim().toLowerCase(Locale.ROOT));
        if (!m.matches()) {
            return -1;
        }
        double perUnit =
                switch (m.group(2) == null ? "px" : m.group(2)) {
                    case "pt" -> 96 / 72.0;
                    case "pc" -> 16;
                    case "mm" -> 96 / 25.4;
                    case "cm" -> 96 / 2.54;
                    case "in" -> 96;
                    case "q" -> 96 / 101.6;
                    case "em", "rem" -> 16;
                    case "ex" -> 8;
                    default -> 1;
                };
        return Double.parseDouble(m.group(1)) * perUnit;
    }

    private static double[] viewBox(String text) {
        String[] parts = text.trim().split("[\\s,]+");
        if (parts.length != 4) {
            return null;
        }
        try {
            double[] box = new double[4];
            for (int i = 0; i < 4; i++) {
                box[i] = Double.parseDouble(parts[i]);
            }
            return box[2] > 0 && box[3] > 0 ? box : null;
        } catch (NumberFormatException e) {
            return null;
        }
    }
}
