package inkground.garment;

import inkground.geometry.Awt;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.substrate.Cut;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.DataBufferInt;
import java.util.stream.IntStream;

/**
 * One region of a garment's picture apart from all colour: where there is cloth, where it takes print, and by how much each
 * pixel is lighter or darker than flat cloth. Made once for a place; any substrate is then one multiplication per pixel.
 * Immutable.
 */
public final class ClothLight {
    /** A factor of 1 in {@link #light}. */
    static final int ONE = 1 << 12;

    private static final double GAMMA = 1 / 2.2;
    private static final int FULL_SHADE = 200;

    private final GarmentRequest request;
    final byte[] cover;
    final byte[] print;
    final byte[] shadow;
    final short[] light;

    /**
     * @param drape of the same form; null for flat cloth without folds, seams still shown
     */
    public ClothLight(Form form, GarmentRequest request, Drape drape) {
        this.request = request;
        int width = request.width();
        int height = request.height();
        Painter painter = new Painter(form, request);
        cover = painter.mask(true);
        print = painter.mask(false);
        int[] shade = painter.shades();
        int[] lines = painter.lines();
        shadow = new byte[width * height];
        light = new short[width * height];
        IntStream.range(0, height).parallel().forEach(y -> {
            double yMm = (request.y0() + y + 0.5) / request.pxPerMm();
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                double xMm = (request.x0() + x + 0.5) / request.pxPerMm();
                if (drape != null && cover[i] != -1) {
                    shadow[i] = (byte) Math.round(255 * drape.shadow(xMm, yMm));
                }
                if (cover[i] != 0) {
                    double factor = (shade[i] & 255) / (double) FULL_SHADE;
                    factor *= drape == null ? 1 : drape.light(xMm, yMm);
                    double encoded = Math.pow(factor, GAMMA) * line(lines[i]);
                    light[i] = (short) Math.min(Short.MAX_VALUE, Math.round(ONE * encoded));
                }
            }
        });
    }

    /** Black of an alpha darkens by it, white of an alpha lightens by it. */
    private static double line(int argb) {
        double alpha = (argb >>> 24) / 255.0;
        return 1 + alpha * (2 * (argb & 255) / 255.0 - 1);
    }

    /** @return the region */
    public GarmentRequest request() {
        return request;
    }

    /** @return how much of a pixel of the region is garment, 0 to 255 */
    public int cover(int x, int y) {
        return cover[y * request.width() + x] & 255;
    }

    /** @return how much of a pixel of the region is cloth that takes print, 0 to 255 */
    public int print(int x, int y) {
        return print[y * request.width() + x] & 255;
    }

    /** @return weight in memory, in bytes */
    public long bytes() {
        return 5L * cover.length;
    }

    /** Draws the vector parts. */
    private static final class Painter {
        private final Form form;
        private final GarmentRequest request;
        private final Matrix toPx;

        Painter(Form form, GarmentRequest request) {
            this.form = form;
            this.request = request;
            this.toPx = Matrix.scale(request.pxPerMm(), request.pxPerMm())
                    .then(Matrix.translate(-request.x0(), -request.y0()));
        }

        private Graphics2D on(BufferedImage image) {
            Graphics2D g = image.createGraphics();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            return g;
        }

        private Shape shape(Outline outline) {
            return Awt.path(outline.transform(toPx), FillRule.NON_ZERO);
        }

        /** @param all whether all of the garment counts, else only what takes print */
        byte[] mask(boolean all) {
            BufferedImage image = new BufferedImage(request.width(), request.height(), BufferedImage.TYPE_BYTE_GRAY);
            Graphics2D g = on(image);
            g.setColor(Color.WHITE);
            g.fill(shape(form.outline()));
            for (Form.Part part : form.parts()) {
                if (all || part.lies() == Cut.Part.Lies.OVER) {
                    g.setColor(all ? Color.WHITE : Color.BLACK);
                    g.fill(shape(part.outline()));
                }
            }
            g.dispose();
            return ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
        }

        int[] shades() {
            BufferedImage image = new BufferedImage(request.width(), request.height(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = on(image);
            g.setColor(grey(1));
            g.fillRect(0, 0, request.width(), request.height());
            parts(g, true);
            g.setColor(grey(1));
            g.fill(shape(form.outline()));
            parts(g, false);
            g.dispose();
            return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        }

        private void parts(Graphics2D g, boolean under) {
            for (Form.Part part : form.parts()) {
                if (part.lies() == Cut.Part.Lies.UNDER == under) {
                    g.setColor(grey(part.shade()));
                    g.fill(shape(part.outline()));
                }
            }
        }

        private static Color grey(double factor) {
            int v = (int) Math.min(255, Math.round(factor * FULL_SHADE));
            return new Color(v, v, v);
        }

        /** @return black and white of some alpha: what lines do to the light */
        int[] lines() {
            BufferedImage image = new BufferedImage(request.width(), request.height(), BufferedImage.TYPE_INT_ARGB);
            Graphics2D g = on(image);
            for (Form.Part part : form.parts()) {
                if (part.lies() != Cut.Part.Lies.UNDER) {
                    edge(g, part.outline());
                }
            }
            for (Form.Line line : form.lines()) {
                switch (line.kind()) {
                    case SEAM -> seam(g, line.outline());
                    case STITCH -> stitches(g, line.outline());
                    case EDGE -> edge(g, line.outline());
                    case CORD -> cord(g, line.outline());
                }
            }
            g.dispose();
            return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        }

        /** A groove with a lit flank, and the soft swell of the cloth beside it. */
        private void seam(Graphics2D g, Outline line) {
            soft(g, line, 9, 0.035);
            stroke(g, line, 0, 1.3, Color.BLACK, 0.28);
            stroke(g, line, 1.1, 1.0, Color.WHITE, 0.22);
        }

        /** The edge of a layer that lies on another: a shadow below it, a lit rim. */
        private void edge(Graphics2D g, Outline line) {
            soft(g, line, 11, 0.035);
            stroke(g, line, 0.5, 1.2, Color.BLACK, 0.27);
            stroke(g, line, -0.6, 1.0, Color.WHITE, 0.16);
        }

        private void cord(Graphics2D g, Outline line) {
            soft(g, line, 16, 0.05);
            stroke(g, line, 0, 6.6, Color.BLACK, 0.45);
            stroke(g, line, 0, 5.2, Color.WHITE, 0.42);
            stroke(g, line, 1.2, 2, Color.BLACK, 0.14);
        }

        /** Two rows 5 mm apart; single stitches where a pixel is small enough to show them. */
        private void stitches(Graphics2D g, Outline line) {
            soft(g, line, 14, 0.02);
            double px = request.pxPerMm();
            boolean single = px > 1.6;
            Shape rows = new BasicStroke((float) (5 * px), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND)
                    .createStrokedShape(shape(line));
            float wide = (float) Math.max(0.8, 0.55 * px);
            float[] dash = {(float) (2.6 * px), (float) (1.1 * px)};
            g.setStroke(
                    single
                            ? new BasicStroke(wide, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, dash, 0)
                            : new BasicStroke(wide));
            g.setColor(tone(Color.BLACK, (single ? 0.3 : 0.17) * Math.min(1, 0.55 * px / wide + 0.35)));
            g.draw(rows);
        }

        private void soft(Graphics2D g, Outline line, double widthMm, double alpha) {
            for (double share : new double[] {1, 0.72, 0.46, 0.24}) {
                stroke(g, line, 0.8, widthMm * share, Color.BLACK, alpha);
            }
        }

        /** @param downMm moved to the lower right by so much */
        private void stroke(Graphics2D g, Outline line, double downMm, double widthMm, Color colour, double alpha) {
            double px = request.pxPerMm();
            double wanted = widthMm * px;
            double wide = Math.max(0.9, wanted);
            AffineTransform before = g.getTransform();
            g.translate(0.5 * downMm * px, downMm * px);
            g.setStroke(new BasicStroke((float) wide, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
            // A line thinner than a pixel is drawn one pixel wide and fainter.
            g.setColor(tone(colour, alpha * Math.min(1, wanted / wide + 0.15)));
            g.draw(shape(line));
            g.setTransform(before);
        }

        private static Color tone(Color colour, double alpha) {
            return new Color(colour.getRed(), colour.getGreen(), colour.getBlue(), (int) Math.round(255 * alpha));
        }
    }
}
