package inkground.colour;

/**
 * The CIE colour spaces and colour differences the project computes in. Everything is for illuminant D50 and the 2°
 * observer; Y = 1 is the perfect white diffuser.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>domain or range</th></tr>
 * <tr><td>X, Y, Z</td><td>0 to about 1; white is {@link #D50_X}, 1, {@link #D50_Z}</td></tr>
 * <tr><td>L*</td><td>0 to 100</td></tr>
 * <tr><td>a*, b*</td><td>about −130 to 130</td></tr>
 * <tr><td>ΔE</td><td>0 and up; ΔE00 is about 1 for a difference that is just seen</td></tr>
 * </table>
 *
 * <p>Sources: [CIE15] for Lab and ΔE*ab, [CIE116] for ΔE94, [SHARMA2005] for ΔE00, [ICC1] for the D50 white and the Bradford matrix.
 */
public final class Cie {
    /** X of the D50 white as ICC.1 rounds it. */
    public static final double D50_X = 0.9642;
    /** Y of the white. */
    public static final double D50_Y = 1.0;
    /** Z of the D50 white as ICC.1 rounds it. */
    public static final double D50_Z = 0.8249;

    /** The D50 white; not to be changed. */
    static final double[] D50 = {D50_X, D50_Y, D50_Z};

    private static final double EPSILON = 216.0 / 24389;
    private static final double KAPPA = 24389.0 / 27;
    private static final double POW_25_7 = 6103515625.0;

    private Cie() {}

    /**
     * The lightness function of L*a*b*: cube root, with a straight line near black [CIE15]. Example: {@code f(1) = 1}.
     *
     * @param ratio a tristimulus value over that of the white, 0 or more
     */
    public static double f(double ratio) {
        return ratio > EPSILON ? Math.cbrt(ratio) : (KAPPA * ratio + 16) / 116;
    }

    /** The inverse of {@link #f}. Example: {@code fInverse(0.5) = 0.125}. */
    public static double fInverse(double value) {
        double cube = value * value * value;
        return cube > EPSILON ? cube : (116 * value - 16) / KAPPA;
    }

