package inkground.artwork.svg;

import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderContext;
import org.apache.batik.ext.awt.image.GraphicsUtil;
import org.apache.batik.ext.awt.image.renderable.GaussianBlurRable8Bit;
import org.apache.batik.ext.awt.image.rendered.AffineRed;
import org.apache.batik.ext.awt.image.rendered.BufferedImageCachableRed;
import org.apache.batik.ext.awt.image.rendered.CachableRed;
import org.apache.batik.ext.awt.image.rendered.TranslateRed;
import org.apache.batik.util.HaltingThread;

/**
 * Gaussian blur: Filter Effects Level 1 §9.14. The library's own works on linear light in 8 bits, which turns dark colours into
 * others, and at few pixels where the blur is wide; this one has 16 bits and all pixels.
 */
@SuppressWarnings("unchecked") // the library's lists have no types
final class FineBlur extends GaussianBlurRable8Bit {
    FineBlur(GaussianBlurRable8Bit same) {
        super(same.getSource(), same.getStdDeviationX(), same.getStdDeviationY());
        setColorSpaceLinear(same.isColorSpaceLinear());
    }

    @Override
    public RenderedImage createRendering(RenderContext context) {
        AffineTransform toDevice = context.getTransform();
        double scaleX = Math.hypot(toDevice.getScaleX(), toDevice.getShearY());
        double scaleY = Math.hypot(toDevice.getScaleY(), toDevice.getShearX());
        Rectangle2D asked = getBounds2D();
        if (context.getAreaOfInterest() != null) {
            asked = asked.createIntersection(context.getAreaOfInterest().getBounds2D());
        }
        if (!(scaleX > 0) || !(scaleY > 0) || asked.isEmpty()) {
            return null;
        }
        LineBlur across = new LineBlur(getStdDeviationX() * scaleX);
        LineBlur down = new LineBlur(getStdDeviationY() * scaleY);
        AffineTransform scale = AffineTransform.getScaleInstance(scaleX, scaleY);
        Rectangle out = scale.createTransformedShape(asked).getBounds();
        out.grow(1, 1); // for what interpolates
        Rectangle work = new Rectangle(out);
        work.grow(across.reach(), down.reach());
        Rectangle2D needed =
                new Rectangle2D.Double(work.x / scaleX, work.y / scaleY, work.width / scaleX, work.height / scaleY);
        RenderedImage source =
                getSource().createRendering(new RenderContext(scale, needed, context.getRenderingHints()));
        if (source == null) {
            return null;
        }
        BufferedImage blurred = blur(pixels(source, work), across, down);
        CachableRed placed = new TranslateRed(new BufferedImageCachableRed(blurred), work.x, work.y);
        AffineTransform rest = new AffineTransform(toDevice);
        rest.scale(1 / scaleX, 1 / scaleY);
        return rest.isIdentity() ? placed : new AffineRed(placed, rest, context.getRenderingHints());
    }

    /** @return what an image shows of a rectangle, sRGB */
    private static BufferedImage pixels(RenderedImage source, Rectangle of) {
        BufferedImage out = new BufferedImage(of.width, of.height, BufferedImage.TYPE_INT_ARGB_PRE);
        CachableRed srgb = GraphicsUtil.convertTosRGB(GraphicsUtil.wrap(source));
        var g = GraphicsUtil.createGraphics(out);
        g.translate(-of.x, -of.y);
        GraphicsUtil.drawImage(g, srgb);
        g.dispose();
        return out;
    }

    private BufferedImage blur(BufferedImage image, LineBlur across, LineBlur down) {
        int width = image.getWidth();
        int[] row = new int[width];
        char[] alpha = new char[Math.multiplyExact(width, image.getHeight())];
        char[] colour = new char[alpha.length];
        BufferedImage out = new BufferedImage(width, image.getHeight(), BufferedImage.TYPE_INT_ARGB);
        for (int shift = 24; shift >= 0; shift -= 8) {
            char[] plane = shift == 24 ? alpha : colour;
            for (int y = 0; y < image.getHeight(); y++) {
                image.getRGB(0, y, width, 1, row, 0, width);
                for (int x = 0; x < width; x++) {
                    int a = row[x] >>> 24;
                    int v = row[x] >> shift & 255;
                    plane[y * width + x] =
                            (char) (shift == 24 ? a * 257 : (Levels.decoded(v, isColorSpaceLinear()) * a + 127) / 255);
                }
            }
            lines(plane, width, 1, across);
            lines(plane, 1, width, down);
            for (int y = 0; y < image.getHeight(); y++) {
                out.getRGB(0, y, width, 1, row, 0, width);
                for (int x = 0; x < width; x++) {
                    int i = y * width + x;
                    row[x] |= (shift == 24 ? alpha[i] / 257 : level(colour[i], alpha[i])) << shift;
                }
                out.setRGB(0, y, width, 1, row, 0, width);
            }
        }
        return out;
    }

    private int level(int premultiplied, int alpha) {
        if (alpha < 129) {
            return 0; // shown as transparent
        }
        return Levels.encoded(Math.min(1, premultiplied / (float) alpha), isColorSpaceLinear());
    }

    /** Blurs rows, whose samples lie {@code step} = 1 apart, or columns. */
    private static void lines(char[] plane, int step, int stride, LineBlur blur) {
        boolean rows = stride == 1;
        int width = rows ? step : stride;
        int length = rows ? width : plane.length / width;
        float[] line = new float[length];
        for (int at = 0; at < plane.length / length; at++) {
            if (HaltingThread.hasBeenHalted()) {
                return; // nobody waits for it any more
            }
            int first = rows ? at * width : at;
            int apart = rows ? 1 : width;
            for (int i = 0; i < length; i++) {
                line[i] = plane[first + i * apart];
            }
            float[] out = blur.of(line);
            for (int i = 0; i < length; i++) {
                plane[first + i * apart] = (char) Math.min(Levels.ONE, Math.max(0, Math.round(out[i])));
            }
        }
    }
}
