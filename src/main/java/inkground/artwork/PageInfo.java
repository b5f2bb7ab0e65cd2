package inkground.artwork;

import inkground.geometry.Box;
import java.util.EnumMap;
import java.util.Map;

/**
 * Geometry of one page in page space: points of 1/72 in (UserUnit applied), rotation applied, origin at the top left of the
 * rotated media box, y down.
 *
 * @param number from 1
 * @param boxes all five boxes; missing ones are filled in by the standard's defaults, and all are cut by the media box
 * @param stated which boxes the file itself states
 * @param rotation clockwise, 0, 90, 180 or 270; already applied
 * @param userUnit size of a default unit in 1/72 in; already applied
 */
public record PageInfo(
        int number, Map<PageBox, Box> boxes, java.util.Set<PageBox> stated, int rotation, double userUnit) {
    /** Copies the collections and checks that all boxes are there. */
    public PageInfo {
        boxes = java.util.Collections.unmodifiableMap(new EnumMap<>(boxes));
        stated = java.util.Set.copyOf(stated);
        if (boxes.size() != PageBox.values().length) {
            throw new IllegalArgumentException("a page has five boxes");
        }
    }

    /** @return a box in page space, points */
    public Box box(PageBox which) {
        return boxes.get(which);
    }
}
