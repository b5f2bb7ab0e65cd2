package inkground.handoff;

import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.base.Refusal;
import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import inkground.plate.ClearedPicture;
import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/**
 * Shapes of page space that hold what is bare of an operation, and beyond it at most what the operation itself hides: what
 * lies beneath is to be empty there.
 */
final class BareShapes {
    /** Rectangles that a picture's outline may take; their union grows slow beyond. */
    private static final int MOST_RECTANGLES = 4000;

    private static final int MOST_CELLS = 4096;
    private static final double EDGE = 0.001; // shares of a cell's width or height
    private static final double BEYOND = 0.5;
    private static final int OPAQUE = 250; // of 255
    private static final int HALF = 128;

    private final Bareness bareness;
    private final Cells cells;

    /** Where the bare part of a pattern's cell comes from. */
    interface Cells {
        /** @return shape in page space of what is bare in the cell at the origin */
        Area bareOf(Paint.Tiling tiling) throws Refusal;
    }

    BareShapes(Bareness bareness, Cells cells) {
        this.bareness = bareness;
        this.cells = cells;
    }

    /** @return the shape for an operation that is bare in part or all */
    Area of(Op op) throws Refusal {
        if (op instanceof Op.Image image) {
            ClearedPicture picture = bareness.picture(image.image()).orElseThrow();
            return raster(op, image.unitToPage(), picture.width(), picture.height(), (x, y) -> ofSample(picture, x, y));
        } else if (op instanceof Op.Stencil stencil) {
            ImageSource.Pixels mask = stencil.mask().decode();
            return raster(
                    op,
                    stencil.unitToPage(),
                    mask.width(),
                    mask.height(),
                    (x, y) -> (mask.samples()[y * mask.width() + x] & 255) < HALF
                            ? RasterCover.FORBIDDEN
                            : RasterCover.WANTED);
        }
        Area area =
                op instanceof Op.Shade ? Shapes.clipped(new Area(rectangle(op.bounds())), op.clip()) : Shapes.of(op);
        Paint paint = Bareness.paint(op);
        if (paint instanceof Paint.Shading shading) {
            area.intersect(painted(shading, area, op));
        } else if (paint instanceof Paint.Tiling tiling) {
            area.intersect(tiles(tiling, area, op));
        }
        return area;
    }

    private static Rectangle2D rectangle(Box box) {
        return new Rectangle2D.Double(box.x0(), box.y0(), box.width(), box.height());
    }

    private static int ofSample(ClearedPicture picture, int x, int y) {
        int mask = picture.maskAt(x, y);
        boolean gone = picture.kept()[y * picture.width() + x] != -1;
        if (gone) {
            return mask >= HALF ? RasterCover.WANTED : RasterCover.FORBIDDEN;
        }
        return mask >= OPAQUE ? RasterCover.FREE : RasterCover.FORBIDDEN;
    }

    private Area raster(Op op, Matrix unitToPage, int width, int height, RasterCover.Samples samples) throws Refusal {
        List<Rectangle> cover = RasterCover.of(width, height, samples, MOST_RECTANGLES)
                .orElseThrow(() -> bareness.refused(
                        "has an outline of more than " + MOST_RECTANGLES + " steps in a picture over other paint", op));
        Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        cover.forEach(rectangle -> path.append(rectangle, false));
        // samples run down from the top of the unit square
        path.transform(new AffineTransform(1.0 / width, 0, 0, -1.0 / height, 0, 1));
        path.transform(Awt.transform(unitToPage));
        return Shapes.clipped(new Area(path), op.clip());
    }

    /** What a shading paints of an area: all, unless it ends and has no background. */
    private Area painted(Paint.Shading shading, Area all, Op op) throws Refusal {
        Area out = new Area(all);
        if (shading.box() != null) {
            Path2D box = new Path2D.Double(rectangle(shading.box()));
            box.transform(Awt.transform(shading.toPage()));
            out.intersect(new Area(box));
        }
        if (shading.background() != null) {
            return out;
        } else if (shading.geometry() instanceof Paint.Axial axial) {
            out.intersect(strip(axial, shading.toPage(), all));
            return out;
        }
        if (!(shading.geometry() instanceof Paint.Radial r) || !oneInTheOther(r)) {
            throw bareness.refused("is a gradient that ends, over other paint", op);
        }
        if (!(r.r1() > r.r0() ? r.extendEnd() : r.extendStart())) {
            out.intersect(disc(r, r.r1() > r.r0(), shading.toPage()));
        }
        if (!(r.r1() > r.r0() ? r.extendStart() : r.extendEnd())) {
            out.subtract(disc(r, r.r1() <= r.r0(), shading.toPage()));
        }
        return out;
    }

    private static boolean oneInTheOther(Paint.Radial r) {
        return Math.hypot(r.x1() - r.x0(), r.y1() - r.y0()) < Math.abs(r.r1() - r.r0());
    }

