package inkground.artwork.svg;

import inkground.artwork.TintTransform;

/**
 * Colours along a gradient.
 *
 * @param offsets of the stops, rising, 0 to 1
 * @param stops components of each stop
 * @param spread what lies outside 0 to 1
 * @param linear whether colours mix in linear light (color-interpolation: linearRGB)
 */
record Ramp(float[] offsets, float[][] stops, Spread spread, boolean linear) implements TintTransform {
    /** What lies beyond the ends: SVG 2 §14.2.2. */
    enum Spread {
        /** The end colours. */
        PAD,
        /** The gradient backwards and forwards. */
        REFLECT,
        /** The gradient again. */
        REPEAT
    }

    @Override
    public int outputs() {
        return stops[0].length;
    }

    @Override
    public void apply(float[] in, float[] out) {
        double t = within(in[0]);
        int last = offsets.length - 1;
        int next = 0;
        while (next <= last && offsets[next] <= t) {
            next++;
        }
        float[] a = stops[Math.max(0, next - 1)];
        float[] b = stops[Math.min(last, next)];
        double from = offsets[Math.max(0, next - 1)];
        double to = offsets[Math.min(last, next)];
        double share = to > from ? Math.max(0, Math.min(1, (t - from) / (to - from))) : 0;
        for (int i = 0; i < a.length; i++) {
            out[i] = (float)
                    (linear
                            ? encode(decode(a[i]) * (1 - share) + decode(b[i]) * share)
                            : a[i] * (1 - share) + b[i] * share);
        }
    }

    private double within(double t) {
        return switch (spread) {
            case PAD -> Math.max(0, Math.min(1, t));
            case REPEAT -> t - Math.floor(t);
            case REFLECT -> 1 - Math.abs(1 - (t - 2 * Math.floor(t / 2)));
        };
    }

    /** IEC 61966-2-1. */
    private static double decode(double v) {
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    private static double encode(double v) {
        return v <= 0.0031308 ? v * 12.92 : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
    }
}
