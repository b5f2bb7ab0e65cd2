package inkground.handoff;

import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Covers the wanted samples of a raster with as few rectangles as easily found, that hold free samples as need be but none
 * that is forbidden.
 */
final class RasterCover {
    static final int FORBIDDEN = 0;
    static final int FREE = 1;
    static final int WANTED = 2;

    private final Samples samples;
    private final int most;
    private final List<Rectangle> found = new ArrayList<>();

    /** What each sample is. */
    interface Samples {
        int at(int x, int y);
    }

    private RasterCover(Samples samples, int most) {
        this.samples = samples;
        this.most = most;
    }

    /** @return rectangles that do not overlap; nothing when there would be more than {@code most} */
    static Optional<List<Rectangle>> of(int width, int height, Samples samples, int most) {
        RasterCover cover = new RasterCover(samples, most);
        cover.add(0, 0, width, height);
        return cover.found.size() > most ? Optional.empty() : Optional.of(cover.found);
    }

    private void add(int x0, int y0, int x1, int y1) {
        Rectangle box = wanted(x0, y0, x1, y1);
        if (box == null || found.size() > most) {
            return;
        } else if (!forbidden(box)) {
            found.add(box);
        } else if (box.width >= box.height) {
            int middle = box.x + box.width / 2;
            add(box.x, box.y, middle, box.y + box.height);
            add(middle, box.y, box.x + box.width, box.y + box.height);
        } else {
            int middle = box.y + box.height / 2;
            add(box.x, box.y, box.x + box.width, middle);
            add(box.x, middle, box.x + box.width, box.y + box.height);
        }
    }

    private Rectangle wanted(int x0, int y0, int x1, int y1) {
        Rectangle box = null;
        for (int y = y0; y < y1; y++) {
            for (int x = x0; x < x1; x++) {
                if (samples.at(x, y) == WANTED) {
                    if (box == null) {
                        box = new Rectangle(x, y, 1, 1);
                    } else if (!box.contains(x, y)) {
                        box.add(new Rectangle(x, y, 1, 1));
                    }
                }
            }
        }
        return box;
    }

    private boolean forbidden(Rectangle box) {
        for (int y = box.y; y < box.y + box.height; y++) {
            for (int x = box.x; x < box.x + box.width; x++) {
                if (samples.at(x, y) == FORBIDDEN) {
                    return true;
                }
            }
        }
        return false;
    }
}
