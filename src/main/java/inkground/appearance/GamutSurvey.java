package inkground.appearance;

import inkground.base.Cancel;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.plate.VectorTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Counts over a page, as its planes come by, two questions that are easily taken for one: which colours the artwork asks for that
 * these inks on this substrate cannot give, and which colours of the print an sRGB screen cannot show. Approximate, as the models
 * are. Each distinct vector is judged once; edges count with what lies inside them. Used by one thread.
 */
public final class GamutSurvey {
    private static final int MOST_VECTORS = 1 << 16;
    /** Two colours less than this apart are told as one. */
    private static final double ALIKE_DE00 = 5;
    /**
     * A colour that is asked for and not reached.
     *
     * @param asked what the artwork asks for, on the print condition's own paper
     * @param nearest the colour of the mixture of these inks that is nearest, on this substrate
     * @param de00 ΔE00 between the two
     * @param pixels where it, or a colour like it, is asked for
     */
    public record Worst(Lab asked, Lab nearest, double de00, long pixels) {}

    private final StackModel model;
    private final AskedColours asked;
    private final StackGamut gamut;
    private final double limitDe00;
    private final int inks;
    private final VectorTable table;
    private final long[] counts = new long[MOST_VECTORS];
    private final Map<Lab, StackGamut.Nearest> searched = new HashMap<>();
    private final Map<Lab, Long> missed = new HashMap<>();
    private long pixels;
    private long beyondReach;
    private long beyondScreen;

    /**
     * @param model inks on the substrate
     * @param totalInk most ink that may lie on one spot, 1 for one solid
     * @param limitDe00 difference that is let pass
     */
    public GamutSurvey(StackModel model, double totalInk, double limitDe00) {
        this.model = model;
        this.asked = AskedColours.of(model);
        this.gamut = StackGamut.of(model, totalInk);
        this.limitDe00 = limitDe00;
        this.inks = model.stack().inks().size();
        this.table = new VectorTable(inks + 3, MOST_VECTORS);
    }

    /**
     * Counts a region.
     *
     * @param planes of the same inks, in the same order, as the model's stack
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public void add(InkPlanes planes, Cancel cancel) {
        for (int row = 0; row < planes.cellsDown(); row++) {
            for (int column = 0; column < planes.cellsAcross(); column++) {
                cancel.check();
                addCell(planes, column, row, cancel);
            }
        }
    }

    private void addCell(InkPlanes planes, int column, int row, Cancel cancel) {
        int width = Math.min(InkPlanes.CELL_W, planes.width() - column * InkPlanes.CELL_W);
        int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
        pixels += (long) width * height;
        if (table.gather(planes, column, row)) {
            counts[indexOf(0, cancel)] += (long) width * height;
            return;
        }
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                counts[indexOf(y * InkPlanes.CELL_W + x, cancel)]++;
            }
        }
    }

    private int indexOf(int p, Cancel cancel) {
        int index = table.indexOf(p);
        if (index < 0) {
            judge(cancel);
            index = table.indexOf(p);
        }
        return index;
    }

    /** Judges the vectors that were met, and forgets them. */
    private void judge(Cancel cancel) {
        int[] vector = new int[inks + 3];
        int[] tints = new int[inks];
        for (int i = 0; i < table.count(); i++) {
            cancel.check();
            table.vector(i, vector);
            if (AskedColours.inside(vector, inks, tints)) {
                judge(tints, counts[i]);
            }
            counts[i] = 0;
        }
        table.clear();
    }

    private void judge(int[] tints, long count) {
        Lab printed = AskedColours.lab(model, tints);
        if (ColourMap.fromDisplayed(printed) > limitDe00) {
            beyondScreen += count;
        }
        Lab wanted = asked.lab(tints);
        if (Cie.deltaE00(wanted, printed) <= limitDe00) {
            return; // printed as it stands it is reached
        }
        Lab near = StackGamut.whole(wanted);
        if (searched.computeIfAbsent(near, gamut::nearest).missedBy() > limitDe00) {
            beyondReach += count;
            missed.merge(near, count, Long::sum);
        }
    }

    /** What was found. */
    public Found found(Cancel cancel) {
        judge(cancel);
        List<Lab> worst = new ArrayList<>(missed.keySet());
        worst.sort(Comparator.comparingDouble((Lab lab) -> -searched.get(lab).missedBy())
                .thenComparingDouble(Lab::L)
                .thenComparingDouble(Lab::a)
                .thenComparingDouble(Lab::b));
        List<Worst> told = new ArrayList<>();
        for (Lab lab : worst) {
            long count = missed.get(lab);
            int like = 0;
            while (like < told.size() && Cie.deltaE00(told.get(like).asked(), lab) >= ALIKE_DE00) {
                like++;
            }
            StackGamut.Nearest nearest = searched.get(lab);
            if (like == told.size()) {
                told.add(new Worst(lab, nearest.lab(), nearest.missedBy(), count));
            } else {
                Worst first = told.get(like);
                told.set(like, new Worst(first.asked(), first.nearest(), first.de00(), first.pixels() + count));
            }
        }
        return new Found(pixels, beyondReach, beyondScreen, told);
    }

    /**
     * @param pixels of the region
     * @param beyondReach pixels that ask for a colour which the inks on the substrate miss by more than the limit
     * @param beyondScreen pixels whose printed colour an sRGB screen misses by more than the limit
     * @param worst colours that are not reached, the farthest first; those alike are told as one
     */
    public record Found(long pixels, long beyondReach, long beyondScreen, List<Worst> worst) {
        /** Copies the list. */
        public Found {
            worst = List.copyOf(worst);
        }
    }
}
