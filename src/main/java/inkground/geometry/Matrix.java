package inkground.geometry;

/**
 * An affine map {@code x' = a·x + c·y + e}, {@code y' = b·x + d·y + f}; the coefficients are named and ordered as in ISO
 * 32000-2 §8.3.3.
 *
 * @param a x scale
 * @param b y shear
 * @param c x shear
 * @param d y scale
 * @param e x offset
 * @param f y offset
 */
public record Matrix(double a, double b, double c, double d, double e, double f) {
    /** The map that changes nothing. */
    public static final Matrix IDENTITY = new Matrix(1, 0, 0, 1, 0, 0);

    /** @return a scaling about the origin */
    public static Matrix scale(double sx, double sy) {
        return new Matrix(sx, 0, 0, sy, 0, 0);
    }

    /** @return a shift */
    public static Matrix translate(double tx, double ty) {
        return new Matrix(1, 0, 0, 1, tx, ty);
    }

    /** @return the map that applies this one first, then {@code next} */
    public Matrix then(Matrix next) {
        return new Matrix(
                a * next.a + b * next.c,
                a * next.b + b * next.d,
                c * next.a + d * next.c,
                c * next.b + d * next.d,
                e * next.a + f * next.c + next.e,
                e * next.b + f * next.d + next.f);
    }

    /** @return x of the image of the point */
    public double x(double px, double py) {
        return a * px + c * py + e;
    }

    /** @return y of the image of the point */
    public double y(double px, double py) {
        return b * px + d * py + f;
    }

    /** @return signed area factor */
    public double determinant() {
        return a * d - b * c;
    }

    /** @return whether the map can be undone: finite and of non-zero area */
    public boolean invertible() {
        double det = determinant();
        return det != 0 && !Double.isNaN(det) && !Double.isInfinite(det) && !Double.isInfinite(1 / det);
    }

    /**
     * @return the map that undoes this one
     * @throws ArithmeticException if it is not {@link #invertible}
     */
    public Matrix inverse() {
        if (!invertible()) {
            throw new ArithmeticException("matrix of no area");
        }
        double det = determinant();
        return new Matrix(d / det, -b / det, -c / det, a / det, (c * f - d * e) / det, (b * e - a * f) / det);
    }

    /** @return length factor of an isotropic map of the same area: √|det| */
    public double meanScale() {
        return Math.sqrt(Math.abs(determinant()));
    }

    /** @return the bounding box of the image of {@code box} */
    public Box bounds(Box box) {
        double xa = x(box.x0(), box.y0());
        double xb = x(box.x1(), box.y0());
        double xc = x(box.x1(), box.y1());
        double xd = x(box.x0(), box.y1());
        double ya = y(box.x0(), box.y0());
        double yb = y(box.x1(), box.y0());
        double yc = y(box.x1(), box.y1());
        double yd = y(box.x0(), box.y1());
        return new Box(
                Math.min(Math.min(xa, xb), Math.min(xc, xd)),
                Math.min(Math.min(ya, yb), Math.min(yc, yd)),
                Math.max(Math.max(xa, xb), Math.max(xc, xd)),
                Math.max(Math.max(ya, yb), Math.max(yc, yd)));
    }
}
