package inkground.plate;

import inkground.artwork.Op;
import java.util.List;

/** Tells whether operations let anything beneath them show through or take part. */
final class Transparency {
    private Transparency() {}

    static boolean in(List<Op> ops) {
        for (Op op : ops) {
            if (!op.style().opaque()) {
                return true;
            }
            if (op instanceof Op.Group group && in(group.ops())) {
                return true;
            }
        }
        return false;
    }
}
