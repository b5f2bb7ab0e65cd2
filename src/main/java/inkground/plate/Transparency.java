package inkground.plate;

import inkground.artwork.BlendMode;
import inkground.artwork.Op;
import inkground.artwork.Style;
import java.util.List;

/** Tells whether operations let anything beneath them show through or take part. */
final class Transparency {
    private Transparency() {}

    static boolean in(List<Op> ops) {
        for (Op op : ops) {
            Style style = op.style();
            if (style.blend() != BlendMode.NORMAL || style.alpha() < 1 || style.softMask() != null) {
                return true;
            }
            if (op instanceof Op.Group group && in(group.ops())) {
                return true;
            }
        }
        return false;
    }
}
