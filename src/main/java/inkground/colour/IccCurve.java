package inkground.colour;

import java.nio.ByteBuffer;

/** A one-dimensional curve of an ICC profile: sampled, or one of the five parametric kinds [ICC1]. Immutable. */
final class IccCurve {
    private static final int[] PARAMETERS = {1, 3, 4, 5, 7};
    // As many as its values can differ; tags may overlap, so the profile's size is no bound.
    private static final int MAX_SAMPLES = 65_536;
    private static final int HALVINGS = 40;
    private static final IccCurve STRAIGHT = new IccCurve(new float[] {0, 1}, null, 0);

    private final float[] samples; // null for a parametric curve
    private final double[] p; // g, a, b, c, d, e, f
    private final int kind;

    private IccCurve(float[] samples, double[] p, int kind) {
        this.samples = samples;
        this.p = p;
        this.kind = kind;
    }

    /** @return a curve through values at even steps, at least two */
    static IccCurve of(float[] samples) {
        return new IccCurve(samples, null, 0);
    }

    /**
     * Reads a curve.
     *
     * @param in set to its type; afterwards set to what follows it
     * @throws BrokenTag if it is of no known type or cut off
     */
    static IccCurve read(ByteBuffer in) throws BrokenTag {
        int type = in.getInt();
        in.getInt();
        return switch (type) {
            case 0x63757276 -> sampled(in); // curv
            case 0x70617261 -> parametric(in); // para
            default -> throw new BrokenTag("a curve of an unknown type");
        };
    }

    private static IccCurve sampled(ByteBuffer in) throws BrokenTag {
        int count = in.getInt();
        if (count == 0) {
            return STRAIGHT;
        }
        if (count < 0 || count > MAX_SAMPLES) {
            throw new BrokenTag("a curve of " + (count & 0xffffffffL) + " entries, above the limit of " + MAX_SAMPLES);
        }
        if (count > in.remaining() / 2) {
            throw new BrokenTag("a curve of " + count + " entries that is cut off");
        }
        if (count == 1) {
            return new IccCurve(null, new double[] {(in.getShort() & 0xffff) / 256.0, 0, 0, 0, 0, 0, 0}, 0);
        }
        float[] samples = new float[count];
        for (int i = 0; i < count; i++) {
            samples[i] = (in.getShort() & 0xffff) / 65535f;
        }
        return of(samples);
    }

    private static IccCurve parametric(ByteBuffer in) throws BrokenTag {
        int kind = in.getShort() & 0xffff;
        in.getShort();
        if (kind >= PARAMETERS.length) {
            throw new BrokenTag("a parametric curve of kind " + kind);
        }
        double[] p = new double[7];
        for (int i = 0; i < PARAMETERS[kind]; i++) {
            p[i] = in.getInt() / 65536.0;
        }
        return new IccCurve(null, p, kind);
    }

    /** @return value at {@code x}; {@code x} is clipped to 0 to 1 */
    double at(double x) {
        double t = x > 0 ? Math.min(1, x) : 0;
        if (samples == null) {
            double value = parametric(t);
            return value > 0 ? Math.min(1, value) : 0; // what lies outside is clipped [ICC1]; no number counts as 0
        }
        double place = t * (samples.length - 1);
        int i = Math.min(samples.length - 2, (int) place);
        return samples[i] + (place - i) * (samples[i + 1] - (double) samples[i]);
    }

    private double parametric(double x) {
        double g = p[0];
        return switch (kind) {
            case 0 -> Math.pow(x, g);
            case 1 -> x >= -p[2] / p[1] ? power(x) : 0;
            case 2 -> x >= -p[2] / p[1] ? power(x) + p[3] : p[3];
            case 3 -> x >= p[4] ? power(x) : p[3] * x;
            default -> x >= p[4] ? power(x) + p[5] : p[3] * x + p[6];
        };
    }

    private double power(double x) {
        double base = p[1] * x + p[2];
        return base <= 0 ? 0 : Math.pow(base, p[0]);
    }

    /** @return where the curve has a value, for curves that only rise or only fall; the nearest end where it has it nowhere */
    double inverse(double value) {
        boolean falls = at(1) < at(0);
        double low = 0;
        double high = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (at(middle) < value != falls) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
