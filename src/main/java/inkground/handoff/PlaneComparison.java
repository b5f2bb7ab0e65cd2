package inkground.handoff;

import inkground.plate.InkPlanes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Compares two sets of planes ink by ink, by name; an ink that only one set has is empty in the other. */
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
        byte[] a = new byte[one.width()];
        byte[] b = new byte[one.width()];
        long count = 0;
        for (int y = 0; y < one.height(); y++) {
            one.row(plane, y, a, 0);
            if (otherPlane >= 0) {
                other.row(otherPlane, y, b, 0);
            }
            for (int x = 0; x < a.length; x++) {
                count += Math.abs((a[x] & 255) - (b[x] & 255)) >= FAR ? 1 : 0;
            }
        }
        return count;
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
