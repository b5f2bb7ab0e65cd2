package inkground.colour;

/**
 * The way back from colours to process tints: a {@link TintSearch} on the four tints. The error minimised is the colour difference with the weights of CIEDE2000 at the wanted colour, plus a
 * slight pull towards the black that {@link BlackGeneration} asks for, which decides among the many mixtures that give one
 * colour, plus a strong one that keeps the ink total. A colour out of reach becomes the nearest one within reach. Thread-safe.
 */
final class CmykInverse {
    // Weight of the pull to the wanted black, in ΔE per whole tint. Small: colour comes first.
    private static final double BLACK_PULL = 0.6;
    // Weight of ink above the limit, in ΔE per whole tint.
    private static final double TOTAL_PULL = 300;
    // A colour out of reach should lose chroma and lightness before it changes hue: a bright green must not turn
    // yellow.
    private static final double HUE_WEIGHT = 1.5;
    // CIEDE2000 is made for small differences; taken at its word for a chroma no ink reaches, it would give up nearly
    // all of it.
    private static final double MOST_CHROMA = 40;
    // White that went through a profile's tables comes back this close; it must stay bare paper.
    private static final double WHITE = 0.06;
    // Squared ΔE that needs no better.
    private static final double GOOD_ENOUGH = 0.0025;
    private static final int ROWS = 5;
    private static final float[] SEED_LEVELS = {0, 0.25f, 0.5f, 0.75f, 1};

    private final PrintCondition condition;
    private final BlackGeneration rule;
    private final double[] paperXyz;
    private volatile SrgbGrid starts; // null for none
    private volatile float[] seeds; // per seed: c, m, y, k, L, a, b

    CmykInverse(PrintCondition condition, BlackGeneration rule) {
        this.condition = condition;
        this.rule = rule;
        this.paperXyz = Cie.labToXyz(condition.paper());
    }

    /** Begins its searches at the nodes of this grid from now on, where they lie near. */
    void startFrom(SrgbGrid grid) {
        this.starts = grid;
    }

    private boolean nearestNode(double[] lab, double[] tints) {
        SrgbGrid grid = starts;
        if (grid == null) {
            return false;
        }
        double[] xyz = new double[3];
        double[] rgb = new double[3];
        Cie.labToXyz(lab[0], lab[1], lab[2], xyz);
        double keep = 1 - grid.blackY();
        xyz[0] = (xyz[0] - grid.blackY() * Cie.D50_X) / keep;
        xyz[1] = (xyz[1] - grid.blackY()) / keep;
        xyz[2] = (xyz[2] - grid.blackY() * Cie.D50_Z) / keep;
        Srgb.xyzToLinear(xyz, rgb);
        int[] node = new int[3];
        for (int i = 0; i < 3; i++) {
            if (!(rgb[i] >= -1e-3 && rgb[i] <= 1.001)) {
                return false;
            }
            node[i] = (int) Math.round((SrgbGrid.NODES - 1) * Srgb.encode(Math.max(0, Math.min(1, rgb[i]))));
        }
        float[] cmyk = new float[4];
        grid.node(node[0], node[1], node[2], cmyk);
        for (int i = 0; i < 4; i++) {
            tints[i] = cmyk[i];
        }
        return true;
    }

    /** As {@link PrintCondition#labToCmyk}. */
    void labToCmyk(double L, double a, double b, float[] cmyk) {
        if (L >= 100 - WHITE && Math.abs(a) <= WHITE && Math.abs(b) <= WHITE) {
            java.util.Arrays.fill(cmyk, 0, 4, 0);
            return;
        }
        new Search(L, a, b).run(cmyk);
    }

    /** Writes media-relative Lab of four tints. */
    private void lab(double[] tints, float[] cmyk, double[] lab) {
        for (int i = 0; i < 4; i++) {
            cmyk[i] = (float) tints[i];
        }
        condition.cmykToXyz(cmyk, lab);
        lab[0] *= Cie.D50_X / paperXyz[0];
        lab[1] *= Cie.D50_Y / paperXyz[1];
        lab[2] *= Cie.D50_Z / paperXyz[2];
        Cie.xyzToLab(lab, lab);
    }

