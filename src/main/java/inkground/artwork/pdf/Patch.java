package inkground.artwork.pdf;

import inkground.geometry.Matrix;

/**
 * A tensor-product patch: ISO 32000-2 §8.7.4.5.8.
 *
 * @param x control points, [row][column]
 * @param y control points, [row][column]
 */
record Patch(double[][] x, double[][] y) {
    /** Row and column of the points in stream order: around the border, then the inner four. */
    private static final int[] ORDER = {
        0x00, 0x01, 0x02, 0x03, 0x13, 0x23, 0x33, 0x32, 0x31, 0x30, 0x20, 0x10, 0x11, 0x12, 0x22, 0x21
    };

    private static final int MIN_STEPS = 4;
    private static final int MAX_STEPS = 20;
    private static final double STEP_PT = 4;

    /** Builds a patch from points in stream order; a Coons patch's inner points follow from its border. */
    static Patch of(double[][] points, boolean coons) {
        double[][] x = new double[4][4];
        double[][] y = new double[4][4];
        for (int i = 0; i < (coons ? 12 : 16); i++) {
            x[ORDER[i] >> 4][ORDER[i] & 15] = points[i][0];
            y[ORDER[i] >> 4][ORDER[i] & 15] = points[i][1];
        }
        if (coons) {
            inner(x);
            inner(y);
        }
        return new Patch(x, y);
    }

    private static void inner(double[][] p) {
        for (int i = 1; i <= 2; i++) {
            for (int j = 1; j <= 2; j++) {
                int ni = i == 1 ? 0 : 3; // near and far border
                int fi = 3 - ni;
                int nj = j == 1 ? 0 : 3;
                int fj = 3 - nj;
                p[i][j] = (-4 * p[ni][nj]
                                + 6 * (p[ni][j] + p[i][nj])
                                - 2 * (p[ni][fj] + p[fi][nj])
                                + 3 * (p[fi][j] + p[i][fj])
                                - p[fi][fj])
                        / 9;
            }
        }
    }

    /** How finely to cut: one step for each few points of its extent on the page. */
    int steps(Matrix toPage) {
        double minX = Double.MAX_VALUE;
        double maxX = -Double.MAX_VALUE;
        double minY = Double.MAX_VALUE;
        double maxY = -Double.MAX_VALUE;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double px = toPage.x(x[i][j], y[i][j]);
                double py = toPage.y(x[i][j], y[i][j]);
                minX = Math.min(minX, px);
                maxX = Math.max(maxX, px);
                minY = Math.min(minY, py);
                maxY = Math.max(maxY, py);
            }
        }
        double steps = Math.ceil(Math.max(maxX - minX, maxY - minY) / STEP_PT);
        return (int) Math.max(MIN_STEPS, Math.min(MAX_STEPS, steps));
    }

    /** Position and values at (u, v); u runs along rows' index, v along columns' index; colours at 00, 03, 33, 30. */
    float[] corner(double u, double v, float[][] colours, int values) {
        double[] bu = bernstein(u);
        double[] bv = bernstein(v);
        double px = 0;
        double py = 0;
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                px += x[i][j] * bu[i] * bv[j];
                py += y[i][j] * bu[i] * bv[j];
            }
        }
        float[] out = new float[2 + values];
        out[0] = (float) px;
        out[1] = (float) py;
        for (int k = 0; k < values; k++) {
            double start = (1 - v) * colours[0][k] + v * colours[1][k];
            double end = (1 - v) * colours[3][k] + v * colours[2][k];
            out[2 + k] = (float) ((1 - u) * start + u * end);
        }
        return out;
    }

    private static double[] bernstein(double t) {
        double s = 1 - t;
        return new double[] {s * s * s, 3 * t * s * s, 3 * t * t * s, t * t * t};
    }
}
