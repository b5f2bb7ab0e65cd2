package inkground.plate;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Brings tiling patterns to one scale: ISO 32000-2 §8.7.3. A cell is repeated as operations, the flat opaque ones of which
 * are summed over all cells; or, where cells would leave seams or are very many, one step is painted once and shown
 * everywhere. Painting that looks at what lies beneath the pattern, by overprint or blending, and patterns in knockout
 * groups, where shape counts apart from opacity, are always repeated as operations, seams included, unless the cells are very
 * many. Belongs to one {@link Preparation}.
 */
final class Patterns {
    /** Most operations that the repeats of one pattern may come to; beyond, one step is painted once. */
    private static final long MOST_COPIES = 50_000;

    /** Memory for the steps of one page, in bytes. */
    private static final long MOST_BYTES = 128L << 20;

    /** A step may take one part in so many of the memory that is left: so there is always some left. */
    private static final int SHARE = 4;

    private final Preparation preparation;
    private final Room room;
    private final Map<Paint.Tiling, Optional<StepRaster>> steps = new IdentityHashMap<>();

    /** What the patterns of a page share. */
    private static final class Room {
        private long bytes = MOST_BYTES;
    }

    /** @param outer of the preparation around this one; null for none */
    Patterns(Preparation preparation, Patterns outer) {
        this.preparation = preparation;
        this.room = outer == null ? new Room() : outer.room;
    }

    /** @return what fills the shape of an operation with a pattern; null for nothing */
    Filling filling(Op op, Paint.Tiling tiling) throws Refusal {
        if (!tiling.toPage().invertible()) {
            return null;
        }
        Box visible = op.clip() == null
                ? op.bounds()
                : op.bounds().intersect(op.clip().bounds());
        if (visible.isEmpty()) {
            return null;
        }
        Repeats repeats = Repeats.over(tiling.toPage().inverse().bounds(visible), tiling);
        if (repeats.operations(tiling) > MOST_COPIES) {
            return new Filling.Steps(ofVeryMany(op, tiling));
        }
        if (!preparation.inKnockout() && new Seams(tiling, preparation.toDevice).show(repeats)) {
            Optional<StepRaster> step = steps.get(tiling);
            if (step == null) {
                step = seamless(tiling);
                steps.put(tiling, step);
            }
            if (step.isPresent()) {
                return new Filling.Steps(step.get());
            }
        }
        return preparation.content(copies(tiling, repeats, preparation), false, false, null);
    }

    /** Repeats the cell, each copy clipped to the cell's box. */
    private static PreparedList copies(Paint.Tiling tiling, Repeats repeats, Preparation with) throws Refusal {
        List<List<PreparedOp>> copies = new ArrayList<>();
        Matrix m = tiling.toPage();
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        Outline box = Outline.rectangle(tiling.cellBox()).transform(m);
        for (long j = repeats.j0(); j <= repeats.j1(); j++) {
            for (long i = repeats.i0(); i <= repeats.i1(); i++) {
                double dx = i * xStep * m.a() + j * yStep * m.c();
                double dy = i * xStep * m.b() + j * yStep * m.d();
                Matrix shift = Matrix.translate(dx, dy);
                Clip bounds = Clip.of(null, box.transform(shift), FillRule.NON_ZERO);
                List<Op> copy = new ArrayList<>();
                for (Op child : tiling.cell()) {
                    copy.add(Shifted.of(child, shift, Repeats.inside(child, tiling) ? null : bounds));
                }
                copies.add(with.cell(copy));
            }
        }
        return Repeats.apart(tiling) ? PreparedList.ofCellsApart(copies) : PreparedList.ofCells(copies);
    }

    /** One step of cells that abut; none where it would not be what the repeats are, or is too large. */
    private Optional<StepRaster> seamless(Paint.Tiling tiling) throws Refusal {
        Step step = new Step(tiling);
        Repeats one = new Repeats(0, 0, 0, 0);
        StepGrid grid = StepGrid.fine(step.acrossPx, step.downPx, step.sine, one.operations(tiling), mostPixels());
        if (grid == null) {
            return Optional.empty();
        }
        PreparedList list = step.prepared(grid, one);
        return looksBeneath(list) ? Optional.empty() : Optional.of(step.painted(grid, list));
    }

