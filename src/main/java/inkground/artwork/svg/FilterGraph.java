package inkground.artwork.svg;

import java.awt.Color;
import java.awt.image.renderable.RenderableImage;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.batik.ext.awt.image.renderable.ColorMatrixRable8Bit;
import org.apache.batik.ext.awt.image.renderable.ComponentTransferRable8Bit;
import org.apache.batik.ext.awt.image.renderable.CompositeRable8Bit;
import org.apache.batik.ext.awt.image.renderable.Filter;
import org.apache.batik.ext.awt.image.renderable.FilterColorInterpolation;
import org.apache.batik.ext.awt.image.renderable.FloodRable8Bit;
import org.apache.batik.ext.awt.image.renderable.GaussianBlurRable8Bit;
import org.apache.batik.ext.awt.image.renderable.PadRable;
import org.apache.batik.ext.awt.image.renderable.TileRable8Bit;

/** The library's filter primitives and what they take in. */
final class FilterGraph {
    private FilterGraph() {}

    /**
     * Puts finer primitives in place of the library's, which count linear light in 8 bits and turn dark colours into others.
     *
     * @return whether all that work in linear light are fine now; there is none for lighting, turbulence, convolution and
     *     displacement
     */
    static boolean refine(Filter filter) {
        boolean fine = true;
        Set<RenderableImage> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<RenderableImage> left = new ArrayDeque<>();
        left.push(filter);
        while (!left.isEmpty()) {
            RenderableImage next = left.pop();
            if (!seen.add(next)) {
                continue;
            }
            if (next instanceof PadRable pad) {
                pad.setSource(finer(pad));
            } else if (next instanceof TileRable8Bit tile) {
                tile.setColorSpaceLinear(false); // it mixes nothing
            }
            fine &= !(next instanceof FilterColorInterpolation c) || !c.isColorSpaceLinear() || c instanceof FineBlur;
            List<RenderableImage> sources = next.getSources();
            if (sources != null) {
                sources.stream().filter(source -> source != null).forEach(left::push);
            }
        }
        return fine;
    }

    /** @return what takes the place of the primitive in its subregion */
    private static Filter finer(PadRable pad) {
        Filter source = pad.getSource();
        if (source instanceof GaussianBlurRable8Bit blur) {
            return new FineBlur(blur);
        } else if (source instanceof CompositeRable8Bit c) {
            return pixels(pad, PixelFilter.composite(c.getCompositeRule()), c.isColorSpaceLinear());
        } else if (source instanceof ColorMatrixRable8Bit c) {
            return pixels(pad, PixelFilter.matrix(c.getMatrix()), c.isColorSpaceLinear());
        } else if (source instanceof ComponentTransferRable8Bit c) {
            PixelFilter transfer = PixelFilter.transfer(
                    c.getRedFunction(), c.getGreenFunction(), c.getBlueFunction(), c.getAlphaFunction());
            return pixels(pad, transfer, c.isColorSpaceLinear());
        }
        return flood(source);
    }

    private static Filter pixels(PadRable pad, PixelFilter filter, boolean linear) {
        List<Filter> sources = new ArrayList<>();
        for (Object source : pad.getSource().getSources()) {
            sources.add(flood((Filter) source));
        }
        return new FinePixels(sources, filter, linear, pad.getPadRect());
    }

    /** @return a flood of exactly the colour asked for: the library's are painted premultiplied in 8 bits; else what is given */
    private static Filter flood(Filter source) {
        return source instanceof FloodRable8Bit flood && flood.getFloodPaint() instanceof Color colour
                ? new FinePixels(List.of(), PixelFilter.flood(colour), false, flood.getFloodRegion())
                : source;
    }
}
