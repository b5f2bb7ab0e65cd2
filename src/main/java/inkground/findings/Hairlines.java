package inkground.findings;

import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Lines of width 0. A device draws them as thin as it can (ISO 32000-2 §8.4.3.2): a hair on a platesetter of 2,400 dpi, nothing
 * on a screen mesh.
 */
public final class Hairlines {
    private Hairlines() {}

    /** @return number of strokes of width 0 that the default layers show; a pattern's cell counts once for each use */
    public static int count(DisplayList list) {
        Set<Integer> layersOn = list.defaultLayers();
        return count(list.ops().stream()
                .filter(op -> op.origin().visibility().shows(layersOn))
                .toList());
    }

    private static int count(List<Op> ops) {
        int sum = 0;
        for (Op op : ops) {
            if (op instanceof Op.Stroke stroke) {
                sum += stroke.pen().width() == 0 ? 1 : 0;
                sum += inPattern(stroke.paint());
            } else if (op instanceof Op.Fill fill) {
                sum += inPattern(fill.paint());
            } else if (op instanceof Op.Group group) {
                sum += count(group.ops());
            }
        }
        return sum;
    }

    private static int inPattern(Paint paint) {
        return paint instanceof Paint.Tiling tiling ? count(tiling.cell()) : 0;
    }

    /** @return one line for the user, or nothing where there are none */
    public static Optional<String> note(DisplayList list) {
        int n = count(list);
        return n == 0
                ? Optional.empty()
                : Optional.of(
                        (n == 1 ? "one line has" : n + " lines have")
                                + " no width: shown one pixel wide, printed as thin as the device can, if at all; give them a width");
    }
}
