package inkground.viewer;

import inkground.app.Arrangement;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.OwnSubstrates;
import inkground.app.PageComparison;
import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.geometry.Box;
import inkground.handoff.CleanFile;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import inkground.substrate.Cut;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.substrate.Texture;
import inkground.viewer.desk.OwnStock;
import inkground.viewer.state.Look;
import inkground.viewer.state.MapChoice;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/** An engine of flat shapes whose colours a test can tell, that can be held up and made to fail. */
final class FakeEngine implements ProofEngine {
    /** Page size in points. */
    static final Box MEDIA = new Box(0, 0, 400, 300);

    static final Box TRIM = new Box(20, 20, 380, 280);
    /** Around disc and bar of {@link #art}. */
    static final Box INKED = new Box(60, 40, 340, 240);

    static final SubstrateCard PAPER = card("plain-paper", "Plain paper", false, 95, 0xfff4f2ec, "uncoated");
    static final SubstrateCard NAVY = card("navy-jersey", "Navy jersey", true, 20, 0xff1d2740, "jersey");
    static final SubstrateCard SAND = card("sand-canvas", "Sand canvas", true, 80, 0xffd5c7a8, "woven");
    static final int[] INK_RGB = {0xd03a2b, 0x1f7a8c, 0xffffff};

    private static final InkSet INKS =
            new InkSet(List.of(Ink.named("Signal Red"), Ink.named("River Teal"), Ink.named("White")));

    /** How often planes were rasterised. */
    final AtomicInteger renders = new AtomicInteger();
    /** How often planes were coloured. */
    final AtomicInteger paints = new AtomicInteger();
    /** Holds up every render until it is counted down, or the work is cancelled. */
    volatile CountDownLatch gate = new CountDownLatch(0);
    /** How many files are open. */
    final AtomicInteger openFiles = new AtomicInteger();

    /** How many small proofs were made. */
    final AtomicInteger thumbs = new AtomicInteger();
    /** How many pages each file has. */
    volatile int pageCount = 2;

    volatile boolean exportWaits;
    /** What was asked for last. */
    volatile ExportRequest exported;
    /** What was kept as approved last. */
    volatile ApproveRequest approved;
    /** What was compared last. */
    volatile CompareRequest compared;
    /** Whether the garment's colour is painted over the whole page for preview. */
    volatile boolean paintedGround;
    /** Why no clean file can be written; null if it can. */
    volatile String cleanRefusal;
    /** Sessions by artwork; null for one that cannot be read. */
    final Map<Path, Session> sessions = Collections.synchronizedMap(new HashMap<>());

    /** Hang in the rack after the usual ones. */
    volatile List<SubstrateCard> more = List.of();
    /** How often edges were gathered. */
    final AtomicInteger gatherings = new AtomicInteger();

    private final OwnStock own;

    FakeEngine() {
        // Made only when something is kept in it.
        this(Path.of("target", "own-substrates", Long.toString(System.nanoTime())));
    }

    /** @param ownFolder where own substrates are kept */
    FakeEngine(Path ownFolder) {
        own = new OwnStock(new OwnSubstrates(ownFolder));
    }

    static SubstrateCard card(String id, String name, boolean garment, double l, int argb, String texture) {
        return new SubstrateCard(
                id, name, garment, new Lab(l, 0, 0), argb, texture, "invented for tests", List.of("A caution."));
    }

    @Override
    public List<SubstrateCard> substrates() {
        List<SubstrateCard> all = new ArrayList<>(List.of(PAPER, NAVY, SAND));
        all.addAll(more);
        all.addAll(own.read(all.stream().map(SubstrateCard::id).collect(Collectors.toSet())));
        return all;
    }

    @Override
    public OwnShelf own() {
        return own;
    }

    /** @return a card that is or was in the rack */
    private SubstrateCard card(String id) {
        return Stream.concat(Stream.of(PAPER, NAVY, SAND), more.stream())
                .filter(card -> card.id().equals(id))
                .findFirst()
                .orElseGet(() -> {
                    Substrate substrate = own.byId(id).orElseThrow();
                    int argb = Srgb.labToArgb(substrate.lab());
                    return card(id, substrate.name(), true, substrate.lab().L(), argb, "jersey");
                });
    }

    /** @return the vanish score that is taken for a substrate: the darker, the more is lost */
    static double share(SubstrateCard card) {
        return 1 - card.lab().L() / 100;
    }

    @Override
    public List<Cut> cuts() throws Refusal {
        return Substrates.load().cuts();
    }

    @Override
    public List<PrintProcess> processes() throws Refusal {
        return Substrates.load().processes();
    }

