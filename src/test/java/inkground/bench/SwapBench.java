package inkground.bench;

import inkground.appearance.Appearance;
import inkground.appearance.InkColour;
import inkground.appearance.InkColours;
import inkground.appearance.PrintedPixels;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.PageBox;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.colour.RgbToCmyk;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkMapping;
import inkground.plate.InkPlanes;
import inkground.plate.PlanePalette;
import inkground.plate.PlanesForTests;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Another substrate under finished ink planes of 2560 × 1440 pixels and eight inks: a new stack model and every pixel painted.
 * Nothing of the last substrate is kept but what the print condition and the planes give all of them.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Djava.awt.headless=true", "-Xmx2g"})
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 3)
public class SwapBench {
    private static final int WIDTH = 2560;
    private static final int HEIGHT = 1440;
    private static final int TILE_PX = 512; // as the viewer's tiles

    /** What lies on the planes. */
    @Param({"shirt", "photograph"})
    public String page;

    private final int[] pixels = new int[WIDTH * HEIGHT];
    private InkPlanes planes;
    private List<Tile> tiles;
    private List<Stack> stacks;
    private int turn;

    /** Makes the planes and one stack for each substrate of the page's kind. */
    @Setup(Level.Trial)
    public void prepare() throws Refusal {
        PrintCondition condition = PrintConditions.bundled("FOGRA39L");
        boolean shirt = page.equals("shirt");
        planes = shirt ? shirt(condition) : photograph(condition);
        List<InkColour> colours = InkColours.of(planes.inks(), List.of(), condition);
        stacks = Substrates.load().ofKind(shirt ? Substrate.Kind.GARMENT : Substrate.Kind.PAPER).stream()
                .map(s -> Stack.of(s, colours, condition))
                .toList();
        StackModel any = new StackModel(stacks.get(0));
        tiles = new ArrayList<>();
        for (int y = 0; y < HEIGHT; y += TILE_PX) {
            for (int x = 0; x < WIDTH; x += TILE_PX) {
                tiles.add(Tile.of(planes, x, y, any));
            }
        }
    }

    private static InkPlanes shirt(PrintCondition condition) throws Refusal {
        try (Artwork artwork = PdfArtwork.open(Path.of("demo", "regatta-shirt.pdf"), new Cancel(), Progress.NONE)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            InkMapping mapping = InkMapping.of(artwork.declaredColorants(1), list, condition);
            Box media = list.page().box(PageBox.MEDIA);
            double scale = WIDTH / media.width();
            int y0 = (int) (media.height() * scale / 2) - HEIGHT / 2;
            PlateRequest middle = new PlateRequest(scale, 0, y0, WIDTH, y0 + HEIGHT, true, list.defaultLayers());
            return withEightInks(new Plate(list, mapping).render(middle, new Cancel(), Progress.NONE));
        }
    }

    // The demo shirt prints seven inks; the eighth prints nowhere, as one whose layer is off.
    private static InkPlanes withEightInks(InkPlanes planes) {
        List<Ink> inks = new ArrayList<>(planes.inks().inks());
        while (inks.size() < 8) {
            inks.add(Ink.named("Spare " + inks.size()));
        }
        byte[][] rasters = new byte[inks.size() + 2][WIDTH * HEIGHT];
        for (int p = 0; p < planes.planes(); p++) {
            int to = p < planes.inks().size() ? p : p - planes.planes() + rasters.length;
            for (int y = 0; y < HEIGHT; y++) {
                planes.row(p, y, rasters[to], y * WIDTH);
            }
        }
        return PlanesForTests.ofRasters(new InkSet(inks), planes.request(), rasters);
    }

