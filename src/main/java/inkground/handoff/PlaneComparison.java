package inkground.handoff;

import inkground.plate.InkPlanes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Compares two sets of planes ink by ink, by name; an ink that only one set has is empty in the other. Edges may lie apart by a
 * pixel: clips and pictures are placed by different rules.
 */
final class PlaneComparison {
    /** Difference in 255ths from which a pixel differs: above what two clips on one edge leave. */
    private static final int FAR = 72;

    /** Share of pixels that may differ: slivers where outlines run along each other. */
    private static final double MOST_SHARE = 2e-5;

    private final Map<String, Long> far = new TreeMap<>();
    private long pixels;

    /** Adds a region, as {@code before} and {@code after} have it. */
    void add(InkPlanes before, InkPlanes after) {
        pixels += (long) before.width() * before.height();
        for (int p = 0; p < before.inks().size(); p++) {
            String name = before.inks().get(p).name();
            far.merge(name, count(before, p, after, after.inks().indexOf(name)), Long::sum);
        }
        for (int p = 0; p < after.inks().size(); p++) {
            String name = after.inks().get(p).name();
            if (before.inks().indexOf(name) < 0) {
                far.merge(name, count(after, p, before, -1), Long::sum);
            }
        }
    }

    private static long count(InkPlanes one, int plane, InkPlanes other, int otherPlane) {
        int width = one.width();
        int height = one.height();
        byte[] here = new byte[width];
        byte[][] around = new byte[3][width]; // rows above, level and below, as y % 3
        read(other, otherPlane, 0, around[0]);
        long count = 0;
        for (int y = 0; y < height; y++) {
            one.row(plane, y, here, 0);
            read(other, otherPlane, Math.min(height - 1, y + 1), around[(y + 1) % 3]);
            for (int x = 0; x < width; x++) {
                int value = here[x] & 255;
                boolean level = Math.abs(value - (around[y % 3][x] & 255)) < FAR;
                count += level || near(value, around, y == 0 ? 2 : 3, y, x) ? 0 : 1;
            }
        }
        return count;
    }

    private static void read(InkPlanes planes, int plane, int y, byte[] row) {
        if (plane >= 0) {
            planes.row(plane, y, row, 0);
        }
    }

    /** Whether a value lies among those of a pixel and its neighbours: an edge that is placed within a pixel of the other. */
    private static boolean near(int value, byte[][] around, int rows, int y, int x) {
        int least = 255;
        int most = 0;
        for (int r = 0; r < rows; r++) {
            byte[] row = around[(y + 1 - r + 3) % 3];
            for (int i = Math.max(0, x - 1); i <= Math.min(row.length - 1, x + 1); i++) {
                least = Math.min(least, row[i] & 255);
                most = Math.max(most, row[i] & 255);
            }
        }
        return value > least - FAR && value < most + FAR;
    }

    /** @return inks that differ, in words; empty when the planes agree */
    List<String> differing() {
        List<String> out = new ArrayList<>();
        far.forEach((ink, count) -> {
            if (count > Math.max(2, MOST_SHARE * pixels)) {
                out.add(ink + " in " + count + " of " + pixels + " pixels");
            }
        });
        return out;
    }
}
