package inkground.viewer;

import inkground.geometry.Box;
import java.util.Locale;

/** In what lengths are shown. */
enum LengthUnit {
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
    String word() {
        return word;
    }

    /** @return a length in points, without the sign */
    String number(double pt) {
        return String.format(Locale.ROOT, format, pt * perPt);
    }

    /** @return a length in points, with the sign */
    String text(double pt) {
        return number(pt) + " " + word;
    }

    /** @return width × height of a box in points */
    String size(Box box) {
        return number(box.width()) + " × " + text(box.height());
    }
}
