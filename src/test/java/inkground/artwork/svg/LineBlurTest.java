package inkground.artwork.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineBlurTest {
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 1.9, 2, 3.3, 12.5, 60})
    void aPointBecomesABellOfItsDeviation(double deviation) {
        LineBlur blur = new LineBlur(deviation);
        int middle = blur.reach() + 1;
        float[] line = new float[2 * middle + 1];
        line[middle] = 1;
        float[] bell = blur.of(line);
        double sum = 0;
        double variance = 0;
        for (int i = 0; i < bell.length; i++) {
            sum += bell[i];
            variance += bell[i] * (i - middle) * (i - middle);
        }
        assertThat(sum).isCloseTo(1, within(1e-4));
        double exact =
                deviation < 2 ? 0.04 * deviation * deviation : 1e-3 * deviation * deviation; // the function is cut off
        assertThat(variance).isCloseTo(deviation * deviation, within(exact + 1e-6));
        assertThat(bell[middle - 1]).isCloseTo(bell[middle + 1], within(1e-6f));
        assertThat(bell[0]).as("nothing reaches further").isZero();
    }

    /** Filter Effects Level 1 §9.14 allows an approximation of about 3 %. */
    @ParameterizedTest
    @ValueSource(doubles = {2, 5, 12.5})
    void anEdgeIsNeverMoreThanAHundredthOffTheGaussFunction(double deviation) {
        int half = (int) (8 * deviation);
        float[] line = new float[2 * half];
        java.util.Arrays.fill(line, half, 2 * half, 1f);
        float[] soft = new LineBlur(deviation).of(line);
        double integral = 0;
        for (int i = 0; i < half + 4 * deviation; i++) {
            double z = (i - half + 0.5) / deviation;
            integral = normal(z);
            assertThat((double) soft[i]).as("sample " + i).isCloseTo(integral, within(0.01));
        }
        assertThat(integral).isGreaterThan(0.99);
    }

    /** The normal distribution, by Simpson's rule. */
    private static double normal(double z) {
        int steps = 2000;
        double from = -10;
        double h = (z - from) / steps;
        double sum = 0;
        for (int i = 0; i <= steps; i++) {
            double x = from + i * h;
            sum += (i == 0 || i == steps ? 1 : i % 2 == 0 ? 2 : 4) * Math.exp(-x * x / 2);
        }
        return sum * h / 3 / Math.sqrt(2 * Math.PI);
    }
}