    @Override
    public Optional<Path> demo() {
        return Optional.empty();
    }

    @Override
    public Optional<Session> session(Path artwork) throws Refusal {
        if (sessions.containsKey(artwork) && sessions.get(artwork) == null) {
            throw new Refusal("regatta.pdf.inkground.json, field 'rules': is missing. Add it.");
        }
        return Optional.ofNullable(sessions.get(artwork));
    }

    @Override
    public Path keep(Session session, Path artwork) {
        sessions.put(artwork, session);
        return artwork.resolveSibling("regatta.pdf.inkground.json");
    }

    @Override
    public ColourAssignment rules(Path file) {
        return sessions.get(file).arrangement().assignment();
    }

    @Override
    public OpenFile open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal {
        try {
            if (!Files.readString(file).startsWith("%PDF")) {
                throw new Refusal(
                        file.getFileName() + " is not a PDF. Choose a file that a drawing program wrote as PDF.");
            }
        } catch (IOException e) {
            throw new Refusal(file.getFileName() + " cannot be read.", e);
        }
        openFiles.incrementAndGet();
        return new FakeFile(file);
    }

    /** What the records of tests begin with; true ones are archives. */
    static final String RECORD = "PK\3\4fake";

    @Override
    public Earlier earlier(Path file, PictureSize size, int number, Cancel cancel, Progress progress) throws Refusal {
        boolean record;
        try {
            record = Files.readString(file).startsWith(RECORD);
        } catch (IOException e) {
            throw new Refusal(file.getFileName() + " cannot be read.", e);
        }
        if (!record) {
            OpenFile opened = open(file, PictureSize.STATED, cancel, progress);
            return new Earlier(opened, opened.page(number, ColourAssignment.NONE, cancel, progress), Optional.empty());
        }
        openFiles.incrementAndGet();
        return new Earlier(
                new FakeFile(Path.of("as-approved.pdf")),
                new FakePage(1, false),
                Optional.of(new ApprovedAs("approved 26 Nov 2026 by Ada", NAVY, false, Set.of())));
    }

    private final class FakeFile implements OpenFile {
        private final Path path;

        FakeFile(Path path) {
            this.path = path;
        }

        @Override
        public Path path() {
            return path;
        }

        @Override
        public int pageCount() {
            return pageCount;
        }

        @Override
        public PictureSize size() {
            return PictureSize.STATED;
        }

        @Override
        public Optional<Sizing> sizing(int page) {
            return Optional.empty();
        }

        @Override
        public OpenPage page(int number, ColourAssignment assignment, Cancel cancel, Progress progress) {
            return new FakePage(number, paintedGround && FakeColours.printed(assignment));
        }

        @Override
        public CleanFile.Result clean(
                ColourAssignment assignment, Path target, boolean replace, Cancel cancel, Progress progress)
                throws Refusal {
            progress.report("Knocking out", 0.5);
            if (exportWaits) {
                await(new CountDownLatch(1), cancel);
            }
            if (cleanRefusal != null) {
                throw new Refusal(cleanRefusal);
            }
            try {
                Files.writeString(target, "%PDF-clean");
            } catch (IOException e) {
                throw new Refusal("cannot be written", e);
            }
            return new CleanFile.Result(3, 1);
        }

        @Override
        public void approve(ApproveRequest request, Cancel cancel, Progress progress) throws Refusal {
            approved = request;
            progress.report("Keeping", 0.4);
            if (exportWaits) {
                await(new CountDownLatch(1), cancel);
            }
            try {
                Files.writeString(request.target(), RECORD);
            } catch (IOException e) {
                throw new Refusal("cannot be written", e);
            }
        }

        @Override
        public PageThumb thumb(int number, ColourAssignment assignment, int edgePx, Cancel cancel) {
            thumbs.incrementAndGet();
            FakePage page = new FakePage(number, paintedGround && FakeColours.printed(assignment));
            PlateRequest whole = PlateRequest.of(MEDIA, 72.0 * edgePx / MEDIA.width(), true, Set.of());
            InkPlanes planes = page.render(whole, cancel, Progress.NONE);
            return new PageThumb() {
                @Override
                public InkPlanes planes() {
                    return planes;
                }

                @Override
                public Painter painter(String substrateId, Arrangement arrangement) {
                    return new FlatPainter(
                            new Look(
                                    substrateId,
                                    Set.of(0, 1, 2),
                                    List.of(2, 0, 1),
                                    Map.of(),
                                    Optional.empty(),
                                    Optional.empty(),
                                    -1),
                            false);
                }
            };
        }

        @Override
        public void close() {
            openFiles.decrementAndGet();
        }
    }

    private final class FakePage implements OpenPage {
        private final int number;
        private final boolean ground;

