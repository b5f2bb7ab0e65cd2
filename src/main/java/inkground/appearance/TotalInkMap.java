package inkground.appearance;

import inkground.ink.InkKind;
import inkground.ink.InkSet;
import java.util.List;
import java.util.Locale;

/** Where the tints of all inks but technical ones add up to more than a limit. A generated underbase is not counted. */
public final class TotalInkMap extends VectorMap {
    /** Mark of pixels above the limit. */
    public static final int ABOVE = 1;

    private final InkSet inks;
    private final double limitPercent;

    /**
     * @param inks of the planes
     * @param limitPercent largest sum of tints that is allowed, in per cent, 0 or more; one solid ink is 100
     */
    public TotalInkMap(InkSet inks, double limitPercent) {
        if (!(limitPercent >= 0)) {
            throw new IllegalArgumentException("a limit of " + limitPercent + " %");
        }
        this.inks = inks;
        this.limitPercent = limitPercent;
    }

    @Override
    public String title() {
        return "Total ink";
    }

    @Override
    public String unit() {
        return "%";
    }

    @Override
    public List<Entry> legend() {
        String limit = String.format(Locale.ROOT, "%.0f %%", limitPercent);
        return List.of(
                new Entry(
                        "up to " + limit, "The tints of all inks add up to no more than the limit.", MapPattern.DIMMED),
                new Entry(
                        "above " + limit,
                        "More ink than the limit: it may set off, dry badly or soak through.",
                        MapPattern.RISING));
    }

    @Override
    double value(int[] vector) {
        int sum = 0;
        for (int i = 0; i < inks.size(); i++) {
            sum += inks.get(i).kind() == InkKind.TECHNICAL ? 0 : vector[i];
        }
        return sum * 100 / 255.0;
    }

    @Override
    int entryOf(double percent) {
        return percent > limitPercent + 1e-9 ? ABOVE : 0;
    }
}