    private static Area disc(Paint.Radial r, boolean second, Matrix toPage) {
        double x = second ? r.x1() : r.x0();
        double y = second ? r.y1() : r.y0();
        double radius = second ? r.r1() : r.r0();
        Area disc = new Area(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
        disc.transform(Awt.transform(toPage));
        return disc;
    }

    /** The strip that an axial shading paints, as long and wide as need be to hold an area. */
    private static Area strip(Paint.Axial axial, Matrix toPage, Area all) {
        double length = Math.hypot(axial.x1() - axial.x0(), axial.y1() - axial.y0());
        if (length == 0 || !toPage.invertible() || all.isEmpty()) {
            return new Area();
        }
        Rectangle2D box = Awt.transform(toPage.inverse())
                .createTransformedShape(all.getBounds2D())
                .getBounds2D();
        double far = 2
                * (box.getWidth()
                        + box.getHeight()
                        + length
                        + Math.hypot(box.getCenterX() - axial.x0(), box.getCenterY() - axial.y0()));
        double from = axial.extendStart() ? -far : 0;
        double to = axial.extendEnd() ? far : length;
        Path2D strip = new Path2D.Double(new Rectangle2D.Double(from, -far, to - from, 2 * far));
        AffineTransform along = AffineTransform.getTranslateInstance(axial.x0(), axial.y0());
        along.rotate(axial.x1() - axial.x0(), axial.y1() - axial.y0());
        strip.transform(along);
        strip.transform(Awt.transform(toPage));
        return new Area(strip);
    }

    /**
     * Carries a shape that reaches the edges of a pattern's cell on beyond them: a renderer that paints every pixel that is
     * touched would else leave a line there.
     */
    static Area overEdges(Area area, Paint.Tiling tiling) {
        if (area.isEmpty() || !tiling.toPage().invertible()) {
            return area;
        }
        Box cell = tiling.cellBox();
        Area out = area.createTransformedArea(Awt.transform(tiling.toPage().inverse()));
        for (boolean across : new boolean[] {true, false}) {
            double size = across ? cell.width() : cell.height();
            for (boolean end : new boolean[] {false, true}) {
                double edge = across ? (end ? cell.x1() : cell.x0()) : end ? cell.y1() : cell.y0();
                double inside = edge + (end ? -EDGE : EDGE) * size;
                Area rim = new Area(out);
                rim.intersect(new Area(rim(cell, across, Math.min(edge, inside), Math.max(edge, inside))));
                double stretch = (EDGE + BEYOND) / EDGE;
                AffineTransform outward = AffineTransform.getTranslateInstance(
                        across ? inside * (1 - stretch) : 0, across ? 0 : inside * (1 - stretch));
                outward.scale(across ? stretch : 1, across ? 1 : stretch);
                out.add(rim.createTransformedArea(outward));
            }
        }
        return out.createTransformedArea(Awt.transform(tiling.toPage()));
    }

    private static Rectangle2D rim(Box cell, boolean across, double from, double to) {
        double far = 2 * Math.max(cell.width(), cell.height());
        return across
                ? new Rectangle2D.Double(from, cell.y0() - far, to - from, cell.height() + 2 * far)
                : new Rectangle2D.Double(cell.x0() - far, from, cell.width() + 2 * far, to - from);
    }

    /** What is bare of all the cells that an area shows. */
    private Area tiles(Paint.Tiling tiling, Area all, Op op) throws Refusal {
        Area cell = cells.bareOf(tiling);
        Path2D clip = new Path2D.Double(rectangle(tiling.cellBox()));
        clip.transform(Awt.transform(tiling.toPage()));
        cell.intersect(new Area(clip));
        if (cell.isEmpty() || all.isEmpty() || !tiling.toPage().invertible()) {
            return new Area();
        }
        Box shown = tiling.toPage().inverse().bounds(Shapes.bounds(all));
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        double i0 = Math.floor((shown.x0() - tiling.cellBox().x1()) / xStep);
        double i1 = Math.ceil((shown.x1() - tiling.cellBox().x0()) / xStep);
        double j0 = Math.floor((shown.y0() - tiling.cellBox().y1()) / yStep);
        double j1 = Math.ceil((shown.y1() - tiling.cellBox().y0()) / yStep);
        if (!((i1 - i0 + 1) * (j1 - j0 + 1) <= MOST_CELLS)) {
            throw bareness.refused("is in a pattern of more than " + MOST_CELLS + " cells over other paint", op);
        }
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        Matrix page = tiling.toPage();
        for (double j = j0; j <= j1; j++) {
            for (double i = i0; i <= i1; i++) {
                double x = i * xStep;
                double y = j * yStep;
                path.append(
                        cell.getPathIterator(AffineTransform.getTranslateInstance(
                                page.a() * x + page.c() * y, page.b() * x + page.d() * y)),
                        false);
            }
        }
        return new Area(path);
    }
}