        FakePage(int number, boolean ground) {
            this.number = number;
            this.ground = ground;
        }

        @Override
        public ColourInventory colours(Cancel cancel, Progress progress) {
            return FakeColours.inventory(paintedGround);
        }

        @Override
        public List<Candidate> grounds(ColourInventory colours, Lab garment) {
            return FakeColours.grounds(colours, garment);
        }

        @Override
        public Deletion deletion(ColourAssignment nominated, Cancel cancel, Progress progress) {
            return FakeColours.deletion();
        }

        @Override
        public ColourAssignment proposal(
                ColourInventory colours, String substrateId, Cancel cancel, Progress progress) {
            return FakeColours.proposal();
        }

        @Override
        public Optional<ColourUse> colourAt(
                ColourInventory colours, double xPt, double yPt, Set<Integer> layersOn, Cancel cancel) {
            return FakeColours.at(art(0, xPt, yPt) > 0, art(1, xPt, yPt) > 0);
        }

        @Override
        public PageInfo info() {
            Map<PageBox, Box> boxes = new EnumMap<>(PageBox.class);
            for (PageBox which : PageBox.values()) {
                boxes.put(which, which == PageBox.TRIM ? TRIM : MEDIA);
            }
            return new PageInfo(number, boxes, Set.of(PageBox.MEDIA, PageBox.TRIM), 0, 1);
        }

        @Override
        public List<Layer> layers() {
            return List.of(new Layer(0, "Guides", true));
        }

        @Override
        public List<InkCard> inks() {
            return INKS.inks().stream()
                    .map(ink -> new InkCard(ink, "invented for tests", 1))
                    .toList();
        }

        @Override
        public List<Integer> printOrder() {
            return List.of(2, 0, 1);
        }

        @Override
        public List<String> notes() {
            return List.of("This page uses a soft mask, shown approximately: its outline");
        }

        @Override
        public InkPlanes render(PlateRequest request, Cancel cancel, Progress progress) {
            await(gate, cancel);
            renders.incrementAndGet();
            double scale = request.pxPerPt();
            return PlanesForTests.of(INKS, request, (plane, x, y) -> art(plane, x / scale, y / scale));
        }

        @Override
        public Painter painter(Look look) {
            return new FlatPainter(look, ground);
        }

        @Override
        public String cover(InkPlanes planes, int x, int y) {
            return planes.get(planes.markPlane(), x, y) == 0 ? "unpainted" : "inked";
        }

        @Override
        public Lab asked(int[] tints) {
            return java.util.Arrays.stream(tints).sum() == 0 ? null : new Lab(60, 0, 0);
        }

        @Override
        public Figures measure(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) {
            return new Figures(List.of(new InkFigure(12.5, 0.1), new InkFigure(3.25, 0.05), new InkFigure(0, 0)));
        }

        @Override
        public MapReport measureMap(
                Look look, boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) {
            int[] sample = new int[MapEntry.SAMPLE_PX * MapEntry.SAMPLE_PX];
            java.util.Arrays.fill(sample, 0xffa0a0a0);
            MapChoice map = look.map().orElseThrow();
            return new MapReport(
                    map.kind().label() + " on " + look.substrateId(),
                    List.of(
                            new MapEntry("unpainted", "Nothing is painted.", 130, 0.7, sample),
                            new MapEntry("knocked out", "Paint removed the ink.", 2.4, 0.3, sample)),
                    map.kind().limit() == MapKind.Limit.NONE ? "" : map.limits().de00() + " ΔE00",
                    map.kind() == MapKind.THIN
                            ? List.of(
                                    new MapPlace("line of 0.07 mm in Signal Red", new Box(100, 100, 110, 104)),
                                    new MapPlace("gap of 0.08 mm in Signal Red", new Box(200, 150, 204, 152)),
                                    new MapPlace("line of 0.09 mm in Signal Red", new Box(60, 180, 61, 181)))
                            : List.of());
        }

        @Override
        public PageComparison compare(CompareRequest request, Cancel cancel, Progress progress) {
            compared = request;
            PageComparison.Size size = new PageComparison.Size(127, 91.7);
            return new PageComparison(
                    size,
                    size,
                    6.25,
                    0.054,
                    31.5,
                    List.of(
                            new PageComparison.InkChange(INKS.get(0), 12.5, 10, 2.5),
                            new PageComparison.InkChange(INKS.get(1), 3.25, 3.25, 0)),
                    List.of(new PageComparison.PlaceMm(40, 30, 60, 45)),
                    request.look().underbase().isPresent()
                            ? List.of("underbase: none → 100 % white of opacity 0.85, 1 hit")
                            : List.of());
        }

