package inkground.plate;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.geometry.Box;
import inkground.geometry.Matrix;

/**
 * Tells whether cells of a pattern that abut would leave seams if they were painted one by one: two coverages a and 1 − a of
 * the pixel that both share let a·(1 − a) of what lies beneath through, unless they are summed.
 */
final class Seams {
    /** In device pixels: edges this close to those of pixels are on them. */
    private static final double ON_PIXEL = 1e-6;

    private final Paint.Tiling tiling;
    private final Matrix cellToDevice;

    /** @param toDevice from page space */
    Seams(Paint.Tiling tiling, Matrix toDevice) {
        this.tiling = tiling;
        this.cellToDevice = tiling.toPage().then(toDevice);
    }

    /** @param repeats those that can show */
    boolean show(Repeats repeats) {
        boolean across = repeats.i1() > repeats.i0() && Repeats.abutAcross(tiling);
        boolean down = repeats.j1() > repeats.j0() && Repeats.abutDown(tiling);
        return (across || down)
                && Repeats.apart(tiling)
                && !onPixels()
                && tiling.cell().stream().anyMatch(op -> !summed(op) && reaches(op, across, down));
    }

    /** Whether the edges of all cells are edges of pixels. */
    private boolean onPixels() {
        Matrix m = cellToDevice;
        double x = tiling.xStep();
        double y = tiling.yStep();
        Box cell = tiling.cellBox();
        return Preparation.square(m)
                && whole(x * m.a())
                && whole(x * m.b())
                && whole(y * m.c())
                && whole(y * m.d())
                && whole(m.x(cell.x0(), cell.y0()))
                && whole(m.y(cell.x0(), cell.y0()));
    }

    private static boolean whole(double px) {
        return Math.abs(px - Math.rint(px)) < ON_PIXEL;
    }

    /** Whether an operation's coverages are summed over all cells, or are whole pixels. */
    private boolean summed(Op op) {
        if (!op.style().opaque()) {
            return false;
        }
        if (op instanceof Op.Image image) { // see Preparation on the shape of an image
            Matrix m = image.unitToPage().then(tiling.toPage().inverse()).then(cellToDevice);
            return op.clip() == null && Repeats.inside(op, tiling) && Preparation.square(m);
        }
        boolean flat = op instanceof Op.Fill fill && fill.paint() instanceof Paint.Flat
                || op instanceof Op.Stroke stroke && stroke.paint() instanceof Paint.Flat;
        boolean cut = true;
        for (Clip clip = op.clip(); clip != null; clip = clip.parent()) {
            cut &= Rectangles.convex(clip.path());
        }
        return flat && cut;
    }

    /** Whether an operation comes near an edge of its cell that another cell abuts. */
    private boolean reaches(Op op, boolean across, boolean down) {
        Box shown = op.clip() == null
                ? op.bounds()
                : op.bounds().intersect(op.clip().bounds());
        Box box = tiling.toPage().inverse().bounds(shown);
        Box cell = tiling.cellBox();
        double nearX = cell.width() * 1e-3;
        double nearY = cell.height() * 1e-3;
        boolean sides = box.x0() < cell.x0() + nearX || box.x1() > cell.x1() - nearX;
        boolean ends = box.y0() < cell.y0() + nearY || box.y1() > cell.y1() - nearY;
        return across && sides || down && ends;
    }
}
