package inkground.plate;

import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Tells whether a group holds colours that become others in its blending space, though nothing in it may be
 * transparent: ISO 32000-2 §11.7.2 brings every colour to the group's space before it is painted.
 */
final class ForeignColours {
    private final GroupMapping.Kind kind; // null for process tints
    private final InkMapping inks;
    private final Map<ColourSpace, Boolean> known = new HashMap<>();

    ForeignColours(GroupMapping.Kind kind, InkMapping inks) {
        this.kind = kind;
        this.inks = inks;
    }

    boolean in(List<Op> ops) {
        for (Op op : ops) {
            if (in(op)) {
                return true;
            }
        }
        return false;
    }

    private boolean in(Op op) {
        if (op instanceof Op.Fill fill) {
            return in(fill.paint());
        } else if (op instanceof Op.Stroke stroke) {
            return in(stroke.paint());
        } else if (op instanceof Op.Stencil stencil) {
            return in(stencil.paint());
        } else if (op instanceof Op.Shade shade) {
            return in(shade.shading());
        } else if (op instanceof Op.Image image) {
            return foreign(image.image().space());
        }
        return in(((Op.Group) op).ops());
    }

    private boolean in(Paint paint) {
        if (paint instanceof Paint.Flat flat) {
            return foreign(flat.colour().space());
        } else if (paint instanceof Paint.Shading shading) {
            return foreign(shading.space());
        }
        return in(((Paint.Tiling) paint).cell());
    }

    private boolean foreign(ColourSpace space) {
        return known.computeIfAbsent(space instanceof ColourSpace.Indexed indexed ? indexed.base() : space, base -> {
            if (base instanceof ColourSpace.Separation || base instanceof ColourSpace.DeviceN) {
                int[] planes = inks.direct(base); // spot planes are as they are in every group: §11.7.3
                return planes == null || kind != null && Arrays.stream(planes).anyMatch(p -> p >= 0 && p < 4);
            }
            return base.components() != components();
        });
    }

    private int components() {
        if (kind == null) {
            return 4;
        }
        return kind == GroupMapping.Kind.GREY ? 1 : 3;
    }
}
