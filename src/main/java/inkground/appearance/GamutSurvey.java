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
 * are. Each distinct vector is judged once; a pixel on an edge counts by what is covered of it ({@link EdgeShares}). Used by one
 * thread.
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
     * @param pixels where it, or a colour like it, is asked for; parts of pixels along edges
     */
    public record Worst(Lab asked, Lab nearest, double de00, double pixels) {}

    private final StackModel model;
    private final InkReach reach;
    private final double limitDe00;
    private final int inks;
    private final VectorTable table;
    private final double[] counts = new double[MOST_VECTORS];
    private final Map<Lab, Worst> missed = new HashMap<>();
    private double pixels;
    private double beyondReach;
    private double beyondScreen;

    /**
     * @param model inks on the substrate
     * @param totalInk most ink that may lie on one spot, 1 for one solid
     * @param limitDe00 difference that is let pass
     */
    public GamutSurvey(StackModel model, double totalInk, double limitDe00) {
        this.model = model;
        this.reach = new InkReach(model, totalInk, limitDe00);
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
        EdgeShares edges = new EdgeShares(planes);
        for (int row = 0; row < planes.cellsDown(); row++) {
            for (int column = 0; column < planes.cellsAcross(); column++) {
                cancel.check();
                addCell(planes, edges, column, row, cancel);
            }
        }
    }

    private void addCell(InkPlanes planes, EdgeShares edges, int column, int row, Cancel cancel) {
        int width = Math.min(InkPlanes.CELL_W, planes.width() - column * InkPlanes.CELL_W);
        int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
        pixels += width * height;
        if (table.gather(planes, column, row)) {
            counts[indexOf(0, cancel)] += width * height;
            return;
        }
        for (int y = 0; y < height; y++) {
            int at = (row * InkPlanes.CELL_H + y) * planes.width() + column * InkPlanes.CELL_W;
            for (int x = 0; x < width; x++) {
                counts[indexOf(y * InkPlanes.CELL_W + x, cancel)] += edges.share(at + x);
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
            if (AskedColours.covered(vector, inks, tints)) {
                judge(tints, counts[i]);
            }
            counts[i] = 0;
        }
        table.clear();
    }

    private void judge(int[] tints, double count) {
        Lab printed = AskedColours.lab(model, tints);
        if (ColourMap.fromDisplayed(printed) > limitDe00) {
            beyondScreen += count;
        }
        InkReach.Answer answer = reach.of(tints);
        if (reach.beyond(answer)) {
            beyondReach += count;
            missed.merge(
                    answer.asked(),
                    new Worst(answer.asked(), answer.nearest(), answer.missedBy(), count),
                    GamutSurvey::together);
        }
    }

    /** @return the farther of two misses, with the pixels of both */
    private static Worst together(Worst one, Worst other) {
        Worst first = one.de00() >= other.de00() ? one : other;
        return new Worst(first.asked(), first.nearest(), first.de00(), one.pixels() + other.pixels());
    }

    /** What was found. */
    public Found found(Cancel cancel) {
        judge(cancel);
        List<Worst> worst = new ArrayList<>(missed.values());
        worst.sort(Comparator.comparingDouble((Worst miss) -> -miss.de00())
                .thenComparingDouble(miss -> miss.asked().L())
                .thenComparingDouble(miss -> miss.asked().a())
                .thenComparingDouble(miss -> miss.asked().b()));
        List<Worst> told = new ArrayList<>();
        for (Worst miss : worst) {
            int like = 0;
            while (like < told.size() && Cie.deltaE00(told.get(like).asked(), miss.asked()) >= ALIKE_DE00) {
                like++;
            }
            if (like == told.size()) {
                told.add(miss);
            } else {
                told.set(like, together(told.get(like), miss));
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
    public record Found(double pixels, double beyondReach, double beyondScreen, List<Worst> worst) {
        /** Copies the list. */
        public Found {
            worst = List.copyOf(worst);
        }
    }
}
