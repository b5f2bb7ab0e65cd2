package inkground.bench;

import inkground.Ghostscript;
import inkground.OutsideTool;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.appearance.Appearance;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.TextUse;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
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
 * media box, 100 dpi. Writes Markdown tables of inks and of pictures, after the line {@value #MARK} of a document where one
 * is given. A tool for whoever looks into a difference; no test needs it. Ghostscript paints at 400 dpi and averages 4 × 4,
 * Poppler at 400 dpi too, averaged here.
 *
 * <p>Mean: mean absolute difference of all pixels, of 255. Far: share of all pixels that differ by more than 32 of 255 and
 * lie away from edges, where no neighbour in either plane differs by more than 32. What explains a difference is measured:
 *
 * <ul>
 *   <li>apart: the share of far pixels when a different conversion of colours is taken out: theirs is compared not with ours
 *       but with the mean of theirs over all pixels away from edges in which our four process tints are the same to 1/32;
 *   <li>same conversion: mean and far of a copy of the file ({@link SameConversion}) in which both go from RGB to inks by the
 *       tables of one and the same profile;
 *   <li>outside type: mean and far of the pixels outside the boxes of type whose font the file does not carry.
 * </ul>
 */
public final class SeparationTable {
    private static final String MARK = "<!-- Written by inkground.bench.SeparationTable from here on. -->";
    private static final double DPI = 100;
    private static final int OVER = 4;
    private static final int PROCESS = 4;

    private final Path work;
    private final Path profiles;
    private final List<String> inks = new ArrayList<>();
    private final List<String> pictures = new ArrayList<>();
    private final List<String> refused = new ArrayList<>();

    private SeparationTable(Path work, Path profiles) {
        this.work = work;
        this.profiles = profiles;
    }

    /**
     * Runs.
     *
     * @param args files and folders of PDF files; {@code --profiles FOLDER} of Ghostscript's default_rgb.icc and
     *     default_cmyk.icc, for the column of the same conversion; {@code --into FILE} to write the end of a document
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Path> files = new ArrayList<>();
        Path profiles = null;
        Path into = null;
        for (int i = 0; i < args.length; i++) {
            Path path = Path.of(args[i]);
            if (args[i].equals("--profiles")) {
                profiles = Path.of(args[++i]);
            } else if (args[i].equals("--into")) {
                into = Path.of(args[++i]);
            } else if (Files.isDirectory(path)) {
                try (Stream<Path> inside = Files.list(path)) {
                    inside.filter(p -> p.toString().endsWith(".pdf")).sorted().forEach(files::add);
                }
            } else {
                files.add(path);
            }
        }
        Path work = Files.createTempDirectory("separations");
        try {
            SeparationTable table = new SeparationTable(work, profiles);
            for (Path file : files) {
                table.add(file);
            }
            table.print(into);
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
            InkPlanes ours = planes(page);
            boolean[][] type = foreignType(page, ours);
            compareInks(name, ours, separations(file), type, same(file));
            if (ours.inks().size() == PROCESS) {
                comparePicture(name, page, ours, file, type);
            }
        } catch (Refusal e) {
            refused.add("| " + name + " | " + e.getMessage() + " |");
        }
    }

    private static InkPlanes planes(PageJob page) throws Refusal {
        PlateRequest request = PlateRequest.of(
                page.info().box(PageBox.MEDIA), DPI, true, page.displayList().defaultLayers());
        return page.plate().render(request, new Cancel(), Progress.NONE);
    }

    // ---- what explains a difference ----

    /** Pixels in boxes of type whose font the file does not carry; null where there is none. */
    private static boolean[][] foreignType(PageJob page, InkPlanes planes) {
        List<Box> boxes = new ArrayList<>();
        collect(page.displayList().ops(), boxes);
        if (boxes.isEmpty()) {
            return null;
        }
        Box media = page.info().box(PageBox.MEDIA);
        double scale = DPI / 72;
        boolean[][] out = new boolean[planes.height()][planes.width()];
        for (Box box : boxes) {
            // substitutes have other heights and widths: as much as half of the line's height around
            double reach = Math.max(2, box.height() / 2);
            int x0 = (int) Math.floor((box.x0() - media.x0() - reach) * scale);
            int x1 = (int) Math.ceil((box.x1() - media.x0() + reach) * scale);
            int y0 = (int) Math.floor((box.y0() - media.y0() - reach) * scale);
            int y1 = (int) Math.ceil((box.y1() - media.y0() + reach) * scale);
            for (int y = Math.max(0, y0); y < Math.min(out.length, y1); y++) {
                for (int x = Math.max(0, x0); x < Math.min(out[0].length, x1); x++) {
                    out[y][x] = true;
                }
            }
        }
        return out;
    }

    private static void collect(List<Op> ops, List<Box> boxes) {
        for (Op op : ops) {
            if (op instanceof Op.Group group) {
                collect(group.ops(), boxes);
            }
            TextUse text = op instanceof Op.Fill fill ? fill.text() : op instanceof Op.Stroke line ? line.text() : null;
            if (text != null && !text.embedded()) {
                boxes.add(op.bounds());
            }
        }
    }

    /** Mean and far of each process ink when both convert alike; empty where it cannot be done. */
    private Map<String, String> same(Path file) throws IOException, InterruptedException {
        Map<String, String> out = new TreeMap<>();
        if (profiles == null) {
            return out;
        }
        Path copy = Files.createTempFile(work, "same", ".pdf");
        SameConversion.write(file, profiles.resolve("default_rgb.icc"), copy);
        String press = profiles.resolve("default_cmyk.icc").toString();
        try (Job job = Job.open(copy, new Job.Choices(press, null), new Cancel(), Progress.NONE)) {
            InkPlanes ours = planes(job.page(1, new Cancel(), Progress.NONE));
            Map<String, Raster> theirs =
                    separations(copy, "-dBlackPtComp=0", "--permit-file-read=" + press, "-sOutputICCProfile=" + press);
            for (int plane = 0; plane < PROCESS; plane++) {
                String ink = ours.inks().get(plane).name();
                if (theirs.containsKey(ink)) {
                    out.put(ink, figures(plane(ours, plane), complement(theirs.get(ink)), null));
                }
            }
        } catch (Refusal e) {
            out.clear();
        }
        return out;
    }

    // ---- inks ----

    /** @return planes by the names of their inks; none where it fails: the row says that there is nothing to compare with */
    private Map<String, Raster> separations(Path file, String... options) throws IOException, InterruptedException {
        Map<String, Raster> out = new TreeMap<>();
        try {
            Ghostscript.separations(file, work, (int) DPI, OVER, options)
                    .forEach((ink, plane) -> out.put(ink, plane.getRaster()));
        } catch (AssertionError failed) {
            out.clear();
        }
        return out;
    }

    private void compareInks(
            String name, InkPlanes ours, Map<String, Raster> theirs, boolean[][] type, Map<String, String> same) {
        if (theirs.isEmpty()) {
            inks.add("| " + name + " | | | | | | | Ghostscript does not render it |");
            return;
        }
        for (int plane = 0; plane < ours.inks().size(); plane++) {
            Ink ink = ours.inks().get(plane);
            Raster other = theirs.remove(ink.name());
            int[][] mine = plane(ours, plane);
            if (other == null) {
                boolean used =
                        Stream.of(mine).flatMapToInt(java.util.Arrays::stream).anyMatch(v -> v > 0);
                inks.add("| " + name + " | " + ink.name() + " | | | | | | "
                        + (used ? "theirs has no such plane" : "no ink in ours, no plane in theirs") + " |");
                continue;
            }
            int[][] film = complement(other);
            boolean over = over(mine, film);
            String further = " | " + (over && plane < PROCESS ? apart(ours, mine, film) : "") + " | "
                    + (over ? same.getOrDefault(ink.name(), "") : "") + " | "
                    + (over && type != null ? figures(mine, film, type) : "");
            inks.add(row(name + " | " + ink.name(), mine, film, further));
        }
        theirs.keySet().forEach(ink -> inks.add("| " + name + " | " + ink + " | | | | | | ours has no such plane |"));
    }

    /** Share of pixels in which theirs is far from what they usually print where we print the same. */
    private static String apart(InkPlanes ours, int[][] mine, int[][] theirs) {
        int height = Math.min(mine.length, theirs.length);
        int width = Math.min(mine[0].length, theirs[0].length);
        Map<Integer, long[]> sums = new HashMap<>();
        int[][] keys = new int[height][width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean inside =
                        Difference.flat(mine, x, y, width, height) && Difference.flat(theirs, x, y, width, height);
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
                    far += Math.abs(theirs[y][x] - (double) sum[0] / sum[1]) > Difference.FAR ? 1 : 0;
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
        boolean sizes = a.length != b.length || a[0].length != b[0].length;
        return String.format(
                Locale.ROOT,
                "| %s | %s%s | %s%s |",
                what,
                figures(a, b, null).replace(", ", " | "),
                further,
                over(a, b) ? "over" : "",
                sizes ? " sizes differ by " + (a[0].length - b[0].length) + ", " + (a.length - b.length) : "");
    }

    private static boolean over(int[][] a, int[][] b) {
        return Difference.of(a, b, null).over();
    }

    private static String figures(int[][] a, int[][] b, boolean[][] without) {
        Difference figures = Difference.of(a, b, without);
        return String.format(Locale.ROOT, "%.2f, %.2f %%", figures.mean(), figures.farPercent());
    }

    // ---- pictures ----

    /** Our picture on white paper, its white brought to 255, beside Poppler's. */
    private void comparePicture(String name, PageJob page, InkPlanes ours, Path file, boolean[][] type)
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
            pictures.add("| " + name + " | | | | | | Poppler does not render it |");
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
            boolean over = over(a, b);
            String further =
                    " | " + (over ? apart(ours, a, b) : "") + " | " + (over && type != null ? figures(a, b, type) : "");
            pictures.add(row(name + " | " + List.of("red", "green", "blue").get(channel), a, b, further));
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

    private void print(Path into) throws IOException, InterruptedException {
        List<String> out = new ArrayList<>(List.of(
                MARK,
                "",
                "Made on " + LocalDate.now() + " with Ghostscript " + said("gs", "--version") + " and "
                        + said("pdftoppm", "-v") + ".",
                "",
                "## Inks",
                "| file | ink | mean | far | apart | same conversion | outside type | |",
                "|---|---|---|---|---|---|---|---|"));
        out.addAll(inks);
        out.addAll(List.of(
                "",
                "## Pictures beside Poppler's",
                "| file | channel | mean | far | apart | outside type | |",
                "|---|---|---|---|---|---|---|"));
        out.addAll(pictures);
        out.addAll(List.of("", "## Refused", "| file | message |", "|---|---|"));
        out.addAll(refused);
        if (into == null) {
            out.forEach(System.out::println);
            return;
        }
        String kept = Files.readString(into);
        int end = kept.indexOf(MARK);
        Files.writeString(into, (end < 0 ? kept + "\n" : kept.substring(0, end)) + String.join("\n", out) + "\n");
    }

    private static String said(String... command) throws IOException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        return new String(process.getInputStream().readAllBytes())
                .lines()
                .findFirst()
                .orElse("?");
    }
}
