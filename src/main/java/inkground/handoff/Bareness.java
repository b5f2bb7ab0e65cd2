package inkground.handoff;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.ClearedGradient;
import inkground.plate.ClearedPicture;
import inkground.plate.InkMapping;
import inkground.plate.SurfaceShading;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** How much of a painting operation is bare, and what is left of pictures and gradients that are so in part. */
final class Bareness {
    private final String page;
    private final InkMapping mapping;
    private final Cancel cancel;
    private final Map<ImageSource, Optional<ClearedPicture>> pictures = new IdentityHashMap<>();
    private final Map<Paint.Shading, Optional<ClearedGradient>> gradients = new IdentityHashMap<>();

    /** How much of something is bare. */
    enum Share {
        NONE,
        PART,
        ALL,
        /** Nothing, but it all lies beneath something bare. */
        COVERED
    }

    /** @param page what to call the page in messages */
    Bareness(String page, InkMapping mapping, Cancel cancel) {
        this.page = page;
        this.mapping = mapping;
        this.cancel = cancel;
    }

    /**
     * @param op no group
     * @throws Refusal if its colour mixes bare inks with others
     */
    Share of(Op op) throws Refusal {
        cancel.check();
        if (op instanceof Op.Image image) {
            Optional<ClearedPicture> cleared = picture(image.image());
            return cleared.isEmpty() ? Share.NONE : cleared.get().empty() ? Share.ALL : Share.PART;
        }
        Paint paint = paint(op);
        if (paint instanceof Paint.Flat flat) {
            refuseMixture(flat.colour().space(), op);
            return mapping.isBare(flat.colour()) ? Share.ALL : Share.NONE;
        }
        return paint instanceof Paint.Shading shading ? ofGradient(shading, op) : ofCell((Paint.Tiling) paint);
    }

    /** @return what anything but a group or an image paints with */
    static Paint paint(Op op) {
        if (op instanceof Op.Fill fill) {
            return fill.paint();
        } else if (op instanceof Op.Stroke stroke) {
            return stroke.paint();
        }
        return op instanceof Op.Stencil stencil ? stencil.paint() : ((Op.Shade) op).shading();
    }

    private Share ofGradient(Paint.Shading shading, Op op) throws Refusal {
        refuseMixture(shading.space(), op);
        if (SurfaceShading.is(shading)) {
            return ofSurface(shading, op);
        }
        Optional<ClearedGradient> cleared = gradient(shading);
        return cleared.isEmpty() ? Share.NONE : cleared.get().empty() ? Share.ALL : Share.PART;
    }

    /** All of it where all its colours are bare; a part cannot be told from the rest. */
    private Share ofSurface(Paint.Shading shading, Op op) throws Refusal {
        List<Colour> colours = SurfaceShading.colours(shading);
        long bare = colours.stream().filter(mapping::isBare).count();
        if (bare > 0 && bare < colours.size()) {
            String kind = shading.geometry() instanceof Paint.Triangles ? "mesh" : "that a function makes";
            throw refused("is a part of a gradient " + kind, op);
        }
        return bare > 0 ? Share.ALL : Share.NONE;
    }

    private Share ofCell(Paint.Tiling tiling) throws Refusal {
        int[] count = new int[Share.values().length];
        count(tiling.cell(), count);
        if (count[Share.PART.ordinal()] == 0 && count[Share.ALL.ordinal()] == 0) {
            return Share.NONE;
        }
        return count[Share.PART.ordinal()] == 0 && count[Share.NONE.ordinal()] == 0 ? Share.ALL : Share.PART;
    }

    private void count(Iterable<Op> ops, int[] count) throws Refusal {
        for (Op op : ops) {
            if (op instanceof Op.Group group) {
                count(group.ops(), count);
            } else {
                count[of(op).ordinal()]++;
            }
        }
    }

    private void refuseMixture(ColourSpace space, Op op) throws Refusal {
        if (mapping.mixesBare(space)) {
            throw refused("is mixed with other inks in one colour", op);
        }
    }

    /** @return what is left of a picture; nothing when it has no bare colour */
    Optional<ClearedPicture> picture(ImageSource image) throws Refusal {
        if (!pictures.containsKey(image)) {
            pictures.put(image, ClearedPicture.of(image, mapping, cancel));
        }
        return pictures.get(image);
    }

    /** @return what is left of a shading; nothing when it has no bare colour, or is neither axial nor radial */
    Optional<ClearedGradient> gradient(Paint.Shading shading) {
        return gradients.computeIfAbsent(shading, s -> ClearedGradient.of(s, mapping));
    }

    Refusal refused(String why, Op op) {
        return new Refusal(
                page + ": the bare colour " + why + " (" + op.origin().object() + ", operator "
                        + op.origin().place() + "), where it cannot be taken out without changing what is around it."
                        + " Change it there in the drawing program; nothing was written.");
    }
}