    /** One step of very many cells, as fine as there is memory for. */
    private StepRaster ofVeryMany(Op op, Paint.Tiling stated) throws Refusal {
        Optional<StepRaster> known = steps.get(stated);
        if (known != null && known.isPresent()) {
            return known.get();
        }
        Paint.Tiling tiling = Repeats.thinned(stated, MOST_COPIES);
        if (tiling != stated) {
            preparation.approximate("cells of a pattern that overlap very often", "with longer steps", op);
        }
        Step step = new Step(tiling);
        Repeats all = Repeats.ofOneStep(tiling);
        StepGrid grid = StepGrid.fitting(step.acrossPx, step.downPx, step.sine, all.operations(tiling), mostPixels());
        PreparedList list = step.prepared(grid, all);
        if (looksBeneath(list)) {
            preparation.approximate("overprint or blending in a pattern of very many cells", "the cells knock out", op);
        }
        StepRaster made = step.painted(grid, list);
        steps.put(stated, Optional.of(made));
        return made;
    }

    private boolean looksBeneath(PreparedList list) {
        long all = preparation.mapping.touched(Colour.BLACK.space(), false);
        return Arrays.stream(list.all()).anyMatch(child -> Preparation.looksBeneath(child, all));
    }

    private int planes() {
        return preparation.mapping.tintPlanes() + 3; // mark, inked and laid plane
    }

    private long mostPixels() {
        return room.bytes / SHARE / planes();
    }

    /** One step of a pattern: from the near corner of the cell's box to that of the next cells. */
    private final class Step {
        private final Paint.Tiling tiling;
        private final Matrix toSteps; // from page space, the step being the unit square
        private final double acrossPx;
        private final double downPx;
        private final double sine;

        Step(Paint.Tiling tiling) {
            this.tiling = tiling;
            Box cell = tiling.cellBox();
            // a box that is the step but for rounding is the step
            double xStep = Repeats.abutAcross(tiling) ? cell.width() : Math.abs(tiling.xStep());
            double yStep = Repeats.abutDown(tiling) ? cell.height() : Math.abs(tiling.yStep());
            this.toSteps = tiling.toPage()
                    .inverse()
                    .then(Matrix.translate(-cell.x0(), -cell.y0()))
                    .then(Matrix.scale(1 / xStep, 1 / yStep));
            Matrix m = Matrix.scale(xStep, yStep).then(tiling.toPage()).then(preparation.toDevice);
            this.acrossPx = Math.hypot(m.a(), m.b());
            this.downPx = Math.hypot(m.c(), m.d());
            this.sine = m.determinant() / acrossPx / downPx;
        }

        PreparedList prepared(StepGrid grid, Repeats repeats) throws Refusal {
            Matrix toGrid = toSteps.then(Matrix.scale(grid.width(), grid.height()));
            return copies(tiling, repeats, new Preparation(preparation, toGrid, grid.density()));
        }

        StepRaster painted(StepGrid grid, PreparedList list) {
            PlateRequest region =
                    new PlateRequest(1, 0, 0, grid.width(), grid.height(), preparation.overprint, preparation.layersOn);
            InkPlanes.Cell[] cells =
                    Bands.paint(list, preparation.mapping.tintPlanes(), region, preparation.cancel, Progress.NONE);
            // repeats stand where the stated steps say
            Matrix m = tiling.toPage();
            double x = Math.abs(tiling.xStep());
            double y = Math.abs(tiling.yStep());
            Matrix deviceToGrid = preparation
                    .toDevice
                    .inverse()
                    .then(m.inverse())
                    .then(Matrix.translate(
                            -tiling.cellBox().x0(), -tiling.cellBox().y0()))
                    .then(Matrix.scale(grid.width() / x, grid.height() / y));
            StepRaster made = new StepRaster(grid, deviceToGrid, cells, planes(), preparation.cancel);
            room.bytes -= made.bytes();
            return made;
        }
    }
}
