package inkground.app;

import inkground.appearance.Appearance;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.proof.ProofPng;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Writes a picture of the page as it will look on a substrate. */
public final class Proofs {
    /** Largest picture in pixels: an A0 sheet at 300 dpi has 139 million. */
    public static final long MOST_PIXELS = 200_000_000L;

    /** Said with every proof. */
    public static final String CAUTION =
            "Approximate: computed colour on an uncalibrated screen. Not a contract proof (ISO 12647-7).";

    private Proofs() {}

    /**
     * What to write.
     *
     * @param page which
     * @param stack substrate, inks and their order
     * @param box part of the page
     * @param dpi pixels per inch, above 0
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param file where the picture goes
     * @param replace whether an existing file may be replaced
     */
    public record Order(
            PageJob page,
            Stack stack,
            PageBox box,
            double dpi,
            boolean overprint,
            Set<Integer> layersOn,
            Path file,
            boolean replace) {
        /** Rejects a resolution that is not positive. */
        public Order {
            if (!(dpi > 0) || Double.isInfinite(dpi)) {
                throw new IllegalArgumentException("resolution " + dpi);
            }
            layersOn = Set.copyOf(layersOn);
        }
    }

    /** Size of the picture. */
    public record Result(Path file, int widthPx, int heightPx) {}

    /**
     * Paints and writes the picture; nothing is left behind when it fails or is cancelled.
     *
     * @throws Refusal if the picture would be too large, or cannot be written
     */
    public static Result write(Order order, Cancel cancel, Progress progress) throws Refusal {
        PlateRequest request =
                PlateRequest.of(order.page().info().box(order.box()), order.dpi(), order.overprint(), order.layersOn());
        if ((long) request.width() * request.height() > MOST_PIXELS) {
            throw new Refusal("The proof would have " + request.width() + " × " + request.height()
                    + " pixels; the limit is " + MOST_PIXELS / 1_000_000 + " million. Use a lower resolution.");
        }
        SafeFiles.file(order.file(), order.replace(), temporary -> {
            BufferedImage picture = paint(order, request, cancel, progress);
            progress.report("writing", -1);
            ProofPng.write(picture, order.dpi(), notes(order), temporary);
            cancel.check();
        });
        return new Result(order.file(), request.width(), request.height());
    }

    private static BufferedImage paint(Order order, PlateRequest request, Cancel cancel, Progress progress)
            throws Refusal {
        BufferedImage picture = new BufferedImage(request.width(), request.height(), BufferedImage.TYPE_INT_RGB);
        int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
        StackModel model = new StackModel(order.stack());
        int reach = Appearance.reachPx(order.stack(), request.pxPerPt());
        if (reach > 0) {
            paintWithMargin(order, model, request, reach, pixels, cancel, progress);
            return picture;
        }
        order.page().plate().stream(request, Separations.ROWS_AT_ONCE, cancel, progress, band -> {
            int row = band.request().y0() - request.y0();
            Appearance.paint(band, model, pixels, row * request.width(), request.width(), cancel);
        });
        return picture;
    }

    /** In bands that overlap by what a pixel's colour depends on around it, so that no seam shows between them. */
    private static void paintWithMargin(
            Order order,
            StackModel model,
            PlateRequest request,
            int reach,
            int[] pixels,
            Cancel cancel,
            Progress progress)
            throws Refusal {
        int width = request.width() + 2 * reach;
        for (int y = request.y0(); y < request.y1(); y += Separations.ROWS_AT_ONCE) {
            progress.report("painting", (double) (y - request.y0()) / request.height());
            int rows = Math.min(Separations.ROWS_AT_ONCE, request.y1() - y);
            PlateRequest part = new PlateRequest(
                    request.pxPerPt(),
                    request.x0() - reach,
                    y - reach,
                    request.x1() + reach,
                    y + rows + reach,
                    request.overprint(),
                    request.layersOn());
            InkPlanes band = order.page().plate().render(part, cancel, Progress.NONE);
            int[] wide = new int[width * (rows + 2 * reach)];
            Appearance.paint(band, model, wide, 0, width, cancel);
            for (int row = 0; row < rows; row++) {
                int from = (row + reach) * width + reach;
                int to = (y - request.y0() + row) * request.width();
                System.arraycopy(wide, from, pixels, to, request.width());
            }
        }
        progress.report("painting", 1);
    }

    private static Map<String, String> notes(Order order) {
        Map<String, String> notes = new LinkedHashMap<>();
        notes.put("Title", "Proof on " + order.stack().substrate().name());
        notes.put("Comment", CAUTION);
        notes.put("Software", "Inkground");
        return notes;
    }
}
