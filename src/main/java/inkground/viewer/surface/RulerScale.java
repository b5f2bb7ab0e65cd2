package inkground.viewer.surface;

import inkground.viewer.state.LengthUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The ticks of a ruler: where they stand and which are named. Millimetres go in steps of 1, 2, 5 and so on, inches in halves,
 * quarters and eighths and in whole 1, 2, 5, as rules of wood and steel do.
 */
final class RulerScale {
    /** Least distance of two named ticks in logical pixels, so that their names do not meet. */
    static final double LEAST_NAMED_PX = 52;
    /** Least distance of two ticks in logical pixels, so that they can be told apart. */
    static final double LEAST_TICK_PX = 5;
    /** Most ticks of one ruler: a ruler of 20,000 pixels has no more. */
    private static final int MOST_TICKS = 4096;

    /** How a tick stands out. */
    enum Weight {
        /** Named. */
        NAMED,
        /** Half way between two named ones. */
        HALF,
        /** Any other. */
        FINE
    }

    /**
     * One tick.
     *
     * @param offsetPt from the zero of the ruler, in points; may be negative
     * @param weight how it stands out
     * @param name its number in the ruler's unit; empty unless {@link Weight#NAMED}
     */
    record Tick(double offsetPt, Weight weight, String name) {}

    /** A step between named ticks, in the unit, and into how many parts it may be cut, finest first. */
    private record Step(double length, int[] parts) {}

    private RulerScale() {}

    /**
     * @param fromPt where the ruler begins, from its zero
     * @param toPt where it ends; not less
     * @param pxPerPt logical pixels per point
     * @return the ticks in order
     */
    static List<Tick> ticks(LengthUnit unit, double fromPt, double toPt, double pxPerPt) {
        double pxPerUnit = pxPerPt * unit.pt(1);
        Step step = step(unit, pxPerUnit);
        int parts = parts(step, pxPerUnit);
        double tickPt = unit.pt(step.length() / parts);
        long first = (long) Math.ceil(fromPt / tickPt - 1e-9);
        long last = Math.min((long) Math.floor(toPt / tickPt + 1e-9), first + MOST_TICKS);
        List<Tick> ticks = new ArrayList<>();
        for (long i = first; i <= last; i++) {
            boolean named = Math.floorMod(i, parts) == 0;
            boolean half = parts % 2 == 0 && Math.floorMod(i, parts) == parts / 2;
            String name = named ? name(step.length() * Math.floorDiv(i, parts)) : "";
            ticks.add(new Tick(i * tickPt, named ? Weight.NAMED : half ? Weight.HALF : Weight.FINE, name));
        }
        return ticks;
    }

    private static Step step(LengthUnit unit, double pxPerUnit) {
        if (unit == LengthUnit.INCH) {
            for (double part = 1.0 / 16; part < 1; part *= 2) {
                if (part * pxPerUnit >= LEAST_NAMED_PX) {
                    return new Step(part, new int[] {8, 4, 2});
                }
            }
        }
        int[] halves = unit == LengthUnit.INCH ? new int[] {16, 8, 4, 2} : new int[] {10, 2};
        for (double ten = unit == LengthUnit.INCH ? 1 : 0.01; ; ten *= 10) {
            if (ten * pxPerUnit >= LEAST_NAMED_PX) {
                return new Step(ten, ten > 1 || unit == LengthUnit.MM ? new int[] {10, 2} : halves);
            }
            if (2 * ten * pxPerUnit >= LEAST_NAMED_PX) {
                return new Step(2 * ten, new int[] {20, 10, 4, 2});
            }
            if (5 * ten * pxPerUnit >= LEAST_NAMED_PX) {
                return new Step(5 * ten, new int[] {10, 5});
            }
        }
    }

    private static int parts(Step step, double pxPerUnit) {
        for (int parts : step.parts()) {
            if (step.length() * pxPerUnit / parts >= LEAST_TICK_PX) {
                return parts;
            }
        }
        return 1;
    }

    private static String name(double value) {
        String text = String.format(Locale.ROOT, "%.4f", value == 0 ? 0 : value);
        return text.replaceFirst("\\.?0+$", "").replace('-', '−');
    }
}
