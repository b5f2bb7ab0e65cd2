package inkground.findings;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Gathers marked pixels into places: those within some millimetres of each other are one. The region is cut into squares of
 * {@value #SQUARE_MM} mm; squares with a mark that touch, corners included, belong together, so that memory depends on the size of
 * the page and not on what is marked. Not thread-safe.
 */
public final class PlaceGrid {
    private static final double SQUARE_MM = 3;

    private final int squarePx;
    private final int across;
    private final int down;
    private final Place[] squares;

    /**
     * A place, in pixels from the region's top left corner.
     *
     * @param x0 left
     * @param y0 top
     * @param x1 right end, exclusive
     * @param y1 bottom end, exclusive
     * @param least the least value marked there
     * @param leastX pixel that has it
     * @param leastY pixel that has it
     * @param sum sum of the weights marked there
     */
    public record Place(int x0, int y0, int x1, int y1, double least, int leastX, int leastY, double sum) {
        private Place with(Place o) {
            boolean own = least <= o.least;
            return new Place(
                    Math.min(x0, o.x0),
                    Math.min(y0, o.y0),
                    Math.max(x1, o.x1),
                    Math.max(y1, o.y1),
                    own ? least : o.least,
                    own ? leastX : o.leastX,
                    own ? leastY : o.leastY,
                    sum + o.sum);
        }
    }

    /**
     * @param widthPx of the region, above 0
     * @param heightPx of the region, above 0
     * @param mmPerPx millimetres in a pixel
     */
    public PlaceGrid(int widthPx, int heightPx, double mmPerPx) {
        this.squarePx = Math.max(1, (int) Math.round(SQUARE_MM / mmPerPx));
        this.across = (widthPx + squarePx - 1) / squarePx;
        this.down = (heightPx + squarePx - 1) / squarePx;
        this.squares = new Place[across * down];
    }

    /** Marks a pixel with a value, of which the least is kept, and a weight, which is added up. */
    public void add(int x, int y, double value, double weight) {
        int square = y / squarePx * across + x / squarePx;
        Place pixel = new Place(x, y, x + 1, y + 1, value, x, y, weight);
        squares[square] = squares[square] == null ? pixel : squares[square].with(pixel);
    }

    /** @return the places, the largest first */
    public List<Place> places() {
        List<Place> out = new ArrayList<>();
        Place[] left = Arrays.copyOf(squares, squares.length);
        for (int i = 0; i < left.length; i++) {
            if (left[i] != null) {
                out.add(gather(i, left));
            }
        }
        out.sort(Comparator.comparingLong((Place p) -> -(long) (p.x1 - p.x0) * (p.y1 - p.y0)));
        return out;
    }

    private Place gather(int first, Place[] left) {
        Place all = left[first];
        left[first] = null;
        Deque<Integer> open = new ArrayDeque<>(List.of(first));
        while (!open.isEmpty()) {
            int square = open.remove();
            for (int y = Math.max(0, square / across - 1); y <= Math.min(down - 1, square / across + 1); y++) {
                for (int x = Math.max(0, square % across - 1); x <= Math.min(across - 1, square % across + 1); x++) {
                    int next = y * across + x;
                    if (left[next] != null) {
                        all = all.with(left[next]);
                        left[next] = null;
                        open.add(next);
                    }
                }
            }
        }
        return all;
    }
}
