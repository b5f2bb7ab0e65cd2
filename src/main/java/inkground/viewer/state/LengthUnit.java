package inkground.viewer.state;

import inkground.geometry.Box;
import java.util.Locale;
import java.util.OptionalDouble;

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

    /** @return a length in millimetres, with the sign */
    public String textOfMm(double mm) {
        return text(mm / Box.MM_PER_PT);
    }

    /** @return a length in millimetres, without the sign */
    public String numberOfMm(double mm) {
        return number(mm / Box.MM_PER_PT);
    }

    /**
     * Reads a length as a user types it: a number in this unit, or in the one written after it; with a point or a comma.
     *
     * @return millimetres; empty for what is no length
     */
    public OptionalDouble parseMm(String text) {
        String words = text.strip().toLowerCase(Locale.ROOT).replace(',', '.').replace('−', '-');
        LengthUnit unit = this;
        for (LengthUnit other : values()) {
            if (words.endsWith(other.word)) {
                unit = other;
                words = words.substring(0, words.length() - other.word.length()).strip();
            }
        }
        if (!words.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)")) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Double.parseDouble(words) / unit.perPt * Box.MM_PER_PT);
    }

    /** @return width × height of a box in points */
    public String size(Box box) {
        return number(box.width()) + " × " + text(box.height());
    }
}
