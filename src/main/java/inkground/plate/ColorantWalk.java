package inkground.plate;

import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;
import java.util.function.Consumer;

/** Finds every colorant that a list paints with; the colours of soft masks never reach the plates. */
final class ColorantWalk {
    private final Consumer<String> names;
    private final Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());

    /** @param names gets each name as often as it is met */
    ColorantWalk(Consumer<String> names) {
        this.names = names;
    }

    void visit(Op op) {
        if (op instanceof Op.Fill fill) {
            paint(fill.paint());
        } else if (op instanceof Op.Stroke stroke) {
            paint(stroke.paint());
        } else if (op instanceof Op.Image image) {
            space(image.image().space());
        } else if (op instanceof Op.Stencil stencil) {
            paint(stencil.paint());
        } else if (op instanceof Op.Shade shade) {
            paint(shade.shading());
        } else if (op instanceof Op.Group group) {
            group.ops().forEach(this::visit);
        }
    }

    private void paint(Paint paint) {
        if (!seen.add(paint)) {
            return;
        }
        if (paint instanceof Paint.Flat flat) {
            space(flat.colour().space());
        } else if (paint instanceof Paint.Shading shading) {
            space(shading.space());
        } else if (paint instanceof Paint.Tiling tiling) {
            tiling.cell().forEach(this::visit);
        }
    }

    private void space(ColourSpace space) {
        ColourSpace base = InkMapping.base(space);
        if (base instanceof ColourSpace.Separation s) {
            names.accept(s.name());
        } else if (base instanceof ColourSpace.DeviceN n) {
            n.names().forEach(names);
        }
    }
}
