package inkground.plate;

/**
 * Moves a raster by parts of a pixel and keeps its edges sharp. Where a pixel lies on an edge, the straight line through it that tells
 * best how much its neighbours are covered is moved, and what lies on either side of it is shared out exactly; elsewhere this is
 * bilinear interpolation. What is covered keeps its area.
 *
 * <p>The line is found as in J. E. Pilliod and E. G. Puckett, Second-order accurate volume-of-fluid algorithms for tracking material
 * interfaces, Journal of Computational Physics 199 (2004), from memory: of the six slopes that the sums of three rows and three columns
 * suggest, the one that fits best. A straight edge is found exactly.
 */
final class EdgeShift {
    /** Steps between the least and the most of nine pixels, of 255, below which they are tone rather than an edge. */
    private static final int LEAST_STEP = 128;

    /** Tints by which pixels of one side may differ. */
    private static final int EVEN = 4;
    /** Pixels, of nine that an edge runs through, that lie wholly on the side that has more. */
    private static final int LEAST_EVEN = 2;

    private static final int WHOLE = 255;
    private static final double SMALL = 1e-9;

    private final byte[] from;
    private final int width;
    private final int height;
    private final double[] near = new double[9]; // a pixel and its neighbours, row by row
    private double least; // of the nine
    private double step; // from the least to the most

    private EdgeShift(byte[] from, int width, int height) {
        this.from = from;
        this.width = width;
        this.height = height;
    }

    /**
     * @param from 0 to 255, row by row; beyond it goes on as at its rim
     * @param dx how far to the right, in pixels
     * @param dy how far down
     * @param to receives the moved raster
     */
    static void move(byte[] from, int width, int height, double dx, double dy, byte[] to) {
        if (dx == 0 && dy == 0) {
            System.arraycopy(from, 0, to, 0, to.length);
            return;
        }
        new EdgeShift(from, width, height).move(dx, dy, to);
    }

    private void move(double dx, double dy, byte[] to) {
        int wholeX = (int) Math.floor(dx);
        int wholeY = (int) Math.floor(dy);
        double fx = dx - wholeX;
        double fy = dy - wholeY;
        double[] sums = interpolated(wholeX, wholeY, fx, fy);
        for (int y = -1 - wholeY; y < height - wholeY; y++) {
            for (int x = -1 - wholeX; x < width - wholeX; x++) {
                int own = value(x, y);
                if (own > 0 && own < WHOLE && onEdge(x, y)) {
                    sharpen(line(), own, x + wholeX, y + wholeY, fx, fy, sums);
                }
            }
        }
        for (int i = 0; i < to.length; i++) {
            to[i] = (byte) (int) (sums[i] + 0.5);
        }
    }

    private double[] interpolated(int wholeX, int wholeY, double fx, double fy) {
        double[] sums = new double[from.length];
        for (int y = 0; y < height; y++) {
            int here = clamp(y - wholeY, height) * width;
            int above = clamp(y - wholeY - 1, height) * width;
            for (int x = 0; x < width; x++) {
                int at = clamp(x - wholeX, width);
                int left = clamp(x - wholeX - 1, width);
                sums[y * width + x] = (1 - fy) * ((1 - fx) * (from[here + at] & 255) + fx * (from[here + left] & 255))
                        + fy * ((1 - fx) * (from[above + at] & 255) + fx * (from[above + left] & 255));
            }
        }
        return sums;
    }

    /** Shares a pixel out by a line, over the four that it falls on, in place of evenly. */
    private void sharpen(Line line, int own, int left, int top, double fx, double fy, double[] sums) {
        for (int part = 0; part < 4; part++) {
            int x = left + part % 2;
            int y = top + part / 2;
            if (x >= 0 && y >= 0 && x < width && y < height) {
                double x0 = part % 2 == 0 ? 0 : 1 - fx;
                double y0 = part / 2 == 0 ? 0 : 1 - fy;
                double x1 = part % 2 == 0 ? 1 - fx : 1;
                double y1 = part / 2 == 0 ? 1 - fy : 1;
                sums[y * width + x] += (least - own) * (x1 - x0) * (y1 - y0) + step * line.covers(x0, y0, x1, y1);
            }
        }
    }

