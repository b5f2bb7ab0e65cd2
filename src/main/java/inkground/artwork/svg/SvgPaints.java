package inkground.artwork.svg;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.Color;
import java.awt.color.ColorSpace;
import java.awt.geom.Point2D;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.batik.ext.awt.LinearGradientPaint;
import org.apache.batik.ext.awt.MultipleGradientPaint;
import org.apache.batik.ext.awt.RadialGradientPaint;
import org.apache.xmlgraphics.java2d.color.ColorWithAlternatives;
import org.apache.xmlgraphics.java2d.color.DeviceCMYKColorSpace;
import org.apache.xmlgraphics.java2d.color.NamedColorSpace;

/** The library's colours and gradients as paints. Inside a luminance mask every colour becomes its luminance. */
final class SvgPaints {
    private static final double MOST_REPEATS = 1000;
    private static final double NEARLY = 0.999;
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();
    private static final ColourSpace GREY = new ColourSpace.DeviceGray();

    private final boolean luminance;
    private final SvgContext context;
    private final Map<java.awt.Paint, Colour> exact = new IdentityHashMap<>();

    SvgPaints(SvgContext context, boolean luminance) {
        this.context = context;
        this.luminance = luminance;
    }

    /**
     * @param paint what to fill with
     * @param alpha constant, 0 to 1
     * @param mask varying alpha; null for none
     */
    record Inked(Paint paint, double alpha, SoftMask mask) {}

    /** Says what colour the file itself states where the library only gives its sRGB stand-in. */
    void exactly(java.awt.Paint paint, Colour colour) {
        exact.put(paint, colour);
    }

    /** @return the colour and its alpha */
    Inked flat(Color c) {
        Colour stated = exact.get(c);
        return new Inked(new Paint.Flat(luminance || stated == null ? colour(c) : stated), c.getAlpha() / 255.0, null);
    }

    private Colour colour(Color c) {
        if (luminance) {
            return new Colour(GREY, grey(c));
        }
        if (c.getColorSpace() instanceof NamedColorSpace named) {
            float[] solid = c.getRGBColorComponents(null);
            TintTransform tint = new Ramp(new float[] {0, 1}, new float[][] {{1, 1, 1}, solid}, Ramp.Spread.PAD, false);
            return new Colour(new ColourSpace.Separation(named.getColorName(), RGB, tint), 1f);
        }
        if (c instanceof ColorWithAlternatives alternatives) {
            for (Color each : alternatives.getAlternativeColors()) {
                ColorSpace space = each.getColorSpace();
                if (space instanceof DeviceCMYKColorSpace) {
                    return new Colour(new ColourSpace.DeviceCmyk(), each.getColorComponents(null));
                }
            }
        }
        return new Colour(RGB, c.getRed() / 255f, c.getGreen() / 255f, c.getBlue() / 255f);
    }

    /** Luminance of an sRGB colour: CSS Masking Level 1 §6.2 with the coefficients of Filter Effects §9.6. */
    private static float grey(Color c) {
        return (0.2125f * c.getRed() + 0.7154f * c.getGreen() + 0.0721f * c.getBlue()) / 255;
    }

    /**
     * @param gradient linear or radial
     * @param toPage from the user space of what is painted to page space
     * @param area what is painted, page space
     * @param origin for the mask that a varying alpha needs
     * @return null when the gradient has no extent
     */
    Inked gradient(MultipleGradientPaint gradient, Matrix toPage, Box area, Origin origin) {
        Matrix gradientToPage = Awt.matrix(gradient.getTransform()).then(toPage);
        if (!gradientToPage.invertible()) {
            return null;
        }
        Color[] colours = gradient.getColors();
        Ramp.Spread spread = gradient.getCycleMethod() == MultipleGradientPaint.REPEAT
                ? Ramp.Spread.REPEAT
                : gradient.getCycleMethod() == MultipleGradientPaint.REFLECT ? Ramp.Spread.REFLECT : Ramp.Spread.PAD;
        Paint.Geometry geometry =
                geometry(gradient, spread, gradientToPage.inverse().bounds(area));
        boolean linear = gradient.getColorSpace() == MultipleGradientPaint.LINEAR_RGB;
        float[][] stops = new float[colours.length][];
        float[][] alphas = new float[colours.length][];
        for (int i = 0; i < colours.length; i++) {
            Color c = colours[i];
            stops[i] = luminance
                    ? new float[] {grey(c)}
                    : new float[] {c.getRed() / 255f, c.getGreen() / 255f, c.getBlue() / 255f};
            alphas[i] = new float[] {c.getAlpha() / 255f};
        }
        float[] offsets = gradient.getFractions();
        Paint shading = new Paint.Shading(
                geometry, luminance ? GREY : RGB, new Ramp(offsets, stops, spread, linear), null, null, gradientToPage);
        boolean even = Arrays.stream(alphas).allMatch(a -> a[0] == alphas[0][0]);
        if (even) {
            return new Inked(shading, alphas[0][0], null);
        }
        Paint alpha =
                new Paint.Shading(geometry, GREY, new Ramp(offsets, alphas, spread, false), null, null, gradientToPage);
        return new Inked(shading, 1, mask(alpha, area, origin));
    }

