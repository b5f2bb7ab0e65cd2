package inkground.app;

import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Adds up, ink by ink and by name, what two revisions print and where they differ. Not thread-safe. */
final class PlaneChanges {
    /** Difference of tints, in 255ths, up to which they are the same: 2 %, the rounding of conversions. */
    static final int STEP = 5;

    private final Map<String, Count> counts = new LinkedHashMap<>();

    private static final class Count {
        private final Ink ink;
        private final int before;
        private final int after;
        private double beforePx;
        private double afterPx;
        private double changedPx;

        Count(Ink ink, int before, int after) {
            this.ink = ink;
            this.before = before;
            this.after = after;
        }
    }

    PlaneChanges(InkSet before, InkSet after) {
        for (InkSet set : List.of(before, after)) {
            for (Ink ink : set.inks()) {
                counts.putIfAbsent(ink.name(), new Count(ink, before.indexOf(ink.name()), after.indexOf(ink.name())));
            }
        }
    }

    /** Adds a part of both, of one size, all but the outermost pixels. */
    void add(InkPlanes before, InkPlanes after) {
        int width = before.width();
        float[] one = new float[width * before.height()];
        float[] two = new float[one.length];
        float[] change = new float[one.length];
        byte[] row = new byte[width];
        for (Count count : counts.values()) {
            for (int y = 0; y < before.height(); y++) {
                read(before, count.before, y, row, one);
                read(after, count.after, y, row, two);
            }
            for (int i = 0; i < change.length; i++) {
                change[i] = Math.abs(one[i] - two[i]);
            }
            for (int y = 1; y < before.height() - 1; y++) {
                for (int i = y * width + 1; i < (y + 1) * width - 1; i++) {
                    count.beforePx += share(one, width, i);
                    count.afterPx += share(two, width, i);
                    count.changedPx += change[i] > STEP ? share(change, width, i) : 0;
                }
            }
        }
    }

    /**
     * How much of a pixel at an edge counts: its value as a share of the largest around it. Inside, where neighbours are alike, it
     * is 1; where a third of a pixel is covered, a third.
     *
     * @param at index of a pixel that has neighbours on all sides
     * @return 0 to 1
     */
    static double share(float[] values, int width, int at) {
        float own = values[at];
        if (own == 0) {
            return 0;
        }
        float largest = own;
        for (int row = at - width; row <= at + width; row += width) {
            largest = Math.max(largest, Math.max(values[row - 1], Math.max(values[row], values[row + 1])));
        }
        return own / largest;
    }

    private static void read(InkPlanes planes, int plane, int y, byte[] row, float[] out) {
        row(planes, plane, y, row);
        for (int x = 0; x < row.length; x++) {
            out[y * row.length + x] = row[x] & 255;
        }
    }

    private static void row(InkPlanes planes, int plane, int y, byte[] out) {
        if (plane < 0) {
            java.util.Arrays.fill(out, (byte) 0);
        } else {
            planes.row(plane, y, out, 0);
        }
    }

    List<PageComparison.InkChange> inks(double cm2PerPx) {
        List<PageComparison.InkChange> out = new ArrayList<>();
        for (Count c : counts.values()) {
            out.add(new PageComparison.InkChange(
                    c.ink, c.beforePx * cm2PerPx, c.afterPx * cm2PerPx, c.changedPx * cm2PerPx));
        }
        return out;
    }
}