    /** @return L*a*b* of X, Y, Z for D50. Example: (0.9642, 1, 0.8249) is (100, 0, 0). */
    public static Lab xyzToLab(double x, double y, double z) {
        double fx = f(x / D50_X);
        double fy = f(y);
        double fz = f(z / D50_Z);
        return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    /** Writes L*, a*, b* of {@code xyz} to {@code lab} [CIE15]; the arrays may be the same. */
    public static void xyzToLab(double[] xyz, double[] lab) {
        double fx = f(xyz[0] / D50_X);
        double fy = f(xyz[1]);
        double fz = f(xyz[2] / D50_Z);
        lab[0] = 116 * fy - 16;
        lab[1] = 500 * (fx - fy);
        lab[2] = 200 * (fy - fz);
    }

    /**
     * Writes X, Y, Z of L*, a*, b* to {@code xyz}: the inverse of {@link #xyzToLab(double, double, double)}. Example: (50, 20, −30) is
     * (0.2177, 0.1842, 0.3066).
     */
    public static void labToXyz(double L, double a, double b, double[] xyz) {
        double fy = (L + 16) / 116;
        xyz[0] = D50_X * fInverse(fy + a / 500);
        xyz[1] = fInverse(fy);
        xyz[2] = D50_Z * fInverse(fy - b / 200);
    }

    /** @return X, Y, Z of a colour, a new array */
    public static double[] labToXyz(Lab lab) {
        double[] xyz = new double[3];
        labToXyz(lab.L(), lab.a(), lab.b(), xyz);
        return xyz;
    }

    /**
     * The distance in L*a*b*: ΔE*ab of 1976 [CIE15], symmetric. Example: (50, 1, 2) and (53, 5, 14) differ by 13.
     *
     * @return 0 and up
     */
    public static double deltaE76(Lab one, Lab other) {
        return Math.sqrt(square(one.L() - other.L()) + square(one.a() - other.a()) + square(one.b() - other.b()));
    }

    /**
     * The CIE 1994 difference with the weights of graphic arts, k_L = 1, K1 = 0.045, K2 = 0.015 [CIE116]. Not symmetric: the weights
     * are those of the reference's chroma. Example: (50, 2.6772, −79.7751) and (50, 0, −82.7485) differ by 1.3950.
     *
     * @param reference the colour wanted
     * @param sample the colour compared with it
     * @return 0 and up
     */
    public static double deltaE94(Lab reference, Lab sample) {
        double chroma = reference.chroma();
        double dc = chroma - sample.chroma();
        // What the distance in a* and b* has beyond that in chroma is hue; rounding must not take it below 0.
        double dhSquare =
                Math.max(0, square(reference.a() - sample.a()) + square(reference.b() - sample.b()) - square(dc));
        return Math.sqrt(square(reference.L() - sample.L())
                + square(dc / (1 + 0.045 * chroma))
                + dhSquare / square(1 + 0.015 * chroma));
    }

    /**
     * The CIEDE2000 difference with all weights 1 [SHARMA2005], symmetric. Example: (50, 2.6772, −79.7751) and (50, 0,
     * −82.7485) differ by 2.0425.
     */
    public static double deltaE00(Lab one, Lab other) {
        return deltaE00(one.L(), one.a(), one.b(), other.L(), other.a(), other.b());
    }

    /** As {@link #deltaE00(Lab, Lab)}, of numbers. */
    public static double deltaE00(double l1, double a1, double b1, double l2, double a2, double b2) {
        double[] parts = new double[3];
        deltaE00Parts(l1, a1, b1, l2, a2, b2, parts);
        return Math.sqrt(square(parts[0]) + square(parts[1]) + square(parts[2]));
    }

    /**
     * The CIEDE2000 difference as three numbers whose squares add up to its square: lightness, chroma and hue by their weights, with the
     * rotation term shared out between the last two. For searches that make the difference small.
     *
     * @param parts receives them, signed
     */
    public static void deltaE00Parts(double l1, double a1, double b1, double l2, double a2, double b2, double[] parts) {
        double meanC = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
        double g = 1 + 0.5 * (1 - seventhRatio(meanC));
        double c1 = Math.hypot(a1 * g, b1);
        double c2 = Math.hypot(a2 * g, b2);
        double h1 = hue(a1 * g, b1);
        double h2 = hue(a2 * g, b2);
        boolean grey = c1 * c2 == 0;
        // Opposite hues are decided exactly by the formula; rounding must not tip them to the other side.
        boolean wraps = !grey && Math.abs(h2 - h1) > 180 + 1e-9;
        double dh = grey ? 0 : h2 - h1;
        double meanH = grey ? h1 + h2 : (h1 + h2) / 2;
        if (wraps) {
            dh += dh > 0 ? -360 : 360;
            meanH += meanH < 180 ? 180 : -180;
        }
        parts[0] = l2 - l1;
        parts[1] = c2 - c1;
        parts[2] = 2 * Math.sqrt(c1 * c2) * sin(dh / 2);
        weigh(parts, (l1 + l2) / 2, (c1 + c2) / 2, meanH);
    }

    private static void weigh(double[] parts, double meanL, double meanC, double meanH) {
        double t = 1
                - 0.17 * cos(meanH - 30)
                + 0.24 * cos(2 * meanH)
                + 0.32 * cos(3 * meanH + 6)
                - 0.20 * cos(4 * meanH - 63);
        double fromMiddle = square(meanL - 50);
        double sl = 1 + 0.015 * fromMiddle / Math.sqrt(20 + fromMiddle);
        double sc = 1 + 0.045 * meanC;
        double sh = 1 + 0.015 * meanC * t;
        double turn = 30 * Math.exp(-square((meanH - 275) / 25));
        // c² + h² + rt c h is (c + rt h / 2)² + (1 − rt² / 4) h², and rt never reaches 2.
        double halfRt = -sin(2 * turn) * seventhRatio(meanC);
        double h = parts[2] / sh;
        parts[0] /= sl;
        parts[1] = parts[1] / sc + halfRt * h;
        parts[2] = Math.sqrt(1 - halfRt * halfRt) * h;
    }

    private static double seventhRatio(double c) {
        double c7 = c * c * c;
        c7 = c7 * c7 * c;
        return Math.sqrt(c7 / (c7 + POW_25_7));
    }

    static double hue(double a, double b) {
        if (a == 0 && b == 0) {
            return 0;
        }
        double degrees = Math.toDegrees(Math.atan2(b, a));
        // A tiny negative angle would round up to a full turn.
        return degrees < 0 ? (degrees + 360) % 360 : degrees;
    }

    /**
     * Adapts X, Y, Z seen under one white to another with the linear Bradford transform [ICC1]. Example: (0.4, 0.3, 0.2) under D65
     * (0.9505, 1, 1.0888) is (0.4160, 0.3056, 0.1512) under D50.
     *
     * @param xyz changed in place
     * @param fromWhite X, Y, Z of the white it is for, Y = 1
     * @param toWhite X, Y, Z of the white wanted, Y = 1
     * @throws IllegalArgumentException if a cone sees nothing of the white it is for
     */
    public static void bradford(double[] xyz, double[] fromWhite, double[] toWhite) {
        double[] cone = new double[3];
        double[] from = new double[3];
        double[] to = new double[3];
        multiply(BRADFORD, xyz, cone);
        multiply(BRADFORD, fromWhite, from);
        multiply(BRADFORD, toWhite, to);
        for (int i = 0; i < 3; i++) {
            if (!(from[i] > 0)) {
                throw new IllegalArgumentException("no such white: " + java.util.Arrays.toString(fromWhite));
            }
            cone[i] *= to[i] / from[i];
        }
        multiply(BRADFORD_INVERSE, cone, xyz);
    }

    private static final double[] BRADFORD = {0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296
    };
    private static final double[] BRADFORD_INVERSE = inverse(BRADFORD);

    /** Writes the product of a 3 × 3 matrix, row by row, and a vector to {@code out}, another array. */
    static void multiply(double[] matrix, double[] in, double[] out) {
        for (int r = 0; r < 3; r++) {
            out[r] = matrix[3 * r] * in[0] + matrix[3 * r + 1] * in[1] + matrix[3 * r + 2] * in[2];
        }
    }

    /** @return the inverse of a 3 × 3 matrix, row by row */
    static double[] inverse(double[] m) {
        double a = m[4] * m[8] - m[5] * m[7];
        double b = m[5] * m[6] - m[3] * m[8];
        double c = m[3] * m[7] - m[4] * m[6];
        double det = m[0] * a + m[1] * b + m[2] * c;
        double[] out = {
            a, m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            b, m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            c, m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
        for (int i = 0; i < 9; i++) {
            out[i] /= det;
        }
        return out;
    }

    private static double square(double v) {
        return v * v;
    }

    private static double sin(double degrees) {
        return Math.sin(Math.toRadians(degrees));
    }

    private static double cos(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }
}