    private static int clamp(int v, int size) {
        return Math.max(0, Math.min(size - 1, v));
    }

    private int value(int x, int y) {
        return from[clamp(y, height) * width + clamp(x, width)] & 255;
    }

    /** Whether a pixel lies between two sides of which one is even; if so, the nine are read as shares of the way from one to the other. */
    private boolean onEdge(int x, int y) {
        int low = WHOLE;
        int high = 0;
        for (int k = 0; k < 9; k++) {
            int value = value(x + k % 3 - 1, y + k / 3 - 1);
            near[k] = value;
            low = Math.min(low, value);
            high = Math.max(high, value);
        }
        if (high - low < LEAST_STEP || near[4] <= low || near[4] >= high) {
            return false;
        }
        int lows = 0;
        int highs = 0;
        for (int k = 0; k < 9; k++) {
            lows += near[k] <= low + EVEN ? 1 : 0;
            highs += near[k] >= high - EVEN ? 1 : 0;
            near[k] = (near[k] - low) / (high - low);
        }
        least = low;
        step = high - low;
        return Math.max(lows, highs) >= LEAST_EVEN;
    }

    private Line line() {
        double[] columns = {near[0] + near[3] + near[6], near[1] + near[4] + near[7], near[2] + near[5] + near[8]};
        double[] rows = {near[0] + near[1] + near[2], near[3] + near[4] + near[5], near[6] + near[7] + near[8]};
        double down = rows[0] >= rows[2] ? 1 : -1;
        double right = columns[0] >= columns[2] ? 1 : -1;
        Line best = null;
        double smallest = Double.MAX_VALUE;
        for (int k = 0; k < 6; k++) {
            Line line = k < 3
                    ? Line.through(-slope(columns, k), down, near[4])
                    : Line.through(right, -slope(rows, k - 3), near[4]);
            double error = error(line);
            if (error < smallest) {
                smallest = error;
                best = line;
            }
        }
        return best;
    }

    private static double slope(double[] sums, int k) {
        return k == 0 ? sums[1] - sums[0] : k == 1 ? (sums[2] - sums[0]) / 2 : sums[2] - sums[1];
    }

    private double error(Line line) {
        double error = 0;
        for (int k = 0; k < 9; k++) {
            int x = k % 3 - 1;
            int y = k / 3 - 1;
            double d = line.covers(x, y, x + 1, y + 1) - near[k];
            error += d * d;
        }
        return error;
    }

    /**
     * Covers where {@code nx · x + ny · y <= far}, counted from the pixel's top left.
     *
     * @param nx normal, to the right
     * @param ny normal, down
     * @param far where along the normal
     */
    private record Line(double nx, double ny, double far) {
        /** @return the line of a direction that covers a share of the pixel, 0 to 1 */
        static Line through(double nx, double ny, double share) {
            double sum = Math.abs(nx) + Math.abs(ny);
            double less = Math.min(Math.abs(nx), Math.abs(ny)) / sum;
            double more = 1 - less;
            double half = Math.min(share, 1 - share);
            double far = half < less / (2 * more) ? Math.sqrt(2 * less * more * half) : half * more + less / 2;
            far = share > 0.5 ? 1 - far : far;
            return new Line(nx, ny, far * sum + Math.min(0, nx) + Math.min(0, ny));
        }

        /** @return area covered of a rectangle */
        double covers(double x0, double y0, double x1, double y1) {
            double across = nx * (x1 - x0);
            double down = ny * (y1 - y0);
            double sum = Math.abs(across) + Math.abs(down);
            double area = (x1 - x0) * (y1 - y0);
            if (sum < SMALL || area < SMALL) {
                return 0;
            }
            double at = (far - nx * x0 - ny * y0 - Math.min(0, across) - Math.min(0, down)) / sum;
            if (at <= 0 || at >= 1) {
                return at <= 0 ? 0 : area;
            }
            double less = Math.min(Math.abs(across), Math.abs(down)) / sum;
            double more = 1 - less;
            double half = Math.min(at, 1 - at);
            double share = half < less ? half * half / (2 * less * more) : (half - less / 2) / more;
            return area * (at > 0.5 ? 1 - share : share);
        }
    }
}