        @Override
        public Optional<Box> inkedBox(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) {
            return Optional.of(INKED);
        }

        @Override
        public Edges edges(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) {
            gatherings.incrementAndGet();
            return look -> new Vanish(share(card(look.substrateId())), 1000 * share(card(look.substrateId())), 1000);
        }

        @Override
        public void writeSheet(SheetRequest request, Cancel cancel, Progress progress) throws Refusal {
            progress.report("Writing", 0.4);
            if (exportWaits) {
                await(new CountDownLatch(1), cancel);
            }
            String looks = request.looks().stream().map(Look::substrateId).collect(Collectors.joining(" "));
            try {
                Files.writeString(
                        request.target(),
                        looks + " " + request.picturePx() + (request.overprint() ? "" : " without overprint"));
            } catch (IOException e) {
                throw new Refusal("cannot be written", e);
            }
        }

        @Override
        public void export(ExportRequest request, Cancel cancel, Progress progress) throws Refusal {
            exported = request;
            progress.report("Writing", 0.4);
            if (exportWaits) {
                await(new CountDownLatch(1), cancel);
            }
            Box box = info().box(request.box());
            PlateRequest r = PlateRequest.of(box, request.dpi(), true, Set.of());
            InkPlanes planes = render(r, cancel, progress);
            BufferedImage image = new BufferedImage(r.width(), r.height(), BufferedImage.TYPE_INT_RGB);
            int[] argb = new int[r.width() * r.height()];
            painter(request.look()).paint(planes, argb, 0, r.width(), cancel);
            image.setRGB(0, 0, r.width(), r.height(), argb, 0, r.width());
            try {
                ImageIO.write(image, "png", request.target().toFile());
            } catch (IOException e) {
                throw new Refusal("cannot be written", e);
            }
        }
    }

    /** A red disc, a teal bar under it, white between, and a mark plane that holds their union. */
    private static int art(int plane, double x, double y) {
        boolean red = Math.hypot(x - 200, y - 130) < 70;
        boolean teal = y > 180 && y < 240 && x > 60 && x < 340;
        boolean white = Math.hypot(x - 200, y - 130) < 90;
        return switch (plane) {
            case 0 -> red ? 255 : 0;
            case 1 -> teal ? 128 : 0;
            case 2 -> white ? 255 : 0;
            default -> red || teal || white ? 255 : 0;
        };
    }

    private static void await(CountDownLatch latch, Cancel cancel) {
        try {
            while (!latch.await(5, TimeUnit.MILLISECONDS)) {
                cancel.check();
            }
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private final class FlatPainter implements Painter {
        private final Look look;
        private final int ground;

        FlatPainter(Look look, boolean painted) {
            this.look = look;
            this.ground = painted
                    ? 0xff000000 | FakeColours.GROUND_RGB
                    : card(look.substrateId()).argb();
        }

        @Override
        public void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) {
            paints.incrementAndGet();
            int[] tints = new int[INKS.size()];
            for (int y = 0; y < planes.height(); y++) {
                for (int x = 0; x < planes.width(); x++) {
                    for (int plane = 0; plane < tints.length; plane++) {
                        tints[plane] = planes.get(plane, x, y);
                    }
                    argb[offset + y * stride + x] = shown(tints);
                }
            }
        }

        private int shown(int[] tints) {
            if (look.plate() >= 0) {
                return 0xff000000 | 0x010101 * (255 - tints[look.plate()]);
            }
            return look.map().isPresent() ? 0xff808000 : colour(tints);
        }

        @Override
        public int colour(int[] tints) {
            int argb = ground;
            for (int plane : look.printOrder()) {
                if (look.shown().contains(plane) && tints[plane] > 0) {
                    double opacity = look.opacities().getOrDefault(plane, 1.0);
                    argb = mix(argb, INK_RGB[plane], (int) Math.round(tints[plane] * opacity));
                }
            }
            return argb;
        }

        private static int mix(int under, int over, int share) {
            int argb = 0xff;
            for (int shift = 16; shift >= 0; shift -= 8) {
                int a = under >> shift & 255;
                int b = over >> shift & 255;
                argb = argb << 8 | a + (b - a) * share / 255;
            }
            return argb;
        }

        @Override
        public Texture texture() {
            return Texture.NONE;
        }

        @Override
        public Lab lab(int[] tints) {
            boolean bare = java.util.Arrays.stream(tints).sum() == 0;
            return bare
                    ? Srgb.toLab((ground >> 16 & 255) / 255.0, (ground >> 8 & 255) / 255.0, (ground & 255) / 255.0)
                    : new Lab(50, 0, 0);
        }
    }
}
