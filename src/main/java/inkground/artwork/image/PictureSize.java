package inkground.artwork.image;

/**
 * How large a picture is placed, where the user knows better than its file.
 *
 * @param widthMm width in mm; 0 where {@code dpi} says it, or nothing is chosen
 * @param dpi samples per inch; 0 where {@code widthMm} says it, or nothing is chosen
 */
public record PictureSize(double widthMm, double dpi) {
    /** As the file states it. */
    public static final PictureSize STATED = new PictureSize(0, 0);

    /** Widest page: 20 m, as for PDF pages. */
    public static final double MOST_MM = 20_000;

    /** Most samples per inch. */
    public static final double MOST_DPI = 100_000;

    /** Rejects what is no size, and both at once. */
    public PictureSize {
        boolean sound = widthMm >= 0 && widthMm <= MOST_MM && dpi >= 0 && dpi <= MOST_DPI && (widthMm == 0 || dpi == 0);
        if (!sound) {
            throw new IllegalArgumentException(widthMm + " mm, " + dpi + " samples per inch");
        }
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

    /** @return samples per inch of a picture so many samples wide */
    double dpiFor(int samplesAcross) {
        return widthMm > 0 ? samplesAcross * 25.4 / widthMm : dpi;
    }
}
