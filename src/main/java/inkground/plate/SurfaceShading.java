package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Paint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Shadings over a surface, which are no ramps: meshes and functions of a point (ISO 32000-2 §8.7.4.5.2 and 5 to 8). */
public final class SurfaceShading {
    /** Enough to meet a colour that a smooth function passes through; one that it only jumps to may be missed. */
    private static final int STEPS = 64;

    private SurfaceShading() {}

    /** @return whether a shading is one */
    public static boolean is(Paint.Shading shading) {
        return !ShadingSource.paints(shading.geometry());
    }

    /**
     * @param shading over a surface
     * @return colours that it takes: those of corners, and of a function those at even steps; with the background
     */
    public static List<Colour> colours(Paint.Shading shading) {
        List<Colour> out = new ArrayList<>();
        if (shading.geometry() instanceof Paint.OfPoint point) {
            for (int y = 0; y <= STEPS; y++) {
                for (int x = 0; x <= STEPS; x++) {
                    out.add(ofFunction(
                            shading,
                            (float) (point.domain().x0() + point.domain().width() * x / STEPS),
                            (float) (point.domain().y0() + point.domain().height() * y / STEPS)));
                }
            }
        } else if (shading.geometry() instanceof Paint.Triangles mesh) {
            addCorners(shading, mesh, out);
        } else {
            throw new IllegalArgumentException("a ramp");
        }
        if (shading.background() != null) {
            out.add(shading.background());
        }
        return out;
    }

    private static void addCorners(Paint.Shading shading, Paint.Triangles mesh, List<Colour> out) {
        float least = Float.POSITIVE_INFINITY;
        float most = Float.NEGATIVE_INFINITY;
        for (int at = 2; at < mesh.values().length; at += mesh.perCorner()) {
            if (shading.function() == null) {
                out.add(new Colour(shading.space(), Arrays.copyOfRange(mesh.values(), at, at + mesh.perCorner() - 2)));
            } else {
                least = Math.min(least, mesh.values()[at]);
                most = Math.max(most, mesh.values()[at]);
            }
        }
        for (int i = 0; shading.function() != null && least <= most && i <= STEPS * STEPS; i++) {
            out.add(ofFunction(shading, least + (most - least) * i / (STEPS * STEPS)));
        }
    }

    private static Colour ofFunction(Paint.Shading shading, float... at) {
        ColourSpace space = shading.space();
        float[] values = new float[Math.max(shading.function().outputs(), space.components())];
        shading.function().apply(at, values);
        return new Colour(space, values);
    }
}
