package inkground.app;

import inkground.app.PageComparison.PlaceMm;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Gathers marked pixels into places: those within some millimetres of each other are one. The region is cut into squares of
 * {@value #SQUARE_MM} mm; squares with a mark that touch, corners included, belong together. Not thread-safe.
 */
final class ChangedPlaces {
    private static final double SQUARE_MM = 3;

    private final double mmPerPx;
    private final int squarePx;
    private final int across;
    private final int down;
    private final int[][]
            extents; // per square: left, top, right, bottom of its marks, ends exclusive; null without any

    ChangedPlaces(int widthPx, int heightPx, double mmPerPx) {
        this.mmPerPx = mmPerPx;
        this.squarePx = Math.max(1, (int) Math.round(SQUARE_MM / mmPerPx));
        this.across = (widthPx + squarePx - 1) / squarePx;
        this.down = (heightPx + squarePx - 1) / squarePx;
        this.extents = new int[across * down][];
    }

    /** Adds a pixel. */
    void add(int x, int y) {
        int square = y / squarePx * across + x / squarePx;
        extents[square] = union(extents[square], new int[] {x, y, x + 1, y + 1});
    }

    private static int[] union(int[] a, int[] b) {
        if (a == null) {
            return b;
        }
        a[0] = Math.min(a[0], b[0]);
        a[1] = Math.min(a[1], b[1]);
        a[2] = Math.max(a[2], b[2]);
        a[3] = Math.max(a[3], b[3]);
        return a;
    }

    /** @return the places, the largest first */
    List<PlaceMm> boxes() {
        List<PlaceMm> out = new ArrayList<>();
        boolean[] seen = new boolean[extents.length];
        for (int i = 0; i < extents.length; i++) {
            if (extents[i] != null && !seen[i]) {
                int[] box = gather(i, seen);
                out.add(new PlaceMm(box[0] * mmPerPx, box[1] * mmPerPx, box[2] * mmPerPx, box[3] * mmPerPx));
            }
        }
        out.sort(Comparator.comparingDouble((PlaceMm p) -> -(p.x1() - p.x0()) * (p.y1() - p.y0())));
        return out;
    }

    private int[] gather(int first, boolean[] seen) {
        int[] box = extents[first].clone();
        Deque<Integer> open = new ArrayDeque<>();
        open.add(first);
        seen[first] = true;
        while (!open.isEmpty()) {
            int square = open.remove();
            box = union(box, extents[square]);
            for (int y = Math.max(0, square / across - 1); y <= Math.min(down - 1, square / across + 1); y++) {
                for (int x = Math.max(0, square % across - 1); x <= Math.min(across - 1, square % across + 1); x++) {
                    int next = y * across + x;
                    if (extents[next] != null && !seen[next]) {
                        seen[next] = true;
                        open.add(next);
                    }
                }
            }
        }
        return box;
    }
}
