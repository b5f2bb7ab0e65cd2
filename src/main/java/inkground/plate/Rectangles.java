package inkground.plate;

import inkground.geometry.Box;
import inkground.geometry.Outline;

/** Tells which paths are upright rectangles or convex: those intersect exactly, also inside a pixel. */
final class Rectangles {
    private Rectangles() {}

    /** @return the rectangle that a path is, whatever its direction; null when it is anything else */
    static Box of(Outline path) {
        Corners corners = Corners.of(path);
        return corners != null && corners.upright() ? path.bounds() : null;
    }

    /** @return whether a path is a convex quadrilateral: a rectangle turned or slanted */
    static boolean convex(Outline path) {
        Corners corners = Corners.of(path);
        return corners != null && corners.convex();
    }

    /** @return whether {@code inner} reaches beyond no side of {@code outer} */
    static boolean holds(Box outer, Box inner) {
        return outer.x0() <= inner.x0()
                && outer.y0() <= inner.y0()
                && outer.x1() >= inner.x1()
                && outer.y1() >= inner.y1();
    }

    private static final class Corners implements Outline.Visitor {
        private final double[] x = new double[6];
        private final double[] y = new double[6];
        private int count;
        private boolean straight = true;

        /** @return the corners of a path; null when it has too few or too many */
        static Corners of(Outline path) {
            if (path.size() < 4 || path.size() > 6) {
                return null;
            }
            Corners corners = new Corners();
            path.forEach(corners);
            corners.dropRepeatedFirst();
            return corners;
        }

        private void dropRepeatedFirst() {
            if (count == 5 && x[4] == x[0] && y[4] == y[0]) {
                count = 4;
            }
        }

        @Override
        public void move(double px, double py) {
            straight &= count == 0;
            line(px, py);
        }

        @Override
        public void line(double px, double py) {
            x[count] = px;
            y[count++] = py;
        }

        @Override
        public void curve(double x1, double y1, double x2, double y2, double px, double py) {
            straight = false;
        }

        @Override
        public void close() {
            // the way back to the first corner is implied
        }

        /** Four corners at which the way round turns to one side, never back nor straight on. */
        boolean convex() {
            int turns = 0;
            for (int i = 0; i < 4; i++) {
                int j = (i + 1) % 4;
                int k = (i + 2) % 4;
                turns += Math.signum((x[j] - x[i]) * (y[k] - y[j]) - (y[j] - y[i]) * (x[k] - x[j]));
            }
            return straight && count == 4 && Math.abs(turns) == 4;
        }

        boolean upright() {
            boolean first = x[0] == x[1] && y[1] == y[2] && x[2] == x[3] && y[3] == y[0];
            boolean second = y[0] == y[1] && x[1] == x[2] && y[2] == y[3] && x[3] == x[0];
            return straight && count == 4 && (first || second);
        }
    }
}
