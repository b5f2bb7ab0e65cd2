package inkground.artwork.svg;

import java.awt.Color;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.Raster;
import java.awt.image.RenderedImage;
import java.awt.image.WritableRaster;
import java.awt.image.renderable.RenderContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.batik.ext.awt.image.GraphicsUtil;
import org.apache.batik.ext.awt.image.renderable.AbstractRable;
import org.apache.batik.ext.awt.image.renderable.Filter;
import org.apache.batik.ext.awt.image.rendered.AbstractRed;
import org.apache.batik.ext.awt.image.rendered.CachableRed;
import org.apache.batik.ext.awt.image.rendered.FloodRed;
import org.apache.batik.util.HaltingThread;

/**
 * A filter primitive that makes each pixel of those at the same place. The library's own keep linear light in 8 bits, which turns
 * dark colours into others; this one keeps sRGB and counts linear light in floating point, one tile at a time.
 */
@SuppressWarnings("unchecked") // the library's lists have no types
final class FinePixels extends AbstractRable {
    private static final Color NOTHING = new Color(0, true);

    private final PixelFilter filter;
    private final boolean linear;
    private final Rectangle2D region;

    /**
     * @param sources from the undermost up; without any, all pixels are alike
     * @param linear whether it works in linear light, else in sRGB
     * @param region filter primitive subregion, in user space
     */
    FinePixels(List<?> sources, PixelFilter filter, boolean linear, Rectangle2D region) {
        super(sources);
        this.filter = filter;
        this.linear = linear;
        this.region = region;
    }

    @Override
    public Rectangle2D getBounds2D() {
        return (Rectangle2D) region.clone();
    }

    @Override
    public RenderedImage createRendering(RenderContext context) {
        Rectangle2D asked = region;
        if (context.getAreaOfInterest() != null) {
            asked = asked.createIntersection(context.getAreaOfInterest().getBounds2D());
        }
        Rectangle device = context.getTransform().createTransformedShape(asked).getBounds();
        if (asked.isEmpty() || device.isEmpty()) {
            return null;
        }
        List<CachableRed> rendered = new ArrayList<>();
        for (Object source : getSources()) {
            RenderedImage image = ((Filter) source).createRendering(context);
            rendered.add(
                    image == null
                            ? new FloodRed(device, NOTHING)
                            : GraphicsUtil.convertTosRGB(GraphicsUtil.wrap(image)));
        }
        return new Red(rendered, device);
    }

    private final class Red extends AbstractRed {
        private static final int TILE = 256;

        private final List<CachableRed> sources;

        Red(List<CachableRed> sources, Rectangle bounds) {
            super(
                    sources,
                    bounds,
                    ColorModel.getRGBdefault(),
                    ColorModel.getRGBdefault()
                            .createCompatibleSampleModel(Math.min(TILE, bounds.width), Math.min(TILE, bounds.height)),
                    bounds.x,
                    bounds.y,
                    null);
            this.sources = sources;
        }

        @Override
        public WritableRaster copyData(WritableRaster to) {
            Rectangle area = to.getBounds().intersection(getBounds());
            if (area.isEmpty()) {
                return to;
            }
            int[][] argb = sources.stream().map(source -> pixels(source, area)).toArray(int[][]::new);
            float[][] in = new float[argb.length][4];
            float[] out = new float[4];
            int[] row = new int[area.width];
            boolean flat = in.length == 0;
            if (flat) {
                filter.apply(in, out);
                Arrays.fill(row, encode(out));
            }
            for (int y = 0; y < area.height && !HaltingThread.hasBeenHalted(); y++) {
                for (int x = 0; x < area.width && !flat; x++) {
                    for (int s = 0; s < in.length; s++) {
                        decode(argb[s][y * area.width + x], in[s]);
                    }
                    filter.apply(in, out);
                    row[x] = encode(out);
                }
                to.setDataElements(area.x, area.y + y, area.width, 1, row);
            }
            return to;
        }
    }

    /** @return what an image shows of an area, not premultiplied; beyond its bounds there is nothing */
    private static int[] pixels(CachableRed source, Rectangle area) {
        int[] argb = new int[area.width * area.height];
        Rectangle part = area.intersection(source.getBounds());
        if (!part.isEmpty()) {
            ColorModel model = source.getColorModel();
            WritableRaster raster = Raster.createWritableRaster(
                    source.getSampleModel().createCompatibleSampleModel(part.width, part.height), part.getLocation());
            source.copyData(raster);
            WritableRaster atOrigin =
                    Raster.createWritableRaster(raster.getSampleModel(), raster.getDataBuffer(), new Point(0, 0));
            int first = (part.y - area.y) * area.width + part.x - area.x;
            new BufferedImage(model, atOrigin, model.isAlphaPremultiplied(), null)
                    .getRGB(0, 0, part.width, part.height, argb, first, area.width);
        }
        return argb;
    }

    private void decode(int argb, float[] pixel) {
        float alpha = (argb >>> 24) / 255f;
        for (int i = 0; i < 3; i++) {
            pixel[i] = alpha * Levels.decoded(argb >> 16 - 8 * i & 255, linear) / Levels.ONE;
        }
        pixel[3] = alpha;
    }

    private int encode(float[] pixel) {
        float alpha = Math.min(1, Math.max(0, pixel[3]));
        int argb = Math.round(255 * alpha) << 24;
        for (int i = 0; i < 3 && argb != 0; i++) {
            float colour = Math.min(1, Math.max(0, pixel[i] / alpha));
            argb |= Levels.encoded(colour, linear) << 16 - 8 * i;
        }
        return argb;
    }
}
