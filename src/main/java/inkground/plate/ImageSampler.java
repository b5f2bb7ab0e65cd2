package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.geometry.Matrix;
import java.util.Arrays;

/**
 * Samples an image on the device grid. Reduced images are averaged over the area that each device pixel covers (exactly,
 * where the image stands square to the grid); enlarged ones show the nearest sample, or are interpolated where the file asks
 * for it.
 */
final class ImageSampler implements PixelSource {
    private final View tints;
    private final View alpha;

    /**
     * @param image what to paint
     * @param mask its alpha, of any size, or null
     * @param deviceToUnit from device pixels to the unit square, whose y grows up
     */
    ImageSampler(InkImage image, InkImage mask, Matrix deviceToUnit, boolean smooth) {
        this.tints = new View(image, deviceToUnit, smooth);
        this.alpha = mask == null ? null : new View(mask, deviceToUnit, smooth);
    }

    @Override
    public int[] planes() {
        return tints.image.planes;
    }

    @Override
    public Extent cell(int deviceX, int deviceY, int[][] out, int[] cover) {
        tints.cell(deviceX, deviceY, out);
        if (alpha == null) {
            return Extent.ALL;
        }
        alpha.cell(deviceX, deviceY, new int[][] {cover});
        toCover(cover);
        return Extent.SOME;
    }

    /** @return what gives the cover of a cell by an image mask */
    static PreparedOp.Stencil stencil(InkImage mask, Matrix deviceToUnit, boolean smooth) {
        View view = new View(mask, deviceToUnit, smooth);
        return (deviceX, deviceY, cover) -> {
            view.cell(deviceX, deviceY, new int[][] {cover});
            toCover(cover);
        };
    }

    private static void toCover(int[] tints) {
        for (int i = 0; i < CoverBand.CELL; i++) {
            tints[i] = Fixed.coverOfTint(tints[i]);
        }
    }

    /** One image at the level of reduction that fits the scale. */
    private static final class View {
        /** Least width of a sampled area, so that one at the image's rim is not empty. */
        private static final double LEAST = 1e-6;

        private final InkImage image;
        private final Matrix toSample; // from device pixel centres to sample coordinates, y down
        private final double spanX; // width of a device pixel in samples
        private final double spanY;
        private final boolean smooth;

        View(InkImage full, Matrix deviceToUnit, boolean smooth) {
            Matrix m = deviceToUnit.then(new Matrix(full.width, 0, 0, -full.height, 0, full.height));
            InkImage level = full;
            // A box of 4 samples or more stays after each halving, so that the areas remain exact to a part of it.
            while (Math.min(across(m), down(m)) >= 8 && level.width > 1 && level.height > 1) {
                InkImage half = level.half();
                m = m.then(Matrix.scale((double) half.width / level.width, (double) half.height / level.height));
                level = half;
            }
            this.image = level;
            this.toSample = m;
            this.spanX = across(m);
            this.spanY = down(m);
            this.smooth = smooth;
        }

        private static double across(Matrix m) {
            return Math.abs(m.a()) + Math.abs(m.c());
        }

        private static double down(Matrix m) {
            return Math.abs(m.b()) + Math.abs(m.d());
        }

        void cell(int deviceX, int deviceY, int[][] out) {
            // A reduction by less than a thousandth is none: the nearest sample is the pixel itself.
            boolean reduced = spanX > 1.001 || spanY > 1.001;
            boolean square = toSample.b() == 0 && toSample.c() == 0;
            if (square && reduced) {
                squareMean(deviceX, deviceY, out);
                return;
            } else if (square && !smooth) {
                square(deviceX, deviceY, out);
                return;
            }
            for (int y = 0; y < CELL_H; y++) {
                double py = deviceY + y + 0.5;
                int at = y * CELL_W;
                for (int x = 0; x < CELL_W; x++) {
                    double px = deviceX + x + 0.5;
                    double u = toSample.x(px, py);
                    double v = toSample.y(px, py);
                    if (reduced) {
                        mean(u, v, out, at + x);
                    } else if (smooth) {
                        between(u, v, out, at + x);
                    } else {
                        nearest(u, v, out, at + x);
                    }
                }
            }
        }

        /** Nearest samples of an image that stands square to the grid: columns are found once for all rows. */
        private void square(int deviceX, int deviceY, int[][] out) {
            int n = image.channels;
            int[] column = new int[CELL_W];
            for (int x = 0; x < CELL_W; x++) {
                column[x] = clamp(toSample.x(deviceX + x + 0.5, 0), image.width) * n;
            }
            int before = -1;
            for (int y = 0; y < CELL_H; y++) {
                int row = clamp(toSample.y(0, deviceY + y + 0.5), image.height);
                int at = y * CELL_W;
                for (int c = 0; c < n; c++) {
                    int[] plane = out[c];
                    if (row == before) { // enlarged: the row above again
                        System.arraycopy(plane, at - CELL_W, plane, at, CELL_W);
                        continue;
                    }
                    int start = row * image.width * n + c;
                    for (int x = 0; x < CELL_W; x++) {
                        plane[at + x] = (image.tints[start + column[x]] & 255) << 8;
                    }
                }
                before = row;
            }
        }

