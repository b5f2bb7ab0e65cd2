package inkground.geometry;

/**
 * An axis-aligned rectangle, half-open: {@code x0 <= x < x1}, {@code y0 <= y < y1}. In page space the unit is the point
 * (1/72 in), x grows to the right and y grows down.
 *
 * @param x0 left edge
 * @param y0 top edge
 * @param x1 right edge, not less than {@code x0}
 * @param y1 bottom edge, not less than {@code y0}
 */
public record Box(double x0, double y0, double x1, double y1) {
    /** Millimetres in one point: 25.4 / 72. */
    public static final double MM_PER_PT = 25.4 / 72;

    /** A box that holds nothing; the neutral element of {@link #union}. */
    public static final Box EMPTY = new Box(0, 0, 0, 0);

    /** Rejects unordered or non-finite edges. */
    public Box {
        if (!(x0 <= x1) || !(y0 <= y1) || Double.isInfinite(x1 - x0) || Double.isInfinite(y1 - y0)) {
            throw new IllegalArgumentException(
                    "box edges out of order or not finite: " + x0 + " " + y0 + " " + x1 + " " + y1);
        }
    }

    /** @return the box with these two opposite corners, in any order */
    public static Box ofCorners(double xa, double ya, double xb, double yb) {
        return new Box(Math.min(xa, xb), Math.min(ya, yb), Math.max(xa, xb), Math.max(ya, yb));
    }

    /** @return width in the box's own unit */
    public double width() {
        return x1 - x0;
    }

    /** @return height in the box's own unit */
    public double height() {
        return y1 - y0;
    }

    /** @return width in millimetres, of a box in points */
    public double widthMm() {
        return width() * MM_PER_PT;
    }

    /** @return height in millimetres, of a box in points */
    public double heightMm() {
        return height() * MM_PER_PT;
    }

    /** @return whether the box has no area */
    public boolean isEmpty() {
        return x0 >= x1 || y0 >= y1;
    }

    /** @return the common part, or {@link #EMPTY} */
    public Box intersect(Box other) {
        double left = Math.max(x0, other.x0);
        double top = Math.max(y0, other.y0);
        double right = Math.min(x1, other.x1);
        double bottom = Math.min(y1, other.y1);
        return left < right && top < bottom ? new Box(left, top, right, bottom) : EMPTY;
    }

    /** @return the smallest box that holds both; an empty box adds nothing */
    public Box union(Box other) {
        if (isEmpty()) {
            return other;
        }
        if (other.isEmpty()) {
            return this;
        }
        return new Box(Math.min(x0, other.x0), Math.min(y0, other.y0), Math.max(x1, other.x1), Math.max(y1, other.y1));
    }

    /** @return this box grown by {@code margin} on each side; never below zero size */
    public Box grow(double margin) {
        double dx = Math.max(margin, -width() / 2);
        double dy = Math.max(margin, -height() / 2);
        return new Box(x0 - dx, y0 - dy, x1 + dx, y1 + dy);
    }
}
