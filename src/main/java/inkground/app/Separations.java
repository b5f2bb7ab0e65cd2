package inkground.app;

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
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

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
            Files.writeString(temporary.resolve("separations.json"), JsonText.of(json(result[0])) + "\n");
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
                write(band, files);
            });
        } finally {
            for (GreyTiff file : files) {
                file.close();
            }
        }
        return sum.uses();
    }

    /** Each plane is a file of its own, so that all cores can write. */
    private static void write(InkPlanes band, List<GreyTiff> files) throws Refusal {
        try {
            IntStream.range(0, files.size()).parallel().forEach(plane -> {
                try {
                    rows(band, plane, files.get(plane));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw new Refusal("Cannot write the separations: " + e.getMessage() + ". Is the disk full?", e);
        }
    }

    /** In a separation file 255 is no ink, as on film. */
    private static void rows(InkPlanes band, int plane, GreyTiff file) throws IOException {
        byte[] rows = new byte[band.width() * InkPlanes.CELL_H];
        boolean blank = false; // whether the array holds no ink all over already
        for (int cellY = 0; cellY < band.cellsDown(); cellY++) {
            int count = Math.min(InkPlanes.CELL_H, band.height() - cellY * InkPlanes.CELL_H);
            if (empty(band, plane, cellY)) {
                if (!blank) {
                    Arrays.fill(rows, (byte) 255);
                    blank = true;
                }
            } else {
                for (int y = 0; y < count; y++) {
                    band.row(plane, cellY * InkPlanes.CELL_H + y, rows, y * band.width());
                }
                for (int i = 0; i < rows.length; i++) {
                    rows[i] = (byte) ~rows[i];
                }
                blank = false;
            }
            file.rows(rows, 0, count * band.width());
        }
    }

    private static boolean empty(InkPlanes band, int plane, int cellY) {
        for (int cellX = 0; cellX < band.cellsAcross(); cellX++) {
            if (band.uniform(plane, cellX, cellY) != 0) {
                return false;
            }
        }
        return true;
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

    /** @return the content of separations.json, for {@link JsonText} */
    public static Map<String, Object> json(Result result) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("page", result.page());
        root.put("dpi", result.dpi());
        root.put("widthPx", result.widthPx());
        root.put("heightPx", result.heightPx());
        root.put("box", result.box().word());
        List<Map<String, Object>> planes = new ArrayList<>();
        for (Plane plane : result.planes()) {
            Map<String, Object> entry = new LinkedHashMap<>();
            entry.put("ink", plane.use().ink().name());
            entry.put("kind", plane.use().ink().kind().word());
            entry.put("file", plane.file());
            entry.put("meanTint", plane.use().meanTint());
            entry.put("coveredCm2", plane.use().coveredCm2());
            planes.add(entry);
        }
        root.put("planes", planes);
        return root;
    }
}
