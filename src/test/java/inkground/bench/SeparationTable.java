package inkground.bench;

import inkground.OutsideTool;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.appearance.Appearance;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Our planes beside Ghostscript's separations, and our picture beside Poppler's, for any PDF files: the first page of each,
 * media box, 100 dpi. Prints one Markdown table of inks and one of pictures. A tool for whoever looks into a difference; no
 * test needs it. Ghostscript paints at 400 dpi and averages 4 × 4, Poppler at 400 dpi too, averaged here.
 *
 * <p>Mean: mean absolute difference of all pixels, of 255. Far: share of all pixels that differ by more than 32 of 255 and
 * lie away from edges, where no neighbour in either plane differs by more than 32. Apart: the same share of far pixels when
 * what a different conversion of colours explains is taken out, for the process inks: their tint is compared not with ours
 * but with the mean of theirs over all pixels away from edges in which our four process tints are the same to 1/32.
 */
public final class SeparationTable {
    private static final double DPI = 100;
    private static final int OVER = 4;
    private static final int FAR = 32;
    private static final int PROCESS = 4;
    private static final double MEAN_LIMIT = 1;
    private static final double FAR_LIMIT = 0.5;

    private final Path work;
    private final List<String> gsOptions;
    private final List<String> inks = new ArrayList<>();
    private final List<String> pictures = new ArrayList<>();
    private final List<String> refused = new ArrayList<>();

    private SeparationTable(Path work, List<String> gsOptions) {
        this.work = work;
        this.gsOptions = gsOptions;
    }

