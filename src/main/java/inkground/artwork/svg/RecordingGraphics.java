package inkground.artwork.svg;

import inkground.geometry.Awt;
import inkground.geometry.Matrix;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.lang.ref.WeakReference;
import java.text.AttributedCharacterIterator;
import org.apache.batik.ext.awt.RenderingHintsKeyExt;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.xmlgraphics.java2d.AbstractGraphics2D;
import org.apache.xmlgraphics.java2d.GraphicContext;
import org.w3c.dom.Element;

/** A drawing surface that hands everything drawn on it to a sink instead of painting. */
final class RecordingGraphics extends AbstractGraphics2D {
    /** Receives what is drawn. */
    interface Sink {
        /** The inside of a shape. */
        void fill(Shape shape, RecordingGraphics state);

        /** The outline of a shape. */
        void stroke(Shape shape, BasicStroke stroke, RecordingGraphics state);

        /** A picture that was painted already, in the current user space. */
        void picture(BufferedImage picture, AffineTransform pictureToUser, RecordingGraphics state);

        /** Type begins; what is filled or stroked until {@link #endType} is type. */
        void beginType(Element element, GVTFont font, String words, RecordingGraphics state);

        /** Type ends. */
        void endType();
    }

    /** Stands for the surface where the library asks for its kind. */
    private static final BufferedImage SAMPLE = new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB);

    private final Sink sink;

    RecordingGraphics(Sink sink, Matrix userToPage) {
        super(true);
        this.sink = sink;
        this.gc = new GraphicContext();
        transform(Awt.transform(userToPage));
        // type as exact outlines: these two hints keep the library from hinted glyphs
        setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        setRenderingHint(RenderingHintsKeyExt.KEY_BUFFERED_IMAGE, new WeakReference<>(SAMPLE)); // or it complains
    }

    private RecordingGraphics(RecordingGraphics other) {
        super(other);
        this.sink = other.sink;
    }

    /** @return from user space to page space */
    Matrix toPage() {
        return Awt.matrix(getTransform());
    }

    /** @return constant alpha of everything drawn, 0 to 1 */
    double alpha() {
        return getComposite() instanceof AlphaComposite a ? a.getAlpha() : 1;
    }

    void beginType(Element element, GVTFont font, String words) {
        sink.beginType(element, font, words, this);
    }

    void endType() {
        sink.endType();
    }

    @Override
    public void fill(Shape shape) {
        sink.fill(shape, this);
    }

    @Override
    public void draw(Shape shape) {
        if (getStroke() instanceof BasicStroke stroke) {
            sink.stroke(shape, stroke, this);
        } else {
            sink.fill(getStroke().createStrokedShape(shape), this);
        }
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public void drawString(String text, float x, float y) {
        if (!text.isEmpty()) {
            drawGlyphVector(getFont().createGlyphVector(getFontRenderContext(), text), x, y);
        }
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        new java.awt.font.TextLayout(text, getFontRenderContext()).draw(this, x, y);
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform toUser) {
        BufferedImage copy = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_ARGB);
        var g = copy.createGraphics();
        g.drawRenderedImage(image, AffineTransform.getTranslateInstance(-image.getMinX(), -image.getMinY()));
        g.dispose();
        AffineTransform placed = new AffineTransform(toUser);
        placed.translate(image.getMinX(), image.getMinY());
        sink.picture(copy, placed, this);
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform toUser) {
        RenderedImage rendered = image.createDefaultRendering();
        if (rendered != null) {
            drawRenderedImage(rendered, toUser);
        }
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        return drawImage(image, x, y, image.getWidth(null), image.getHeight(null), observer);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        if (image instanceof BufferedImage picture) {
            AffineTransform placed = AffineTransform.getTranslateInstance(x, y);
            placed.scale((double) width / picture.getWidth(), (double) height / picture.getHeight());
            sink.picture(picture, placed, this);
        }
        return true;
    }

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return SAMPLE.createGraphics().getDeviceConfiguration();
    }

    @Override
    public FontMetrics getFontMetrics(java.awt.Font font) {
        return SAMPLE.createGraphics().getFontMetrics(font);
    }

    @Override
    public Graphics create() {
        return new RecordingGraphics(this);
    }

    @Override
    public void dispose() {
        // holds nothing
    }

    @Override
    public void setXORMode(Color colour) {
        // SVG has no such mode
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        // a recording has no pixels to copy
    }
}
