package inkground.plate;

import inkground.artwork.BlendMode;

/**
 * The blend functions of ISO 32000-2 §11.3.5 on tints. The functions are defined on additive values; a tint t stands for the
 * additive value 1 − t, so arguments and results are complemented.
 */
final class Blending {
    private Blending() {}

    /**
     * @param backdrop tint beneath, 0 to 1
     * @param source tint above, 0 to 1
     * @return blended tint, 0 to 1
     */
    static float separable(BlendMode mode, float backdrop, float source) {
        return 1 - additive(mode, 1 - backdrop, 1 - source);
    }

    private static float additive(BlendMode mode, float b, float s) {
        return switch (mode) {
            case MULTIPLY -> b * s;
            case SCREEN -> b + s - b * s;
            case OVERLAY -> hardLight(s, b);
            case DARKEN -> Math.min(b, s);
            case LIGHTEN -> Math.max(b, s);
            case COLOR_DODGE -> b == 0 ? 0 : b >= 1 - s ? 1 : b / (1 - s);
            case COLOR_BURN -> b == 1 ? 1 : 1 - b >= s ? 0 : 1 - (1 - b) / s;
            case HARD_LIGHT -> hardLight(b, s);
            case SOFT_LIGHT -> softLight(b, s);
            case DIFFERENCE -> Math.abs(b - s);
            case EXCLUSION -> b + s - 2 * b * s;
            default -> s;
        };
    }

    private static float hardLight(float b, float s) {
        if (s <= 0.5f) {
            return b * 2 * s;
        }
        float t = 2 * s - 1;
        return b + t - b * t;
    }

    private static float softLight(float b, float s) {
        if (s <= 0.5f) {
            return b - (1 - 2 * s) * b * (1 - b);
        }
        float d = b <= 0.25f ? ((16 * b - 12) * b + 4) * b : (float) Math.sqrt(b);
        return b + (2 * s - 1) * (d - b);
    }

    /**
     * The non-separable modes on process tints (§11.3.5.3): cyan, magenta and yellow are taken as complements of red, green
     * and blue; black comes from the backdrop, for Luminosity from the source.
     *
     * @param backdrop four tints
     * @param source four tints
     * @param out receives four tints; may be either argument
     */
    static void nonSeparable(BlendMode mode, float[] backdrop, float[] source, float[] out) {
        float[] b = {1 - backdrop[0], 1 - backdrop[1], 1 - backdrop[2]};
        float[] s = {1 - source[0], 1 - source[1], 1 - source[2]};
        float black = mode == BlendMode.LUMINOSITY ? source[3] : backdrop[3];
        float[] r =
                switch (mode) {
                    case HUE -> withLuminosity(withSaturation(s, saturation(b)), luminosity(b));
                    case SATURATION -> withLuminosity(withSaturation(b, saturation(s)), luminosity(b));
                    case COLOR -> withLuminosity(s, luminosity(b));
                    case LUMINOSITY -> withLuminosity(b, luminosity(s));
                    default -> throw new IllegalArgumentException(mode + " is separable");
                };
        for (int i = 0; i < 3; i++) {
            out[i] = 1 - r[i];
        }
        out[3] = black;
    }

    private static float luminosity(float[] c) {
        return 0.3f * c[0] + 0.59f * c[1] + 0.11f * c[2];
    }

    private static float saturation(float[] c) {
        return Math.max(c[0], Math.max(c[1], c[2])) - Math.min(c[0], Math.min(c[1], c[2]));
    }

    private static float[] withLuminosity(float[] c, float luminosity) {
        float d = luminosity - luminosity(c);
        float[] out = {c[0] + d, c[1] + d, c[2] + d};
        float l = luminosity(out);
        float low = Math.min(out[0], Math.min(out[1], out[2]));
        float high = Math.max(out[0], Math.max(out[1], out[2]));
        for (int i = 0; i < 3; i++) {
            if (low < 0) {
                out[i] = l + (out[i] - l) * l / (l - low);
            }
            if (high > 1) {
                out[i] = l + (out[i] - l) * (1 - l) / (high - l);
            }
        }
        return out;
    }

    private static float[] withSaturation(float[] c, float saturation) {
        float low = Math.min(c[0], Math.min(c[1], c[2]));
        float range = saturation(c);
        float[] out = new float[3];
        for (int i = 0; i < 3; i++) {
            out[i] = range == 0 ? 0 : (c[i] - low) * saturation / range;
        }
        return out;
    }
}
