package inkground.viewer.state;

import inkground.geometry.Box;
import java.util.Locale;

/** In what lengths are shown. */
public enum LengthUnit {
    /** Millimetres, to a tenth. */
    MM("mm", Box.MM_PER_PT, "%.1f"),
    /** Inches, to a hundredth. */
    INCH("in", 1.0 / 72, "%.2f");

    private final String word;
    private final double perPt;
    private final String format;

    LengthUnit(String word, double perPt, String format) {
        this.word = word;
        this.perPt = perPt;
        this.format = format;
    }

    /** @return its sign */
    public String word() {
        return word;
    }

    /** @return a length of this unit in points */
    public double pt(double length) {
        return length / perPt;
    }

    /** @return a length in points, without the sign */
    public String number(double pt) {
        return String.format(Locale.ROOT, format, pt * perPt);
    }

    /** @return a length in points, with the sign */
    public String text(double pt) {
        return number(pt) + " " + word;
    }

    /** @return width × height of a box in points */
    public String size(Box box) {
        return number(box.width()) + " × " + text(box.height());
    }
}
