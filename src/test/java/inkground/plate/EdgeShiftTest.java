package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Edges whose place is known, before and after they have moved by parts of a pixel. */
class EdgeShiftTest {
    private static final int SIZE = 40;
    private static final int POINTS = 32; // across and down a pixel

    /** Whether a point, in pixels, is covered. */
    private interface Shape {
        boolean holds(double x, double y);
    }

    private static byte[] raster(Shape shape, double dx, double dy) {
        byte[] out = new byte[SIZE * SIZE];
        for (int i = 0; i < out.length; i++) {
            int sum = 0;
            for (int k = 0; k < POINTS * POINTS; k++) {
                double x = i % SIZE + (k % POINTS + 0.5) / POINTS - dx;
                double y = i / SIZE + (k / POINTS + 0.5) / POINTS - dy;
                sum += shape.holds(x, y) ? 1 : 0;
            }
            out[i] = (byte) Math.round(255.0 * sum / POINTS / POINTS);
        }
        return out;
    }

    private static byte[] moved(byte[] from, double dx, double dy) {
        byte[] to = new byte[from.length];
        EdgeShift.move(from, SIZE, SIZE, dx, dy, to);
        return to;
    }

    private static double sum(byte[] raster) {
        double sum = 0;
        for (byte b : raster) {
            sum += b & 255;
        }
        return sum;
    }

    private static final double[][] WAYS = {{0.4, 0}, {0.25, 0.7}, {-1.3, 2.6}, {-0.5, -0.5}};

    @Test
    void aStraightEdgeStaysAsSharpAsItWasAtAnyAngle() {
        for (double degrees : new double[] {0, 7, 22.5, 30, 45, 80, 100, 200, 300}) {
            double c = Math.cos(Math.toRadians(degrees));
            double s = Math.sin(Math.toRadians(degrees));
            Shape half = (x, y) -> (x - 20.2) * c + (y - 19.7) * s < 0;
            for (double[] way : WAYS) {
                byte[] moved = moved(raster(half, 0, 0), way[0], way[1]);
                byte[] right = raster(half, way[0], way[1]);
                for (int y = 4; y < SIZE - 4; y++) {
                    for (int x = 4; x < SIZE - 4; x++) {
                        assertThat(moved[y * SIZE + x] & 255)
                                .as(degrees + "°, by " + way[0] + ", " + way[1] + " at " + x + ", " + y)
                                .isCloseTo(right[y * SIZE + x] & 255, within(6));
                    }
                }
            }
        }
    }

    @Test
    void aShapeKeepsItsArea() {
        Shape disc = (x, y) -> Math.hypot(x - 19.7, y - 20.1) < 9;
        Shape line = (x, y) -> Math.abs((x - 20) * 0.6 + (y - 20) * 0.8) < 0.4 && Math.hypot(x - 20, y - 20) < 12;
        for (Shape shape : new Shape[] {disc, line}) {
            byte[] from = raster(shape, 0, 0);
            for (double[] way : WAYS) {
                assertThat(sum(moved(from, way[0], way[1]))).isCloseTo(sum(from), within(0.003 * sum(from)));
            }
        }
    }

    @Test
    void wholePixelsAreMovedAsTheyAreAndTheRimGoesOn() {
        byte[] from = raster((x, y) -> Math.hypot(x, y - 20.1) < 9, 0, 0);
        byte[] moved = moved(from, 3, -2);
        for (int y = 0; y < SIZE - 2; y++) {
            for (int x = 0; x < SIZE; x++) {
                assertThat(moved[y * SIZE + x]).isEqualTo(from[(y + 2) * SIZE + Math.max(0, x - 3)]);
            }
        }
    }

    @Test
    void toneIsInterpolated() {
        byte[] from = new byte[SIZE * SIZE];
        for (int i = 0; i < from.length; i++) {
            from[i] = (byte) (4 * (i % SIZE));
        }
        byte[] moved = moved(from, 0.5, 0.5);
        assertThat(moved[20 * SIZE + 20] & 255).isEqualTo(78);
    }
}