    private static SoftMask mask(Paint alpha, Box area, Origin origin) {
        Box box = area.grow(1);
        Op fill = new Op.Fill(Outline.rectangle(box), FillRule.NON_ZERO, alpha, null, Style.PLAIN, null, origin);
        return luminosity(List.of(fill), box, origin);
    }

    /** A mask of what is painted in grey; black where nothing is. */
    static SoftMask luminosity(List<Op> ops, Box box, Origin origin) {
        Style style = new Style(1, BlendMode.NORMAL, false, 0, null, false);
        return new SoftMask(new Op.Group(ops, box, true, false, GREY, style, null, origin), true, null, null);
    }

    private Paint.Geometry geometry(MultipleGradientPaint gradient, Ramp.Spread spread, Box area) {
        if (gradient instanceof LinearGradientPaint line) {
            return axial(line, spread, area);
        }
        return radial((RadialGradientPaint) gradient, spread, area);
    }

    /** Repeated gradients become one long one that covers the area; its ramp repeats. */
    private static Paint.Axial axial(LinearGradientPaint line, Ramp.Spread spread, Box area) {
        Point2D a = line.getStartPoint();
        Point2D b = line.getEndPoint();
        double dx = b.getX() - a.getX();
        double dy = b.getY() - a.getY();
        double square = dx * dx + dy * dy;
        double from = 0;
        double to = 1;
        if (spread != Ramp.Spread.PAD && square > 0) {
            double[] s = {
                ((area.x0() - a.getX()) * dx + (area.y0() - a.getY()) * dy) / square,
                ((area.x1() - a.getX()) * dx + (area.y0() - a.getY()) * dy) / square,
                ((area.x0() - a.getX()) * dx + (area.y1() - a.getY()) * dy) / square,
                ((area.x1() - a.getX()) * dx + (area.y1() - a.getY()) * dy) / square
            };
            from = Math.max(
                    -MOST_REPEATS, Math.min(0, Math.floor(Arrays.stream(s).min().orElse(0))));
            to = Math.min(
                    MOST_REPEATS, Math.max(1, Math.ceil(Arrays.stream(s).max().orElse(1))));
        }
        return new Paint.Axial(
                a.getX() + from * dx,
                a.getY() + from * dy,
                a.getX() + to * dx,
                a.getY() + to * dy,
                from,
                to,
                true,
                true);
    }

    private Paint.Radial radial(RadialGradientPaint circle, Ramp.Spread spread, Box area) {
        double cx = circle.getCenterPoint().getX();
        double cy = circle.getCenterPoint().getY();
        double r = circle.getRadius();
        // a start circle as large as the end circle or larger, which SVG 2 §14.2.3 leaves open, paints what a little
        // smaller one does
        double fr = Math.max(0, Math.min(r * NEARLY, context.innerRadius(circle)));
        double fx = circle.getFocusPoint().getX();
        double fy = circle.getFocusPoint().getY();
        double distance = Math.hypot(fx - cx, fy - cy);
        double most = (r - fr) * NEARLY; // a focus outside is drawn in to the edge: SVG 1.1 §13.2.3
        if (distance > most && distance > 0) {
            fx = cx + (fx - cx) * most / distance;
            fy = cy + (fy - cy) * most / distance;
        }
        double to = 1;
        if (spread != Ramp.Spread.PAD && r > 0) {
            double far = Math.hypot(
                    Math.max(Math.abs(area.x0() - fx), Math.abs(area.x1() - fx)),
                    Math.max(Math.abs(area.y0() - fy), Math.abs(area.y1() - fy)));
            double slowest = r - fr - Math.hypot(fx - cx, fy - cy);
            to = Math.min(MOST_REPEATS, Math.max(1, Math.ceil(far / slowest)));
        }
        return new Paint.Radial(
                fx, fy, fr, fx + to * (cx - fx), fy + to * (cy - fy), fr + to * (r - fr), 0, to, true, true);
    }
}