    private float[] seeds() {
        float[] known = seeds;
        if (known != null) {
            return known;
        }
        int n = SEED_LEVELS.length;
        float[] out = new float[n * n * n * n * 7];
        double[] lab = new double[3];
        float[] cmyk = new float[4];
        for (int i = 0; i < n * n * n * n; i++) {
            double[] tints = {
                SEED_LEVELS[i / (n * n * n)], SEED_LEVELS[i / (n * n) % n], SEED_LEVELS[i / n % n], SEED_LEVELS[i % n]
            };
            lab(tints, cmyk, lab);
            for (int j = 0; j < 4; j++) {
                out[i * 7 + j] = (float) tints[j];
            }
            for (int j = 0; j < 3; j++) {
                out[i * 7 + 4 + j] = (float) lab[j];
            }
        }
        seeds = out;
        return out;
    }

    /** One search, confined to a thread. */
    private final class Search {
        private final double[] want;
        private final double wantBlack;
        private final double wL;
        private final double wC;
        private final double wH;
        private final double cosH;
        private final double sinH;
        private final float[] cmyk = new float[4];
        private final double[] lab = new double[3];

        Search(double L, double a, double b) {
            want = new double[] {L, a, b};
            double chroma = Math.hypot(a, b);
            double rated = Math.min(chroma, MOST_CHROMA);
            double fromMiddle = (L - 50) * (L - 50);
            wL = 1 / (1 + 0.015 * fromMiddle / Math.sqrt(20 + fromMiddle));
            wC = 1 / (1 + 0.045 * rated);
            wH = HUE_WEIGHT / (1 + 0.015 * rated);
            cosH = chroma == 0 ? 1 : a / chroma;
            sinH = chroma == 0 ? 0 : b / chroma;
            wantBlack = rule.black(L, a, b);
        }

        // First with black held at what is wanted, where three inks give the colour exactly or not at all; only where
        // they
        // cannot is black freed. This keeps black a smooth function of the colour wherever it can be.
        void run(float[] out) {
            double[] tints = start();
            tints[3] = wantBlack;
            TintSearch search = new TintSearch(4, ROWS, this::errors);
            if (search.minimise(tints, 3) > GOOD_ENOUGH) {
                search.minimise(tints, 4);
            }
            limit(tints);
            for (int i = 0; i < 4; i++) {
                out[i] = (float) tints[i];
            }
        }

        // The ready-made grid, where there is one, knows a better start than the seeds for all that a display can show.
        private double[] start() {
            double[] tints = new double[4];
            if (nearestNode(want, tints)) {
                return tints;
            }
            float[] all = seeds();
            double best = Double.MAX_VALUE;
            int at = 0;
            for (int i = 0; i < all.length; i += 7) {
                double dL = wL * (all[i + 4] - want[0]);
                double da = all[i + 5] - want[1];
                double db = all[i + 6] - want[2];
                double dC = wC * (cosH * da + sinH * db);
                double dH = wH * (cosH * db - sinH * da);
                double dK = 4 * (all[i + 3] - wantBlack);
                double over = Math.max(0, all[i] + all[i + 1] + all[i + 2] + all[i + 3] - rule.totalInk());
                double d = dL * dL + dC * dC + dH * dH + dK * dK + 1e4 * over * over;
                if (d < best) {
                    best = d;
                    at = i;
                }
            }
            return new double[] {all[at], all[at + 1], all[at + 2], all[at + 3]};
        }

        private void errors(double[] tints, double[] out) {
            lab(tints, cmyk, lab);
            double da = lab[1] - want[1];
            double db = lab[2] - want[2];
            out[0] = wL * (lab[0] - want[0]);
            out[1] = wC * (cosH * da + sinH * db);
            out[2] = wH * (cosH * db - sinH * da);
            out[3] = BLACK_PULL * (tints[3] - wantBlack);
            out[4] = TOTAL_PULL * Math.max(0, tints[0] + tints[1] + tints[2] + tints[3] - rule.totalInk());
        }

        // The search holds the total within a rounding; here it is held exactly, at the cost of the three chromatic
        // inks.
        private void limit(double[] tints) {
            double chromatic = tints[0] + tints[1] + tints[2];
            double over = chromatic + tints[3] - rule.totalInk();
            if (over > 0 && chromatic > 0) {
                double scale = Math.max(0, chromatic - over - 1e-6) / chromatic;
                for (int i = 0; i < 3; i++) {
                    tints[i] *= scale;
                }
            }
        }
    }
}
