package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * Where colours differ by more than a limit, as ΔE00 [SHARMA2005]: asked from printed, or printed from displayed. Three
 * questions that are kept apart, each with its own factory.
 */
public final class ColourMap extends VectorMap {
    /** Mark of pixels beyond the limit. */
    public static final int BEYOND = 1;

    private final String title;
    private final List<Entry> legend;
    private final int inks;
    private final double limitDe00;
    private final ToDoubleFunction<int[]> difference; // of tints that are not all 0

    private ColourMap(
            String title, List<Entry> legend, int inks, double limitDe00, ToDoubleFunction<int[]> difference) {
        if (!(limitDe00 >= 0)) {
            throw new IllegalArgumentException("a limit of ΔE00 " + limitDe00);
        }
        this.title = title;
        this.legend = legend;
        this.inks = inks;
        this.limitDe00 = limitDe00;
        this.difference = difference;
    }

    /**
     * Where these inks, printed as the artwork stands, give another colour than it asks for.
     *
     * @param model the stack it is printed on
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public static ColourMap shift(StackModel model, double limitDe00) {
        AskedColours asked = AskedColours.of(model);
        return new ColourMap(
                "Colour shift",
                entries(
                        "as asked",
                        "beyond ΔE00 ",
                        limitDe00,
                        "The substrate changes the colour by more than the limit.",
                        MapPattern.FALLING),
                model.stack().inks().size(),
                limitDe00,
                tints -> Cie.deltaE00(asked.lab(tints), AskedColours.lab(model, tints)));
    }

    /**
     * Where neither the print as it stands nor any mixture of these inks gives the colour that the artwork asks for; the rule is
     * {@link InkReach}'s.
     *
     * @param model the stack it is printed on
     * @param totalInkLimit largest sum of tints in one place, above 0; 3 is 300 %
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public static ColourMap reach(StackModel model, double totalInkLimit, double limitDe00) {
        InkReach reach = new InkReach(model, totalInkLimit, limitDe00);
        return new ColourMap(
                "Ink cannot reach",
                entries(
                        "within reach",
                        "beyond ΔE00 ",
                        limitDe00,
                        "No mixture of these inks gives this colour on this substrate.",
                        MapPattern.RISING),
                model.stack().inks().size(),
                limitDe00,
                tints -> reach.of(tints).missedBy());
    }

    /**
     * Where the printed colour is outside what an sRGB display shows, by the difference to the colour shown instead.
     *
     * @param model the stack it is printed on
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public static ColourMap notDisplayed(StackModel model, double limitDe00) {
        return new ColourMap(
                "Screen cannot show",
                entries(
                        "shown",
                        "beyond ΔE00 ",
                        limitDe00,
                        "The print has a colour that this screen cannot show.",
                        MapPattern.DOTS),
                model.stack().inks().size(),
                limitDe00,
                tints -> fromDisplayed(AskedColours.lab(model, tints)));
    }

    static double fromDisplayed(Lab lab) {
        double[] xyz = Cie.labToXyz(lab);
        if (Srgb.shows(xyz[0], xyz[1], xyz[2])) {
            return 0;
        }
        int argb = Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2]);
        return Cie.deltaE00(
                lab, Srgb.toLab((argb >> 16 & 255) / 255.0, (argb >> 8 & 255) / 255.0, (argb & 255) / 255.0));
    }

    private static List<Entry> entries(
            String fine, String beyond, double limit, String explanation, MapPattern pattern) {
        return List.of(
                new Entry(fine, "The difference is within the limit, or no ink is printed.", MapPattern.DIMMED),
                new Entry(beyond + String.format(Locale.ROOT, "%.1f", limit), explanation, pattern));
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public String unit() {
        return "ΔE00";
    }

    @Override
    public List<Entry> legend() {
        return legend;
    }

    @Override
    double value(int[] vector) {
        int[] tints = new int[inks];
        return AskedColours.inside(vector, inks, tints) ? difference.applyAsDouble(tints) : 0;
    }

    @Override
    int entryOf(double de00) {
        return de00 > limitDe00 ? BEYOND : 0;
    }
}
