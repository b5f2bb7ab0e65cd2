package inkground.app;

import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import java.util.Optional;
import java.util.Set;

/** The box around all ink of a page's trim. */
public final class InkedBox {
    /** Resolution of the measure: 0.17 mm. */
    private static final double DPI = 150;

    private int x0 = Integer.MAX_VALUE;
    private int y0 = Integer.MAX_VALUE;
    private int x1 = Integer.MIN_VALUE;
    private int y1 = Integer.MIN_VALUE;

    private InkedBox() {}

    /**
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @return in points, to 0.17 mm and never beyond the trim; empty where no ink prints. Inks that do not print do not count.
     */
    public static Optional<Box> of(
            PageJob page, boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) throws Refusal {
        Box trim = page.info().box(PageBox.TRIM);
        PlateRequest request = PlateRequest.of(trim, DPI, overprint, layersOn);
        InkedBox box = new InkedBox();
        page.plate().stream(request, Separations.ROWS_AT_ONCE, cancel, progress, band -> {
            for (int plane = 0; plane < band.inks().size(); plane++) {
                if (band.inks().get(plane).kind() != InkKind.TECHNICAL) {
                    box.add(band, plane);
                }
            }
        });
        if (box.x0 > box.x1) {
            return Optional.empty();
        }
        double k = 72 / DPI;
        Box found = new Box(box.x0 * k, box.y0 * k, (box.x1 + 1) * k, (box.y1 + 1) * k).intersect(trim);
        return found.isEmpty() ? Optional.empty() : Optional.of(found);
    }

    private void add(InkPlanes band, int plane) {
        for (int row = 0; row < band.cellsDown(); row++) {
            for (int column = 0; column < band.cellsAcross(); column++) {
                if (band.uniform(plane, column, row) != 0) {
                    addCell(band, plane, column * InkPlanes.CELL_W, row * InkPlanes.CELL_H);
                }
            }
        }
    }

    private void addCell(InkPlanes band, int plane, int left, int top) {
        for (int y = top; y < Math.min(band.height(), top + InkPlanes.CELL_H); y++) {
            for (int x = left; x < Math.min(band.width(), left + InkPlanes.CELL_W); x++) {
                if (band.get(plane, x, y) != 0) {
                    x0 = Math.min(x0, band.request().x0() + x);
                    x1 = Math.max(x1, band.request().x0() + x);
                    y0 = Math.min(y0, band.request().y0() + y);
                    y1 = Math.max(y1, band.request().y0() + y);
                }
            }
        }
    }
}
