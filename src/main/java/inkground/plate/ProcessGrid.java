package inkground.plate;

import inkground.artwork.ColourSpace;
import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * Process tints of a three-component colour space, sampled at 33 × 33 × 33 points as they are needed and interpolated
 * between them. Flat colours and images go through the same grid, so that equal colours get equal tints. Thread-safe.
 */
final class ProcessGrid {
    private static final int STEPS = 32;
    private static final int NODES = STEPS + 1;
    /** Step of 0 in a component that takes both signs. */
    private static final int ZERO = STEPS / 2;

    /** Computes the tints of one colour. */
    @FunctionalInterface
    interface Exact {
        void convert(ColourSpace space, float[] components, float[] cmyk);
    }

    private final ColourSpace space;
    private final Exact exact;
    private final AtomicReferenceArray<float[]> nodes = new AtomicReferenceArray<>(NODES * NODES * NODES);

    ProcessGrid(ColourSpace space, Exact exact) {
        this.space = space;
        this.exact = exact;
    }

    /**
     * @param components three, inside their range
     * @param out elements 0 to 3 receive the tints
     */
    void tints(float[] components, int[] out) {
        float x = position(0, components[0]);
        float y = position(1, components[1]);
        float z = position(2, components[2]);
        int ix = Math.min(STEPS - 1, (int) x);
        int iy = Math.min(STEPS - 1, (int) y);
        int iz = Math.min(STEPS - 1, (int) z);
        interpolate(ix, iy, iz, x - ix, y - iy, z - iz, out);
    }

    private float position(int i, float value) {
        if (!signed(i)) {
            return (value - space.min(i)) / (space.max(i) - space.min(i)) * STEPS;
        }
        return value < 0 ? ZERO - value / space.min(i) * ZERO : ZERO + value / space.max(i) * ZERO;
    }

    /** Whether 0 lies inside a component's range: a* and b*, whose 0 is made a node so that neutrals, white above all, are exact. */
    private boolean signed(int i) {
        return space.min(i) < 0 && space.max(i) > 0;
    }

    /** Tetrahedral: walks from the low corner to the high one along the axes, the largest fraction first. */
    private void interpolate(int x, int y, int z, float fx, float fy, float fz, int[] out) {
        float[] low = node(x, y, z);
        float[] high = node(x + 1, y + 1, z + 1);
        float[] first;
        float[] second;
        float a;
        float b;
        float c;
        if (fx >= fy) {
            if (fy >= fz) {
                first = node(x + 1, y, z);
                second = node(x + 1, y + 1, z);
                a = fx;
                b = fy;
                c = fz;
            } else if (fx >= fz) {
                first = node(x + 1, y, z);
                second = node(x + 1, y, z + 1);
                a = fx;
                b = fz;
                c = fy;
            } else {
                first = node(x, y, z + 1);
                second = node(x + 1, y, z + 1);
                a = fz;
                b = fx;
                c = fy;
            }
        } else if (fx >= fz) {
            first = node(x, y + 1, z);
            second = node(x + 1, y + 1, z);
            a = fy;
            b = fx;
            c = fz;
        } else if (fy >= fz) {
            first = node(x, y + 1, z);
            second = node(x, y + 1, z + 1);
            a = fy;
            b = fz;
            c = fx;
        } else {
            first = node(x, y, z + 1);
            second = node(x, y + 1, z + 1);
            a = fz;
            b = fy;
            c = fx;
        }
        for (int i = 0; i < 4; i++) {
            out[i] = Fixed.tint((1 - a) * low[i] + (a - b) * first[i] + (b - c) * second[i] + c * high[i]);
        }
    }

    private float[] node(int x, int y, int z) {
        // weight 0 corners beyond the rim are never used: the fraction is 1 at most in the last step
        int at = (x * NODES + y) * NODES + z;
        float[] tints = nodes.get(at);
        if (tints == null) {
            float[] colour = {value(0, x), value(1, y), value(2, z)};
            tints = new float[4];
            exact.convert(space, colour, tints);
            nodes.set(at, tints);
        }
        return tints;
    }

    private float value(int i, int step) {
        if (signed(i)) {
            return (step < ZERO ? -space.min(i) : space.max(i)) * (step - ZERO) / ZERO;
        }
        return space.min(i) + (space.max(i) - space.min(i)) * step / STEPS;
    }
}
