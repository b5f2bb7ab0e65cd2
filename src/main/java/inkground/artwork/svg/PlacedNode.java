package inkground.artwork.svg;

import inkground.artwork.ImageSource;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Refusal;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.apache.batik.gvt.AbstractGraphicsNode;

/** A picture, one unit per sample. */
final class PlacedNode extends AbstractGraphicsNode {
    private final ImageSource source;

    PlacedNode(ImageSource source) {
        this.source = source;
    }

    ImageSource source() {
        return source;
    }

    /** Only for parts that must be rasterised whole, such as beneath a filter: colours other than RGB are approximate. */
    @Override
    public void primitivePaint(Graphics2D g) {
        try {
            g.drawImage(image(source.decode()), 0, 0, source.width(), source.height(), null);
        } catch (Refusal e) {
            throw new Stopped(e);
        }
    }

    private static BufferedImage image(Pixels p) {
        BufferedImage out = new BufferedImage(p.width(), p.height(), BufferedImage.TYPE_INT_ARGB);
        int n = p.components();
        boolean sameMask = p.mask() != null && p.mask().samples().length == p.width() * p.height();
        for (int y = 0, i = 0; y < p.height(); y++) {
            for (int x = 0; x < p.width(); x++, i++) {
                int argb = sameMask ? (p.mask().samples()[i] & 255) << 24 : 0xff000000;
                for (int c = 0; c < 3; c++) {
                    int v = p.samples()[i * n + (n < 3 ? 0 : c)] & 255;
                    argb |= (n >= 4 ? (255 - v) * (255 - (p.samples()[i * n + 3] & 255)) / 255 : v) << 16 - 8 * c;
                }
                out.setRGB(x, y, argb);
            }
        }
        return out;
    }

    @Override
    public Rectangle2D getPrimitiveBounds() {
        return new Rectangle2D.Double(0, 0, source.width(), source.height());
    }

    @Override
    public Rectangle2D getGeometryBounds() {
        return getPrimitiveBounds();
    }

    @Override
    public Rectangle2D getSensitiveBounds() {
        return getPrimitiveBounds();
    }

    @Override
    public Shape getOutline() {
        return getPrimitiveBounds();
    }
}
