package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.Paint;
import java.util.ArrayList;
import java.util.List;

/** The colours along an axial or radial shading. */
final class Ramp {
    /** Colours looked at, from the first to the last. */
    static final int STEPS = 1024;

    /** Change of direction between two steps that makes a stop. */
    private static final double BEND = 0.05;

    /** Change of components 0 to 1 in one step that is none. */
    private static final double STILL = 1e-6;

    private static final int MOST_STOPS = 12;

    private final Paint.Shading shading;
    private final double t0;
    private final double t1;

    Ramp(Paint.Shading shading) {
        this.shading = shading;
        boolean axial = shading.geometry() instanceof Paint.Axial;
        this.t0 = axial ? ((Paint.Axial) shading.geometry()).t0() : ((Paint.Radial) shading.geometry()).t0();
        this.t1 = axial ? ((Paint.Axial) shading.geometry()).t1() : ((Paint.Radial) shading.geometry()).t1();
    }

    /** @return the function's parameter at a place along the shading, 0 to 1 */
    double parameter(double place) {
        return t0 + (t1 - t0) * place;
    }

    /** @return the colour at a place along the shading, 0 to 1 */
    Colour at(double place) {
        float[] out =
                new float[Math.max(shading.function().outputs(), shading.space().components())];
        shading.function().apply(new float[] {(float) parameter(place)}, out);
        return new Colour(shading.space(), out);
    }

    /** @return colours between which it runs straight; empty where it bends all along */
    List<Colour> stops() {
        List<Colour> out = new ArrayList<>(List.of(at(0)));
        Colour before = at(0);
        Colour here = at(1.0 / STEPS);
        for (int i = 1; i < STEPS; i++) {
            Colour after = at((i + 1.0) / STEPS);
            if (bend(before, here, after) > BEND) {
                out.add(here);
            }
            before = here;
            here = after;
        }
        out.add(here);
        return out.size() > MOST_STOPS ? List.of() : out.stream().distinct().toList();
    }

    /** How far apart two steps point, 0 to 2, in components 0 to 1. */
    private static double bend(Colour before, Colour here, Colour after) {
        double[] in = step(before, here);
        double[] out = step(here, after);
        double square = 0;
        for (int c = 0; c < in.length; c++) {
            square += (in[c] - out[c]) * (in[c] - out[c]);
        }
        return Math.sqrt(square);
    }

    /** @return the direction from one colour to another, of length 1; of length 0 where they are all but the same */
    private static double[] step(Colour from, Colour to) {
        double[] out = new double[from.components().length];
        double square = 0;
        for (int c = 0; c < out.length; c++) {
            out[c] = (to.components()[c] - from.components()[c])
                    / (from.space().max(c) - from.space().min(c));
            square += out[c] * out[c];
        }
        for (int c = 0; c < out.length; c++) {
            out[c] = square < STILL * STILL ? 0 : out[c] / Math.sqrt(square);
        }
        return out;
    }
}
