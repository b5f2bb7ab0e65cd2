package inkground.artwork.pdf;

import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.geom.Point2D;

/** The path under construction: taken in user space of the page, kept in page space. */
final class PathBuilder {
    private final Matrix userToPage;
    private Outline.Builder path = new Outline.Builder();
    private Point2D.Float current;
    private Point2D.Float start;
    private FillRule pendingClip;

    PathBuilder(Matrix userToPage) {
        this.userToPage = userToPage;
    }

    void move(float x, float y) {
        path.move(userToPage.x(x, y), userToPage.y(x, y));
        current = new Point2D.Float(x, y);
        start = current;
    }

    void line(float x, float y) {
        path.line(userToPage.x(x, y), userToPage.y(x, y));
        current = new Point2D.Float(x, y);
    }

    void curve(float x1, float y1, float x2, float y2, float x3, float y3) {
        path.curve(
                userToPage.x(x1, y1),
                userToPage.y(x1, y1),
                userToPage.x(x2, y2),
                userToPage.y(x2, y2),
                userToPage.x(x3, y3),
                userToPage.y(x3, y3));
        current = new Point2D.Float(x3, y3);
    }

    void close() {
        path.close();
        current = start;
    }

    /** The point that a curve's short form starts from; null when there is none. */
    Point2D current() {
        return current;
    }

    boolean isEmpty() {
        return path.isEmpty();
    }

    Outline outline() {
        return path.build();
    }

    /** Asks for the path to narrow the clip once it has been painted. */
    void clipAtEnd(FillRule rule) {
        pendingClip = rule;
    }

    /** How the path is to narrow the clip; null when it is not. */
    FillRule pendingClip() {
        return path.isEmpty() ? null : pendingClip;
    }

    /** Starts a new path. */
    void reset() {
        path = new Outline.Builder();
        current = null;
        start = null;
        pendingClip = null;
    }
}
