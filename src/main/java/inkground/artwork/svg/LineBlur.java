package inkground.artwork.svg;

import java.util.Arrays;

/**
 * Gaussian blur of one line of samples: Filter Effects Level 1 §9.14. Below a standard deviation of two pixels the function
 * itself. Above that the standard allows three box blurs; of four boxes with soft ends the variance is exact (extended box
 * filters: Gwosdek, Grewenig, Bruhn, Weickert 2011; from memory, checked in the test).
 */
final class LineBlur {
    private static final double LEAST_BOXES = 2;
    private static final int DEVIATIONS = 3;
    private static final int BOXES = 4;

    /** The function itself; null where boxes do. */
    private final float[] kernel;
    /** Whole samples of a box on each side of its middle. */
    private final int radius;
    /** Weight of the samples at the ends of a box, relative to the others. */
    private final double end;

    /** @param deviation standard deviation in pixels, at least 0 */
    LineBlur(double deviation) {
        double variance = deviation * deviation / BOXES;
        boolean boxes = deviation >= LEAST_BOXES;
        radius = (int) Math.floor(Math.sqrt(12 * variance + 1) / 2 - 0.5);
        end = (2 * radius + 1)
                * (radius * (radius + 1.0) - 3 * variance)
                / (6 * (variance - (radius + 1.0) * (radius + 1)));
        kernel = boxes ? null : kernel(deviation);
    }

    private static float[] kernel(double deviation) {
        int reach = (int) Math.ceil(DEVIATIONS * deviation);
        double[] weights = new double[2 * reach + 1];
        for (int i = -reach; i <= reach; i++) {
            weights[i + reach] = deviation == 0 ? 1 : Math.exp(-i * i / (2 * deviation * deviation));
        }
        double sum = Arrays.stream(weights).sum();
        float[] out = new float[weights.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) (weights[i] / sum);
        }
        return out;
    }

    /** @return how far a sample is spread, in pixels */
    int reach() {
        return kernel == null ? BOXES * (radius + 1) : kernel.length / 2;
    }

    /** @return the blurred line; beyond its ends there is nothing */
    float[] of(float[] line) {
        if (kernel != null) {
            return kernel.length == 1 ? line : convolved(line);
        }
        float[] out = line;
        for (int i = 0; i < BOXES; i++) {
            out = boxed(out);
        }
        return out;
    }

    private float[] convolved(float[] line) {
        int reach = kernel.length / 2;
        float[] out = new float[line.length];
        for (int i = 0; i < out.length; i++) {
            float sum = 0;
            for (int k = Math.max(-reach, -i); k <= Math.min(reach, line.length - 1 - i); k++) {
                sum += kernel[k + reach] * line[i + k];
            }
            out[i] = sum;
        }
        return out;
    }

    private float[] boxed(float[] line) {
        float[] out = new float[line.length];
        double weight = 1 / (2 * radius + 1 + 2 * end);
        double sum = 0;
        for (int i = -radius; i < line.length; i++) {
            sum += sample(line, i + radius);
            if (i >= 0) {
                double ends = sample(line, i - radius - 1) + sample(line, i + radius + 1);
                out[i] = (float) (weight * (sum + end * ends));
                sum -= sample(line, i - radius);
            }
        }
        return out;
    }

    private static double sample(float[] line, int i) {
        return i >= 0 && i < line.length ? line[i] : 0;
    }
}
