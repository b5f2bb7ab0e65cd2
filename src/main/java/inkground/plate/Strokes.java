package inkground.plate;

import inkground.artwork.Op;
import inkground.geometry.Awt;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.awt.BasicStroke;
import java.awt.Shape;

/** Turns a stroke into the outline of its ink, through the JDK's own stroker. */
final class Strokes {
    /** Dashes finer than this many pixels cannot be told from a tint; the line is drawn solid to bound the work. */
    private static final double FINEST_DASH_PX = 0.05;

    private Strokes() {}

    /**
     * The outline to be filled by the non-zero rule, united with itself: at inner corners the stroker's outlines overlap.
     *
     * @param toDevice from page space to the device
     * @param thinnestPx width of the thinnest line that shows, in device pixels
     * @return edges in device space
     */
    static EdgeList edges(Op.Stroke stroke, Matrix toDevice, double thinnestPx) {
        Matrix penToDevice = stroke.penToPage().then(toDevice);
        // The stroker's tolerances are absolute, so it works at the size of device pixels; what is left of the matrix
        // (shear, unequal scales) is applied to the outline.
        double scale = largestScale(penToDevice);
        if (scale == 0 || !Double.isFinite(scale)) {
            return EdgeList.of(Outline.EMPTY, Matrix.IDENTITY);
        }
        Outline path = stroke.path().transform(Matrix.scale(scale, scale));
        Matrix rest = Matrix.scale(1 / scale, 1 / scale).then(penToDevice);
        Pen pen = stroke.pen();
        // ISO 32000-2 §8.4.3.2: the thinnest line a device shows is one pixel.
        double thinnest = thinnestPx / Math.max(1e-6, Math.sqrt(Math.abs(rest.determinant())));
        float width = (float) Math.max(pen.width() * scale, Math.min(thinnest, 1e6));
        Shape outline = stroker(pen, width, scale)
                .createStrokedShape(
                        Awt.path(pen.cap() == Pen.Cap.SQUARE ? withoutPoints(path) : path, FillRule.NON_ZERO));
        return EdgeList.of(Awt.outline(outline, Matrix.IDENTITY), rest).united();
    }

    private static double largestScale(Matrix m) {
        double p = (m.a() * m.a() + m.b() * m.b() + m.c() * m.c() + m.d() * m.d()) / 2;
        double det = m.determinant();
        return Math.sqrt(p + Math.sqrt(Math.max(0, p * p - det * det)));
    }

    private static BasicStroke stroker(Pen pen, float width, double scale) {
        float[] dash = null;
        double[] lengths = pen.dash();
        double sum = 0;
        for (double d : lengths) {
            sum += d * scale;
        }
        if (lengths.length > 0 && sum >= FINEST_DASH_PX * lengths.length) {
            dash = new float[lengths.length];
            for (int i = 0; i < dash.length; i++) {
                dash[i] = (float) (lengths[i] * scale);
            }
        }
        double period = lengths.length % 2 == 1 ? 2 * sum : sum;
        double phase = dash == null ? 0 : pen.dashPhase() * scale % period;
        return new BasicStroke(width, Awt.cap(pen.cap()), Awt.join(pen.join()), (float) pen.miterLimit(), dash, (float)
                (phase < 0 ? phase + period : phase));
    }

    /** Leaves out subpaths of a single place: they have no direction to put a square cap in (§8.5.3.2). */
    private static Outline withoutPoints(Outline path) {
        Outline.Builder out = new Outline.Builder();
        path.forEach(new Outline.Visitor() {
            private double startX;
            private double startY;
            private boolean begun;

            @Override
            public void move(double x, double y) {
                startX = x;
                startY = y;
                begun = false;
            }

            @Override
            public void line(double x, double y) {
                if (begin(x != startX || y != startY)) {
                    out.line(x, y);
                }
            }

            @Override
            public void curve(double x1, double y1, double x2, double y2, double x, double y) {
                boolean away = x1 != startX || x2 != startX || x != startX;
                if (begin(away || y1 != startY || y2 != startY || y != startY)) {
                    out.curve(x1, y1, x2, y2, x, y);
                }
            }

            private boolean begin(boolean away) {
                if (!begun && away) {
                    out.move(startX, startY);
                    begun = true;
                }
                return begun;
            }

            @Override
            public void close() {
                if (begun) {
                    out.close();
                    begun = false; // what follows without a move starts again where this started
                }
            }
        });
        return out.build();
    }
}