    /** Soft shapes with grain, separated as sRGB, with a line of solid spot ink knocked out of it. */
    private static InkPlanes photograph(PrintCondition condition) {
        List<Ink> inks = new ArrayList<>(List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK));
        for (int i = 0; i < 4; i++) {
            inks.add(Ink.named("Reach " + i));
        }
        byte[][] rasters = new byte[10][WIDTH * HEIGHT];
        RgbToCmyk convert = new RgbToCmyk(condition);
        Random random = new Random(7);
        byte[] cmyk = new byte[4];
        for (int i = 0; i < WIDTH * HEIGHT; i++) {
            double x = i % WIDTH / (double) WIDTH;
            double y = i / WIDTH / (double) HEIGHT;
            int rgb = level(Math.sin(7 * x + 4 * y), random) << 16
                    | level(Math.sin(5 * y + 6 * x * y + 1), random) << 8
                    | level(Math.cos(8 * x - 3 * y * y), random);
            convert.convert8(rgb, cmyk, 0);
            boolean line = y > 0.9 && y < 0.93;
            for (int p = 0; p < 4; p++) {
                rasters[p][i] = line ? 0 : cmyk[p];
            }
            rasters[4][i] = (byte) (line ? 255 : 0);
        }
        Arrays.fill(rasters[8], (byte) 255);
        Arrays.fill(rasters[9], (byte) 255);
        return PlanesForTests.ofRasters(
                new InkSet(inks), new PlateRequest(1, 0, 0, WIDTH, HEIGHT, true, Set.of()), rasters);
    }

    private static int level(double wave, Random random) {
        return (int) Math.max(0, Math.min(255, 128 + 110 * wave + 5 * random.nextGaussian()));
    }

    /** One swap from the planes alone, as right after they were rasterised. */
    @Benchmark
    public int[] fromPlanes() {
        StackModel model = new StackModel(stacks.get(turn++ % stacks.size()));
        Appearance.paint(planes, model, pixels, 0, WIDTH, new Cancel());
        return pixels;
    }

    /** One swap as the viewer does it: each distinct vector of a tile once, then look-up; photographs from their pixels on paper. */
    @Benchmark
    public int[] swap() {
        StackModel model = new StackModel(stacks.get(turn++ % stacks.size()));
        tiles.parallelStream().forEach(tile -> tile.paint(model));
        return tiles.get(0).pixels();
    }

    /** A piece of the region with what is found out about it once, before any swap. */
    private record Tile(InkPlanes planes, PlanePalette palette, PrintedPixels printed, int[] pixels) {
        static Tile of(InkPlanes whole, int x0, int y0, StackModel model) {
            PlateRequest r = whole.request();
            int x1 = Math.min(r.width(), x0 + TILE_PX);
            int y1 = Math.min(r.height(), y0 + TILE_PX);
            byte[][] rasters = new byte[whole.inks().size() + 2][(x1 - x0) * (y1 - y0)];
            byte[] row = new byte[r.width()];
            for (int p = 0; p < rasters.length; p++) {
                for (int y = y0; y < y1; y++) {
                    whole.row(p, y, row, 0);
                    System.arraycopy(row, x0, rasters[p], (y - y0) * (x1 - x0), x1 - x0);
                }
            }
            PlateRequest piece = new PlateRequest(
                    r.pxPerPt(), r.x0() + x0, r.y0() + y0, r.x0() + x1, r.y0() + y1, r.overprint(), r.layersOn());
            InkPlanes planes = PlanesForTests.ofRasters(whole.inks(), piece, rasters);
            PlanePalette palette = PlanePalette.of(planes, new Cancel()).orElse(null);
            PrintedPixels printed = palette == null
                    ? PrintedPixels.of(planes, model, new Cancel()).orElse(null)
                    : null;
            return new Tile(planes, palette, printed, new int[planes.width() * planes.height()]);
        }

        void paint(StackModel model) {
            if (palette == null) {
                Appearance.paint(planes, printed, model, pixels, 0, planes.width(), new Cancel());
                return;
            }
            InkPlanes vectors = palette.vectors();
            int[] colours = new int[vectors.width() * vectors.height()];
            Appearance.paint(vectors, model, colours, 0, vectors.width(), new Cancel());
            palette.spread(colours, pixels);
        }
    }
}
