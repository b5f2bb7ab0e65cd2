package inkground.artwork;

import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.util.List;

/** One painting operation. All geometry ends in page space: points, y down, see {@link PageInfo}. Immutable. */
public sealed interface Op {
    /** @return where it comes from */
    Origin origin();

    /** @return what it is clipped to; null for nothing */
    Clip clip();

    /** @return how it meets what is there */
    Style style();

    /** @return box in page space outside of which it cannot paint, clip not counted */
    Box bounds();

    /**
     * Fills a path.
     *
     * @param path in page space
     * @param rule inside
     * @param paint with what
     * @param text set when the path was type, else null
     */
    record Fill(Outline path, FillRule rule, Paint paint, TextUse text, Style style, Clip clip, Origin origin)
            implements Op {
        @Override
        public Box bounds() {
            return path.bounds();
        }
    }

    /**
     * Strokes a path.
     *
     * @param path in the space of the pen
     * @param pen in the same space
     * @param penToPage from that space to page space
     * @param paint with what
     * @param text set when the path was type, else null
     */
    record Stroke(
            Outline path, Pen pen, Matrix penToPage, Paint paint, TextUse text, Style style, Clip clip, Origin origin)
            implements Op {
        @Override
        public Box bounds() {
            // A miter reaches miterLimit half-widths, a square cap √2 half-widths beyond the path; 1 pt for hairlines.
            double reach = pen.width()
                    / 2
                    * (pen.join() == Pen.Join.MITER ? Math.max(Math.sqrt(2), pen.miterLimit()) : Math.sqrt(2));
            return penToPage.bounds(path.bounds().grow(reach)).grow(1);
        }
    }

    /**
     * Paints an image.
     *
     * @param image samples, read when needed
     * @param unitToPage from the unit square, whose top left (0, 1) is the image's first sample as in ISO 32000-2 §8.9.3, to
     *     page space
     */
    record Image(ImageSource image, Matrix unitToPage, Style style, Clip clip, Origin origin) implements Op {
        @Override
        public Box bounds() {
            return unitToPage.bounds(new Box(0, 0, 1, 1));
        }
    }

    /**
     * Paints through a one-bit image mask.
     *
     * @param mask an image source of one component whose samples are 255 where paint goes, 0 elsewhere
     * @param unitToPage as for {@link Image}
     * @param paint with what
     */
    record Stencil(ImageSource mask, Matrix unitToPage, Paint paint, Style style, Clip clip, Origin origin)
            implements Op {
        @Override
        public Box bounds() {
            return unitToPage.bounds(new Box(0, 0, 1, 1));
        }
    }

    /**
     * Paints a shading over everything inside the clip.
     *
     * @param shading what
     * @param bounds box of the clip or of the page
     */
    record Shade(Paint.Shading shading, Box bounds, Style style, Clip clip, Origin origin) implements Op {}

    /**
     * A transparency group, or a form that is one unit: ISO 32000-2 §11.6.6. Forms without a group dictionary are recorded
     * in line, not as groups.
     *
     * @param ops children in painting order; their clips include the group's
     * @param bounds box in page space
     * @param isolated starts from nothing instead of the backdrop
     * @param knockout later children replace earlier ones
     * @param space blending colour space, by the rendering intent in force when the group is painted (§11.7.5.3); null to
     *     inherit
     */
    record Group(
            List<Op> ops,
            Box bounds,
            boolean isolated,
            boolean knockout,
            ColourSpace space,
            Style style,
            Clip clip,
            Origin origin)
            implements Op {
        /** Copies the list. */
        public Group {
            ops = List.copyOf(ops);
        }
    }
}