    /** @param args files and folders of PDF files; what starts with a dash is handed to Ghostscript */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Path> files = new ArrayList<>();
        List<String> options = new ArrayList<>();
        for (String arg : args) {
            if (arg.startsWith("-")) {
                options.add(arg);
            } else if (Files.isDirectory(Path.of(arg))) {
                try (Stream<Path> inside = Files.list(Path.of(arg))) {
                    inside.filter(p -> p.toString().endsWith(".pdf")).sorted().forEach(files::add);
                }
            } else {
                files.add(Path.of(arg));
            }
        }
        Path work = Files.createTempDirectory("separations");
        try {
            SeparationTable table = new SeparationTable(work, options);
            for (Path file : files) {
                table.add(file);
            }
            table.print();
        } finally {
            delete(work);
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    private void add(Path file) throws IOException, InterruptedException {
        String name = file.getFileName().toString();
        try (Job job = Job.open(file, new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            PlateRequest request = PlateRequest.of(
                    page.info().box(PageBox.MEDIA),
                    DPI,
                    true,
                    page.displayList().defaultLayers());
            InkPlanes ours = page.plate().render(request, new Cancel(), Progress.NONE);
            compareInks(name, ours, separations(file));
            if (ours.inks().size() == 4) {
                comparePicture(name, page, ours, file);
            }
        } catch (Refusal e) {
            refused.add("| " + name + " | " + e.getMessage() + " |");
        }
    }

    // ---- inks ----

    private Map<String, Raster> separations(Path file) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory(work, "gs");
        List<String> command = new ArrayList<>(List.of(
                "gs",
                "-q",
                "-dBATCH",
                "-dNOPAUSE",
                "-dNOSAFER",
                "-sDEVICE=tiffsep",
                "-r" + (int) (DPI * OVER),
                "-dDownScaleFactor=" + OVER,
                "-sCompression=none",
                "-dOverprint=/enable",
                "-dFirstPage=1",
                "-dLastPage=1"));
        command.addAll(gsOptions);
        command.addAll(List.of("-sOutputFile=" + folder.resolve("p.tif"), file.toString()));
        Map<String, Raster> out = new TreeMap<>();
        try {
            OutsideTool.run(command.toArray(String[]::new));
        } catch (AssertionError failed) {
            return out; // the row says that there is nothing to compare with
        }
        try (DirectoryStream<Path> planes = Files.newDirectoryStream(folder, "p(*).tif")) {
            for (Path plane : planes) {
                String ink = plane.getFileName().toString();
                out.put(
                        ink.substring(2, ink.length() - 5),
                        ImageIO.read(plane.toFile()).getRaster());
            }
        }
        return out;
    }

    private void compareInks(String name, InkPlanes ours, Map<String, Raster> theirs) {
        if (theirs.isEmpty()) {
            inks.add("| " + name + " | | | | | Ghostscript does not render it |");
            return;
        }
        for (int plane = 0; plane < ours.inks().size(); plane++) {
            Ink ink = ours.inks().get(plane);
            Raster other = theirs.remove(ink.name());
            int[][] mine = plane(ours, plane);
            if (other == null) {
                boolean used =
                        Stream.of(mine).flatMapToInt(java.util.Arrays::stream).anyMatch(v -> v > 0);
                inks.add("| " + name + " | " + ink.name() + " | | | | "
                        + (used ? "theirs has no such plane" : "no ink in ours, no plane in theirs") + " |");
                continue;
            }
            int[][] film = complement(other);
            String apart = plane < PROCESS ? apart(ours, mine, film) : "";
            inks.add(row(name + " | " + ink.name(), mine, film, " " + apart + " |"));
        }
        theirs.keySet().forEach(ink -> inks.add("| " + name + " | " + ink + " | | | | ours has no such plane |"));
    }

    /** Share of pixels in which theirs is far from what they usually print where we print the same. */
    private static String apart(InkPlanes ours, int[][] mine, int[][] theirs) {
        int height = Math.min(mine.length, theirs.length);
        int width = Math.min(mine[0].length, theirs[0].length);
        Map<Integer, long[]> sums = new HashMap<>();
        int[][] keys = new int[height][width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean inside = flat(mine, x, y, width, height) && flat(theirs, x, y, width, height);
                keys[y][x] = inside ? key(ours, x, y) : -1;
                if (inside) {
                    long[] sum = sums.computeIfAbsent(keys[y][x], k -> new long[2]);
                    sum[0] += theirs[y][x];
                    sum[1]++;
                }
            }
        }
        long far = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (keys[y][x] >= 0) {
                    long[] sum = sums.get(keys[y][x]);
                    far += Math.abs(theirs[y][x] - (double) sum[0] / sum[1]) > FAR ? 1 : 0;
                }
            }
        }
        return String.format(Locale.ROOT, "%.2f %%", 100.0 * far / width / height);
    }

    private static int key(InkPlanes ours, int x, int y) {
        int key = 0;
        for (int plane = 0; plane < PROCESS; plane++) {
            key = key << 5 | ours.get(plane, x, y) >> 3;
        }
        return key;
    }

    private static int[][] plane(InkPlanes planes, int plane) {
        int[][] out = new int[planes.height()][planes.width()];
        for (int y = 0; y < planes.height(); y++) {
            for (int x = 0; x < planes.width(); x++) {
                out[y][x] = planes.get(plane, x, y);
            }
        }
        return out;
    }

    private static int[][] complement(Raster film) {
        int[][] out = new int[film.getHeight()][film.getWidth()];
        for (int y = 0; y < film.getHeight(); y++) {
            for (int x = 0; x < film.getWidth(); x++) {
                out[y][x] = 255 - film.getSample(x, y, 0);
            }
        }
        return out;
    }

    private static String row(String what, int[][] a, int[][] b, String further) {
        int height = Math.min(a.length, b.length);
        int width = Math.min(a[0].length, b[0].length);
        long sum = 0;
        long far = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int d = Math.abs(a[y][x] - b[y][x]);
                sum += d;
                far += d > FAR && flat(a, x, y, width, height) && flat(b, x, y, width, height) ? 1 : 0;
            }
        }
        double mean = (double) sum / width / height;
        double share = 100.0 * far / width / height;
        boolean over = mean > MEAN_LIMIT || share > FAR_LIMIT;
        boolean sizes = a.length != b.length || a[0].length != b[0].length;
        return String.format(
                Locale.ROOT,
                "| %s | %.2f | %.2f %% |%s %s%s |",
                what,
                mean,
                share,
                further,
                over ? "over" : "",
                sizes ? " sizes differ by " + (a[0].length - b[0].length) + ", " + (a.length - b.length) : "");
    }

    private static boolean flat(int[][] p, int x, int y, int width, int height) {
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                if (Math.abs(p[j][i] - p[y][x]) > FAR) {
                    return false;
                }
            }
        }
        return true;
    }

    // ---- pictures ----

    /** Our picture on white paper, its white brought to 255, beside Poppler's. */
    private void comparePicture(String name, PageJob page, InkPlanes ours, Path file)
            throws IOException, InterruptedException, Refusal {
        Path out = Files.createTempDirectory(work, "poppler").resolve("p");
        try {
            OutsideTool.run(
                    "pdftoppm",
                    "-r",
                    "" + (int) (DPI * OVER),
                    "-f",
                    "1",
                    "-l",
                    "1",
                    "-singlefile",
                    "-png",
                    file.toString(),
                    out.toString());
        } catch (AssertionError failed) {
            pictures.add("| " + name + " | | | Poppler does not render it |");
            return;
        }
        BufferedImage theirs = ImageIO.read(Path.of(out + ".png").toFile());
        Stack stack =
                Stack.of(Substrates.load().byId("coated-white").orElseThrow(), page.inkColours(), page.condition());
        int[] argb = new int[ours.width() * ours.height()];
        Appearance.paint(ours, new StackModel(stack), argb, 0, ours.width(), new Cancel());
        int white = white(ours, argb);
        for (int channel = 0; channel < 3; channel++) {
            int shift = 16 - 8 * channel;
            double scale = 255.0 / Math.max(1, white >> shift & 255);
            int[][] a = new int[ours.height()][ours.width()];
            int[][] b = new int[theirs.getHeight() / OVER][theirs.getWidth() / OVER];
            for (int i = 0; i < argb.length; i++) {
                a[i / ours.width()][i % ours.width()] =
                        (int) Math.min(255, Math.round((argb[i] >> shift & 255) * scale));
            }
            for (int y = 0; y < b.length * OVER; y++) {
                for (int x = 0; x < b[0].length * OVER; x++) {
                    b[y / OVER][x / OVER] += theirs.getRGB(x, y) >> shift & 255;
                }
            }
            for (int[] line : b) {
                for (int x = 0; x < line.length; x++) {
                    line[x] /= OVER * OVER;
                }
            }
            pictures.add(row(name + " | " + List.of("red", "green", "blue").get(channel), a, b, ""));
        }
    }

    /** What paper without paint looks like; the screen's white where all is painted. */
    private static int white(InkPlanes planes, int[] argb) {
        for (int i = 0; i < argb.length; i++) {
            if (planes.get(planes.markPlane(), i % planes.width(), i / planes.width()) == 0) {
                return argb[i];
            }
        }
        return 0xFFFFFF;
    }

    private void print() {
        System.out.println("| file | ink | mean | far | apart | |\n|---|---|---|---|---|---|");
        inks.forEach(System.out::println);
        System.out.println("\n| file | channel | mean | far | |\n|---|---|---|---|---|");
        pictures.forEach(System.out::println);
        System.out.println("\n| file | refused |\n|---|---|");
        refused.forEach(System.out::println);
    }
}
