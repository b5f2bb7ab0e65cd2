package inkground.colour;

import java.util.Arrays;

/** Mean, 95th percentile and maximum of colour differences. */
record Differences(int count, double mean, double p95, double max) {
    static Differences of(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double mean = Arrays.stream(sorted).average().orElseThrow();
        return new Differences(
                sorted.length, mean, sorted[(int) Math.ceil(0.95 * sorted.length) - 1], sorted[sorted.length - 1]);
    }
}
