package inkground.artwork;

import inkground.base.Refusal;
import inkground.geometry.Box;
import java.util.Locale;

/**
 * How large a page is by itself, for the kinds of file that can be placed in another size: pictures, which have samples, and SVG,
 * which has px.
 *
 * @param unit of what the page is measured in
 * @param stated whether the file says how large it is; else a usual size is taken, which the user may know better
 * @param across units across, more than 0
 * @param down units down, more than 0
 * @param perInchX units per inch across, as stated or taken
 * @param perInchY units per inch down; samples need not be square
 */
public record Sizing(Unit unit, boolean stated, double across, double down, double perInchX, double perInchY) {
    /** What pages are measured in. */
    public enum Unit {
        /** Samples of a picture. */
        SAMPLE("samples", "picture"),
        /** The px of SVG: 96 to the inch, unless the program that wrote it meant otherwise. */
        PX("px", "drawing");

        private final String words;
        private final String page;

        Unit(String words, String page) {
            this.words = words;
            this.page = page;
        }

        /** @return more than one of them, in words */
        public String words() {
            return words;
        }

        /** @return what consists of them, in one word */
        public String page() {
            return page;
        }
    }

    /** Rejects what is no size. */
    public Sizing {
        if (!(across > 0 && down > 0 && perInchX > 0 && perInchY > 0)) {
            throw new IllegalArgumentException(
                    across + " × " + down + " at " + perInchX + " and " + perInchY + " per inch");
        }
    }

    /** @return units per inch across, at a chosen size */
    public double perInch(PictureSize size) {
        return size.widthMm() > 0 ? across * 25.4 / size.widthMm() : size.dpi() > 0 ? size.dpi() : perInchX;
    }

    /** @return the page at a chosen size, in points from its top left */
    public Box page(PictureSize size) {
        double x = perInch(size);
        double y = x * (perInchY / perInchX);
        return new Box(0, 0, across * 72 / x, down * 72 / y);
    }

    /** @return whether the page at a chosen size is at most {@link PictureSize#MOST_MM} wide and high */
    public boolean fits(PictureSize size) {
        Box page = page(size);
        return page.widthMm() <= PictureSize.MOST_MM && page.heightMm() <= PictureSize.MOST_MM;
    }

    /**
     * The page at a chosen size, if it can be that large.
     *
     * @param name of the file
     * @throws Refusal in mm, if it does not fit
     */
    public Box page(PictureSize size, String name) throws Refusal {
        Box page = page(size);
        if (!fits(size)) {
            throw new Refusal(String.format(
                    Locale.ROOT,
                    "%s would be %.0f × %.0f mm at the size chosen: more than %.0f mm. Choose a smaller one.",
                    name,
                    page.widthMm(),
                    page.heightMm(),
                    PictureSize.MOST_MM));
        }
        return page;
    }
}
