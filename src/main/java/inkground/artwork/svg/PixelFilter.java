package inkground.artwork.svg;

import java.awt.Color;
import org.apache.batik.ext.awt.image.ComponentTransferFunction;
import org.apache.batik.ext.awt.image.CompositeRule;

/**
 * What a filter primitive makes of a pixel: Filter Effects Module Level 1 §9 (clauses from memory). Pixels are red, green, blue and alpha, 0 to 1,
 * premultiplied, in the space that the primitive works in.
 */
@FunctionalInterface
interface PixelFilter {
    /**
     * @param sources one pixel of each source, from the undermost up; not kept
     * @param out result; where it leaves 0 to 1, or a colour its alpha, the caller clamps it
     */
    void apply(float[][] sources, float[] out);

    /** feFlood: §9.13; of no source, in sRGB. */
    static PixelFilter flood(Color colour) {
        float[] pixel = colour.getRGBComponents(null);
        for (int i = 0; i < 3; i++) {
            pixel[i] *= pixel[3];
        }
        return (sources, out) -> System.arraycopy(pixel, 0, out, 0, 4);
    }

    /** feMerge, feComposite and feBlend: §9.16, §9.8, §9.5; each source upon what is under it. */
    static PixelFilter composite(CompositeRule rule) {
        int operator = rule.getRule();
        float[] k = rule.getCoefficients();
        return (sources, out) -> {
            System.arraycopy(sources[0], 0, out, 0, 4);
            for (int s = 1; s < sources.length; s++) {
                float[] over = sources[s];
                float alpha = over[3];
                float backdrop = out[3];
                for (int i = 0; i < 4; i++) {
                    out[i] = mixed(operator, k, over[i], alpha, out[i], backdrop);
                }
            }
        };
    }

    private static float mixed(int operator, float[] k, float s, float sa, float d, float da) {
        float sOut = s * (1 - da);
        float dOut = d * (1 - sa);
        return switch (operator) {
            case CompositeRule.RULE_OVER -> s + dOut;
            case CompositeRule.RULE_IN -> s * da;
            case CompositeRule.RULE_OUT -> sOut;
            case CompositeRule.RULE_ATOP -> s * da + dOut;
            case CompositeRule.RULE_XOR -> sOut + dOut;
            case CompositeRule.RULE_ARITHMETIC -> k[0] * s * d + k[1] * s + k[2] * d + k[3];
            case CompositeRule.RULE_MULTIPLY -> sOut + dOut + s * d;
            case CompositeRule.RULE_SCREEN -> s + d - s * d;
            case CompositeRule.RULE_DARKEN -> Math.min(dOut + s, sOut + d);
            case CompositeRule.RULE_LIGHTEN -> Math.max(dOut + s, sOut + d);
            default -> throw new IllegalArgumentException("composite rule " + operator);
        };
    }

    /**
     * feColorMatrix: §9.6.
     *
     * @param rows of red, green, blue and alpha, by the same and a constant, which is of 255
     */
    static PixelFilter matrix(float[][] rows) {
        return straight((in, out) -> {
            for (int i = 0; i < 4; i++) {
                float[] row = rows[i];
                out[i] = row[0] * in[0] + row[1] * in[1] + row[2] * in[2] + row[3] * in[3] + row[4] / 255;
            }
        });
    }

    /**
     * feComponentTransfer: §9.7.
     *
     * @param functions of red, green, blue and alpha; null leaves one as it is
     */
    static PixelFilter transfer(ComponentTransferFunction... functions) {
        return straight((in, out) -> {
            for (int i = 0; i < 4; i++) {
                out[i] = functions[i] == null ? in[i] : transferred(functions[i], in[i]);
            }
        });
    }

    private static float transferred(ComponentTransferFunction f, float c) {
        return switch (f.getType()) {
            case ComponentTransferFunction.TABLE -> {
                float[] table = f.getTableValues();
                float at = c * (table.length - 1);
                int k = (int) at;
                yield k == table.length - 1 ? table[k] : table[k] + (at - k) * (table[k + 1] - table[k]);
            }
            case ComponentTransferFunction.DISCRETE -> {
                float[] table = f.getTableValues();
                yield table[Math.min(table.length - 1, (int) (c * table.length))];
            }
            case ComponentTransferFunction.LINEAR -> f.getSlope() * c + f.getIntercept();
            case ComponentTransferFunction.GAMMA ->
                f.getAmplitude() * (float) Math.pow(c, f.getExponent()) + f.getOffset();
            default -> c;
        };
    }

    /** What works on colours that are not premultiplied. */
    private static PixelFilter straight(Change change) {
        return (sources, out) -> {
            float[] pixel = sources[0];
            for (int i = 0; i < 3; i++) {
                pixel[i] = pixel[3] == 0 ? 0 : Math.min(1, pixel[i] / pixel[3]);
            }
            change.apply(pixel, out);
            float alpha = Math.min(1, Math.max(0, out[3]));
            for (int i = 0; i < 3; i++) {
                out[i] = Math.min(1, Math.max(0, out[i])) * alpha;
            }
        };
    }

    /** From one pixel to another, neither premultiplied. */
    interface Change {
        void apply(float[] in, float[] out);
    }
}
