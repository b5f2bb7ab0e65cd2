package inkground.artwork;

import inkground.base.Refusal;
import java.util.Locale;

/**
 * How large a picture or an SVG is placed, where the user knows better than its file.
 *
 * @param widthMm width in mm; 0 where {@code dpi} says it, or nothing is chosen
 * @param dpi samples of a picture, or px of an SVG, per inch; 0 where {@code widthMm} says it, or nothing is chosen
 */
public record PictureSize(double widthMm, double dpi) {
    /** As the file states it. */
    public static final PictureSize STATED = new PictureSize(0, 0);

    /** Narrowest page that can be chosen. */
    public static final double LEAST_MM = 1;

    /** Widest page: 20 m, as for PDF pages. */
    public static final double MOST_MM = 20_000;

    /** Fewest samples per inch that can be chosen. */
    public static final double LEAST_DPI = 1;

    /** Most samples per inch. */
    public static final double MOST_DPI = 100_000;

    /** Rejects what is no size, and both at once. */
    public PictureSize {
        boolean none = widthMm == 0 && dpi == 0;
        if (!none && !(dpi == 0 && isWidth(widthMm)) && !(widthMm == 0 && isDpi(dpi))) {
            throw new IllegalArgumentException(widthMm + " mm, " + dpi + " samples per inch");
        }
    }

    /** @return whether a width in mm can be chosen: {@value #LEAST_MM} to {@value #MOST_MM} */
    public static boolean isWidth(double mm) {
        return mm >= LEAST_MM && mm <= MOST_MM;
    }

    private static boolean isDpi(double perInch) {
        return perInch >= LEAST_DPI && perInch <= MOST_DPI;
    }

    /**
     * A size by the width, as the user gave it.
     *
     * @param what names the figure in the refusal, which is in mm
     * @throws Refusal if it is not within the limits
     */
    public static PictureSize wide(double widthMm, String what) throws Refusal {
        if (!isWidth(widthMm)) {
            throw outside(what, LEAST_MM, MOST_MM);
        }
        return wide(widthMm);
    }

    /**
     * A size by samples per inch, as the user gave it.
     *
     * @param what names the figure in the refusal
     * @throws Refusal if it is not within the limits
     */
    public static PictureSize at(double dpi, String what) throws Refusal {
        if (!isDpi(dpi)) {
            throw outside(what, LEAST_DPI, MOST_DPI);
        }
        return at(dpi);
    }

    private static Refusal outside(String what, double least, double most) {
        return new Refusal(String.format(Locale.ROOT, "%s is %.0f to %.0f.", what, least, most));
    }

    /** @return a size by the width in mm */
    public static PictureSize wide(double widthMm) {
        return new PictureSize(widthMm, 0);
    }

    /** @return a size by samples per inch */
    public static PictureSize at(double dpi) {
        return new PictureSize(0, dpi);
    }

    /** @return whether anything is chosen */
    public boolean chosen() {
        return widthMm > 0 || dpi > 0;
    }
}
