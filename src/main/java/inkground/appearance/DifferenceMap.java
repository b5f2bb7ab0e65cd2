package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.VectorTable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Where two ways of printing a page, or two revisions of it, differ in colour by more than a limit, as ΔE00 [SHARMA2005]. */
public final class DifferenceMap implements ProofMap {
    /** Mark of pixels beyond the limit. */
    public static final int BEYOND = 1;

    private final String title;
    private final String explanation;
    private final PlaneSource other;
    private final StackModel model;
    private final StackModel otherModel;
    private final double limitDe00;

    private DifferenceMap(
            String title,
            String explanation,
            PlaneSource other,
            StackModel model,
            StackModel otherModel,
            double limitDe00) {
        if (!(limitDe00 >= 0)) {
            throw new IllegalArgumentException("a limit of ΔE00 " + limitDe00);
        }
        this.title = title;
        this.explanation = explanation;
        this.other = other;
        this.model = model;
        this.otherModel = otherModel;
        this.limitDe00 = limitDe00;
    }

    /**
     * Where a device that ignores overprint prints another colour than one that honours it.
     *
     * @param source of the planes that are marked
     * @param model the stack
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public static DifferenceMap overprint(PlaneSource source, StackModel model, double limitDe00) {
        return new DifferenceMap(
                "Overprint",
                "With overprint ignored this would be another colour.",
                (request, cancel) -> source.planes(request.overprinting(!request.overprint()), cancel),
                model,
                model,
                limitDe00);
    }

    /**
     * Where two revisions of a page differ.
     *
     * @param other gives the planes of the other revision that lie at a region of the marked one
     * @param model the stack of the planes that are marked
     * @param otherModel the stack of the other revision
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public static DifferenceMap revisions(
            PlaneSource other, StackModel model, StackModel otherModel, double limitDe00) {
        return new DifferenceMap("Changes", "The two revisions differ here.", other, model, otherModel, limitDe00);
    }

    /** @return the planes that a region is compared with */
    public InkPlanes compared(InkPlanes planes, Cancel cancel) throws Refusal {
        return other.planes(planes.request(), cancel);
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
        return List.of(
                new Entry("the same", "The colours differ by no more than the limit.", MapPattern.DIMMED),
                new Entry(String.format(Locale.ROOT, "beyond ΔE00 %.1f", limitDe00), explanation, MapPattern.FALLING));
    }

    @Override
    public List<InkPlanes> deciding(InkPlanes planes, Cancel cancel) throws Refusal {
        return List.of(planes, compared(planes, cancel));
    }

    @Override
    public double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal {
        float[] differences = differences(planes, compared(planes, cancel), cancel);
        double largest = 0;
        for (int i = 0; i < differences.length; i++) {
            largest = Math.max(largest, differences[i]);
            marks[i] = (byte) (differences[i] > limitDe00 ? BEYOND : 0);
        }
        return largest;
    }

    /**
     * @param with the {@link #compared} planes
     * @return ΔE00 of each pixel, row by row
     */
    public float[] differences(InkPlanes planes, InkPlanes with, Cancel cancel) {
        Colours one = new Colours(planes, model);
        Colours two = new Colours(with, otherModel);
        Map<Long, Float> known = new HashMap<>();
        float[] out = new float[one.numbers.length];
        for (int i = 0; i < out.length; i++) {
            if (i % planes.width() == 0) {
                cancel.check();
            }
            if (i > 0 && one.numbers[i] == one.numbers[i - 1] && two.numbers[i] == two.numbers[i - 1]) {
                out[i] = out[i - 1];
                continue;
            }
            Lab a = one.labs.get(one.numbers[i]);
            Lab b = two.labs.get(two.numbers[i]);
            long key = (long) one.numbers[i] << 32 | two.numbers[i];
            out[i] = a.equals(b) ? 0 : known.computeIfAbsent(key, k -> (float) Cie.deltaE00(a, b));
        }
        return out;
    }

    /** The colour of each pixel. */
    private static final class Colours {
        private final List<Lab> labs = new ArrayList<>();
        private final int[] numbers;

        Colours(InkPlanes planes, StackModel model) {
            this.numbers = new int[planes.width() * planes.height()];
            VectorTable.spread(
                    planes,
                    vector -> {
                        labs.add(AskedColours.lab(
                                model,
                                java.util.Arrays.copyOf(vector, planes.inks().size())));
                        return labs.size() - 1;
                    },
                    numbers);
        }
    }
}
