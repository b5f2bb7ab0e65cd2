package inkground.app;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.proof.GreyTiff;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Writes one grey TIFF per ink, and a JSON file that lists them. */
public final class Separations {
    /** Rows rasterised together: enough bands to keep all cores busy, few enough to bound memory on the widest page. */
    static final int ROWS_AT_ONCE = 512;

    /** Largest side of a page in pixels: what a classic TIFF of one plane can hold with room to spare. */
    private static final int MOST_PX = 60_000;

    private Separations() {}

    /**
     * What to write.
     *
     * @param page which
     * @param dpi pixels per inch, above 0
     * @param box part of the page
     * @param folder where the files go; made if it is not there
     * @param replace whether existing files may be replaced
     */
    public record Order(PageJob page, double dpi, PageBox box, Path folder, boolean replace) {
        /** Rejects a resolution that is not positive. */
        public Order {
            if (!(dpi > 0) || Double.isInfinite(dpi)) {
                throw new IllegalArgumentException("resolution " + dpi);
            }
        }
    }

    /**
     * One plane as written.
     *
     * @param use ink and how much of it
     * @param file name within the folder
     */
    public record Plane(InkUse use, String file) {}

    /**
     * Everything written.
     *
     * @param widthPx width of every plane
     * @param heightPx height of every plane
     * @param planes one per ink, in plane order
     */
    public record Result(int page, double dpi, PageBox box, int widthPx, int heightPx, List<Plane> planes) {}

    /**
     * Rasterises the page in bands and writes the files; nothing is left behind when it fails or is cancelled.
     *
     * @throws Refusal if the page is too large at this resolution, or the files cannot be written
     */
    public static Result write(Order order, Cancel cancel, Progress progress) throws Refusal {
        PageJob page = order.page();
        PlateRequest request = PlateRequest.of(
                page.info().box(order.box()),
                order.dpi(),
                true,
                page.displayList().defaultLayers());
        if (request.width() > MOST_PX || request.height() > MOST_PX) {
            throw new Refusal("At " + order.dpi() + " dpi the page is " + request.width() + " × " + request.height()
                    + " pixels; the limit is " + MOST_PX + " a side. Use a lower --dpi.");
        }
        List<String> names = fileNames(page.inks().inks());
        Result[] result = new Result[1];
        SafeFiles.folder(order.folder(), order.replace(), temporary -> {
            List<InkUse> uses = planes(order, request, names, temporary, cancel, progress);
            List<Plane> planes = new ArrayList<>();
            for (int i = 0; i < names.size(); i++) {
                planes.add(new Plane(uses.get(i), names.get(i)));
            }
            result[0] = new Result(
                    page.info().number(), order.dpi(), order.box(), request.width(), request.height(), planes);
            new ObjectMapper()
                    .writerWithDefaultPrettyPrinter()
                    .writeValue(temporary.resolve("separations.json").toFile(), json(result[0]));
        });
        return result[0];
    }

    private static List<InkUse> planes(
            Order order, PlateRequest request, List<String> names, Path folder, Cancel cancel, Progress progress)
            throws Refusal, IOException {
        InkUse.Sum sum = new InkUse.Sum();
        List<GreyTiff> files = new ArrayList<>();
        try {
            for (String name : names) {
                files.add(new GreyTiff(folder.resolve(name), request.width(), request.height(), order.dpi()));
            }
            order.page().plate().stream(request, ROWS_AT_ONCE, cancel, progress, band -> {
                sum.add(band);
                for (int p = 0; p < files.size(); p++) {
                    rows(band, p, files.get(p));
                }
            });
        } finally {
            for (GreyTiff file : files) {
                file.close();
            }
        }
        return sum.uses();
    }

    /** In a separation file 255 is no ink, as on film. */
    private static void rows(InkPlanes band, int plane, GreyTiff file) throws Refusal {
        byte[] rows = new byte[band.width() * band.height()];
        for (int y = 0; y < band.height(); y++) {
            band.row(plane, y, rows, y * band.width());
        }
        for (int i = 0; i < rows.length; i++) {
            rows[i] = (byte) ~rows[i];
        }
        try {
            file.rows(rows, 0, rows.length);
        } catch (IOException e) {
            throw new Refusal("Cannot write the separations: " + e.getMessage() + ". Is the disk full?", e);
        }
    }

    /** Names that every file system takes, distinct whatever the inks are called. */
    static List<String> fileNames(List<Ink> inks) {
        Set<String> taken = new HashSet<>();
        List<String> out = new ArrayList<>();
        for (Ink ink : inks) {
            String base = ink.name().replaceAll("[^\\p{L}\\p{N}._-]+", "_");
            base = base.replaceAll("^[._-]+|[._-]+$", "");
            base = base.isEmpty() ? "ink" : base.substring(0, Math.min(60, base.length()));
            String name = base;
            for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
                name = base + "-" + i;
            }
            out.add(name + ".tif");
        }
        return out;
    }

    /** @return the content of separations.json */
    public static ObjectNode json(Result result) {
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode root = mapper.createObjectNode();
        root.put("page", result.page());
        root.put("dpi", result.dpi());
        root.put("widthPx", result.widthPx());
        root.put("heightPx", result.heightPx());
        root.put("box", result.box().word());
        ArrayNode planes = root.putArray("planes");
        for (Plane plane : result.planes()) {
            planes.addObject()
                    .put("ink", plane.use().ink().name())
                    .put("kind", plane.use().ink().kind().word())
                    .put("file", plane.file())
                    .put("meanTint", plane.use().meanTint())
                    .put("coveredCm2", plane.use().coveredCm2());
        }
        return root;
    }
}