        /** As {@link #mean}, for an image that stands square to the grid: first down the columns, then along the row. */
        private void squareMean(int deviceX, int deviceY, int[][] out) {
            int n = image.channels;
            double[] start = new double[CELL_W];
            double[] end = new double[CELL_W];
            int low = image.width;
            int high = 0;
            for (int x = 0; x < CELL_W; x++) {
                double u = toSample.x(deviceX + x + 0.5, 0);
                start[x] = clip(u - Math.max(1, spanX) / 2, image.width);
                end[x] = Math.max(start[x] + LEAST, Math.min(image.width, u + Math.max(1, spanX) / 2));
                low = Math.min(low, (int) start[x]);
                high = Math.max(high, Math.min(image.width - 1, (int) end[x]));
            }
            float[] sums = new float[(high - low + 1) * n];
            for (int y = 0; y < CELL_H; y++) {
                double v = toSample.y(0, deviceY + y + 0.5);
                double v0 = clip(v - Math.max(1, spanY) / 2, image.height);
                double v1 = Math.max(v0 + LEAST, Math.min(image.height, v + Math.max(1, spanY) / 2));
                columns(v0, v1, low, sums);
                for (int x = 0; x < CELL_W; x++) {
                    int from = (int) start[x];
                    int to = Math.min(image.width - 1, (int) end[x]);
                    double scale = 256 / (end[x] - start[x]) / (v1 - v0);
                    for (int c = 0; c < n; c++) {
                        double sum = 0;
                        for (int i = from; i <= to; i++) {
                            sum += (Math.min(i + 1, end[x]) - Math.max(i, start[x])) * sums[(i - low) * n + c];
                        }
                        out[c][y * CELL_W + x] = (int) (sum * scale + 0.5);
                    }
                }
            }
        }

        /** Weighted sums of the samples of rows v0 to v1, for all columns from {@code low}. */
        private void columns(double v0, double v1, int low, float[] sums) {
            Arrays.fill(sums, 0);
            int last = Math.min(image.height - 1, (int) v1);
            for (int row = (int) v0; row <= last; row++) {
                float weight = (float) (Math.min(row + 1, v1) - Math.max(row, v0));
                int at = (row * image.width + low) * image.channels;
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += weight * (image.tints[at + i] & 255);
                }
            }
        }

        private static double clip(double at, int size) {
            return Math.max(0, Math.min(size - LEAST, at));
        }

        private void nearest(double u, double v, int[][] out, int at) {
            int sample = (clamp(v, image.height) * image.width + clamp(u, image.width)) * image.channels;
            for (int c = 0; c < image.channels; c++) {
                out[c][at] = (image.tints[sample + c] & 255) << 8;
            }
        }

        private static int clamp(double v, int size) {
            return (int) Math.max(0, Math.min(size - 1, Math.floor(v)));
        }

        private void between(double u, double v, int[][] out, int at) {
            double su = Math.max(0, Math.min(image.width - 1, u - 0.5));
            double sv = Math.max(0, Math.min(image.height - 1, v - 0.5));
            int x = (int) su;
            int y = (int) sv;
            int x1 = Math.min(x + 1, image.width - 1);
            int y1 = Math.min(y + 1, image.height - 1);
            double fx = su - x;
            double fy = sv - y;
            for (int c = 0; c < image.channels; c++) {
                double top = sample(x, y, c) * (1 - fx) + sample(x1, y, c) * fx;
                double bottom = sample(x, y1, c) * (1 - fx) + sample(x1, y1, c) * fx;
                out[c][at] = (int) Math.rint((top * (1 - fy) + bottom * fy) * 256);
            }
        }

        private int sample(int x, int y, int c) {
            return image.tints[(y * image.width + x) * image.channels + c] & 255;
        }

        /** The mean over the box of a device pixel, part samples weighed by their part. */
        private void mean(double u, double v, int[][] out, int at) {
            double halfX = Math.max(1, spanX) / 2;
            double halfY = Math.max(1, spanY) / 2;
            double u0 = clip(u - halfX, image.width);
            double u1 = Math.max(u0 + LEAST, Math.min(image.width, u + halfX));
            double v0 = clip(v - halfY, image.height);
            double v1 = Math.max(v0 + LEAST, Math.min(image.height, v + halfY));
            int xa = (int) u0;
            int xb = Math.min(image.width - 1, (int) u1);
            int ya = (int) v0;
            int yb = Math.min(image.height - 1, (int) v1);
            int n = image.channels;
            double c0 = 0;
            double c1 = 0;
            double c2 = 0;
            double c3 = 0;
            double area = 0;
            for (int y = ya; y <= yb; y++) {
                double wy = Math.min(y + 1, v1) - Math.max(y, v0);
                for (int x = xa; x <= xb; x++) {
                    double w = wy * (Math.min(x + 1, u1) - Math.max(x, u0));
                    int sample = (y * image.width + x) * n;
                    area += w;
                    c0 += w * (image.tints[sample] & 255);
                    if (n > 1) {
                        c1 += w * (image.tints[sample + 1] & 255);
                    }
                    if (n > 2) {
                        c2 += w * (image.tints[sample + 2] & 255);
                    }
                    if (n > 3) {
                        c3 += w * (image.tints[sample + 3] & 255);
                    }
                }
            }
            double scale = 256 / area;
            out[0][at] = (int) Math.rint(c0 * scale);
            if (n > 1) {
                out[1][at] = (int) Math.rint(c1 * scale);
            }
            if (n > 2) {
                out[2][at] = (int) Math.rint(c2 * scale);
            }
            if (n > 3) {
                out[3][at] = (int) Math.rint(c3 * scale);
            }
            for (int c = 4; c < n; c++) {
                out[c][at] = (int) Math.rint(meanOf(c, xa, xb, ya, yb, u0, u1, v0, v1) * scale);
            }
        }

        private double meanOf(int c, int xa, int xb, int ya, int yb, double u0, double u1, double v0, double v1) {
            double sum = 0;
            for (int y = ya; y <= yb; y++) {
                double wy = Math.min(y + 1, v1) - Math.max(y, v0);
                for (int x = xa; x <= xb; x++) {
                    sum += wy * (Math.min(x + 1, u1) - Math.max(x, u0)) * sample(x, y, c);
                }
            }
            return sum;
        }
    }
}
