package inkground.geometry;

import java.util.Arrays;

/**
 * An immutable path of straight lines and cubic Bézier curves. Segments are one byte each ({@link #MOVE}, {@link #LINE},
 * {@link #CURVE}, {@link #CLOSE}) with 2, 2, 6 and 0 coordinates. Every sub-path starts with a move. Coordinates are
 * finite.
 */
public final class Outline {
    /** Starts a sub-path: x, y. */
    public static final byte MOVE = 0;
    /** Straight line to x, y. */
    public static final byte LINE = 1;
    /** Cubic curve: two control points and the end. */
    public static final byte CURVE = 2;
    /** Straight line back to the start of the sub-path, joined there. */
    public static final byte CLOSE = 3;

    /** The path without segments. */
    public static final Outline EMPTY = new Outline(new byte[0], new double[0]);

    private static final int[] COORDS = {2, 2, 6, 0};

    private final byte[] segments;
    private final double[] coords;
    private final Box bounds;

    private Outline(byte[] segments, double[] coords) {
        this.segments = segments;
        this.coords = coords;
        this.bounds = boundsOf(coords);
    }

    private static Box boundsOf(double[] coords) {
        if (coords.length == 0) {
            return Box.EMPTY;
        }
        double x0 = Double.POSITIVE_INFINITY;
        double y0 = Double.POSITIVE_INFINITY;
        double x1 = Double.NEGATIVE_INFINITY;
        double y1 = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < coords.length; i += 2) {
            x0 = Math.min(x0, coords[i]);
            x1 = Math.max(x1, coords[i]);
            y0 = Math.min(y0, coords[i + 1]);
            y1 = Math.max(y1, coords[i + 1]);
        }
        return new Box(x0, y0, x1, y1);
    }

    /** @return the closed path along the edges of {@code box}, clockwise when y grows down */
    public static Outline rectangle(Box box) {
        return new Builder()
                .move(box.x0(), box.y0())
                .line(box.x1(), box.y0())
                .line(box.x1(), box.y1())
                .line(box.x0(), box.y1())
                .close()
                .build();
    }

    /** @return number of segments */
    public int size() {
        return segments.length;
    }

    /** @return whether there is no segment */
    public boolean isEmpty() {
        return segments.length == 0;
    }

    /** @return box of all points, control points included; an upper bound of the ink of a fill */
    public Box bounds() {
        return bounds;
    }

    /** Walks all segments in order. */
    public void forEach(Visitor visitor) {
        int c = 0;
        for (byte segment : segments) {
            switch (segment) {
                case MOVE -> visitor.move(coords[c], coords[c + 1]);
                case LINE -> visitor.line(coords[c], coords[c + 1]);
                case CURVE ->
                    visitor.curve(coords[c], coords[c + 1], coords[c + 2], coords[c + 3], coords[c + 4], coords[c + 5]);
                default -> visitor.close();
            }
            c += COORDS[segment];
        }
    }

    /** @return the image of this path; {@code this} when the map is the identity */
    public Outline transform(Matrix m) {
        if (m.equals(Matrix.IDENTITY)) {
            return this;
        }
        double[] out = new double[coords.length];
        for (int i = 0; i < coords.length; i += 2) {
            out[i] = m.x(coords[i], coords[i + 1]);
            out[i + 1] = m.y(coords[i], coords[i + 1]);
            if (!Double.isFinite(out[i]) || !Double.isFinite(out[i + 1])) {
                throw new ArithmeticException("path leaves the range of numbers");
            }
        }
        return new Outline(segments, out);
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof Outline other
                && Arrays.equals(segments, other.segments)
                && Arrays.equals(coords, other.coords);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(segments) + Arrays.hashCode(coords);
    }

    @Override
    public String toString() {
        return "Outline[" + segments.length + " segments in " + bounds + "]";
    }

    /** Receives the segments of a path. */
    public interface Visitor {
        /** A sub-path starts. */
        void move(double x, double y);

        /** A straight line from the current point. */
        void line(double x, double y);

        /** A cubic curve from the current point. */
        void curve(double x1, double y1, double x2, double y2, double x, double y);

        /** The sub-path is closed. */
        void close();
    }

    /** Collects segments. A line or curve without a start begins a sub-path at its own first point. */
    public static final class Builder {
        private byte[] segments = new byte[16];
        private double[] coords = new double[64];
        private int segmentCount;
        private int coordCount;
        private boolean open;
        private double startX;
        private double startY;

        /** Starts a sub-path. */
        public Builder move(double x, double y) {
            push(MOVE, x, y);
            startX = x;
            startY = y;
            open = true;
            return this;
        }

        /** Adds a straight line. */
        public Builder line(double x, double y) {
            reopen(x, y);
            push(LINE, x, y);
            return this;
        }

        /** Adds a cubic curve. */
        public Builder curve(double x1, double y1, double x2, double y2, double x, double y) {
            reopen(x1, y1);
            push(CURVE, x1, y1, x2, y2, x, y);
            return this;
        }

        /** Closes the sub-path, if one is open. */
        public Builder close() {
            if (open) {
                push(CLOSE);
                open = false;
            }
            return this;
        }

        /** Appends every segment of another path. */
        public Builder append(Outline other) {
            other.forEach(new Visitor() {
                @Override
                public void move(double x, double y) {
                    Builder.this.move(x, y);
                }

                @Override
                public void line(double x, double y) {
                    Builder.this.line(x, y);
                }

                @Override
                public void curve(double x1, double y1, double x2, double y2, double x, double y) {
                    Builder.this.curve(x1, y1, x2, y2, x, y);
                }

                @Override
                public void close() {
                    Builder.this.close();
                }
            });
            return this;
        }

        /** @return whether nothing was added yet */
        public boolean isEmpty() {
            return segmentCount == 0;
        }

        /** @return the path collected so far; the builder stays usable */
        public Outline build() {
            return segmentCount == 0
                    ? EMPTY
                    : new Outline(Arrays.copyOf(segments, segmentCount), Arrays.copyOf(coords, coordCount));
        }

        private void reopen(double x, double y) {
            if (!open) {
                if (segmentCount > 0) {
                    move(startX, startY); // after a close the current point is the sub-path's start
                } else {
                    move(x, y);
                }
            }
        }

        private void push(byte segment, double... values) {
            for (double v : values) {
                if (!Double.isFinite(v)) {
                    throw new ArithmeticException("path coordinate is not a number");
                }
            }
            if (segmentCount == segments.length) {
                segments = Arrays.copyOf(segments, segmentCount * 2);
            }
            if (coordCount + values.length > coords.length) {
                coords = Arrays.copyOf(coords, coords.length * 2);
            }
            segments[segmentCount++] = segment;
            System.arraycopy(values, 0, coords, coordCount, values.length);
            coordCount += values.length;
        }
    }
}
