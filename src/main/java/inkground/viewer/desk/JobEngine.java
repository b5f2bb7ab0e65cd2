package inkground.viewer.desk;

import inkground.app.Arrangement.WhiteBase;
import inkground.app.AssignmentFile;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.Grounds.Ground;
import inkground.app.InkUse;
import inkground.app.Job;
import inkground.app.KnockOuts;
import inkground.app.PageComparison;
import inkground.app.PageJob;
import inkground.app.Proofs;
import inkground.app.Proposal;
import inkground.app.Session;
import inkground.app.SessionFile;
import inkground.appearance.Appearance;
import inkground.appearance.BareMap;
import inkground.appearance.InkColour;
import inkground.appearance.InkColours;
import inkground.appearance.MapFigures;
import inkground.appearance.PlateMap;
import inkground.appearance.ProofMap;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.Underbase;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.handoff.CleanFile;
import inkground.findings.ThinFeatures;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import inkground.plate.Register;
import inkground.substrate.Library;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.viewer.state.Look;
import inkground.viewer.state.MapChoice;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The port of the window over the use cases of the program. */
public final class JobEngine implements ProofEngine {
    /** Resolution of the measures: 0.17 mm, as fine as the ink report of the command line. */
    private static final double MEASURE_DPI = 150;
    /** Rows rasterised together while measuring; bounds memory on the widest page. */
    private static final int MEASURE_ROWS = 512;
    /** Places that a map names; more would be a list that no one reads. */
    private static final int MOST_PLACES = 40;

    private final Optional<Path> demo;
    private Library library;

    /**
     * @param demo the demo artwork, if it is there
     */
    public JobEngine(Optional<Path> demo) {
        this.demo = demo;
    }

    @Override
    public List<SubstrateCard> substrates() throws Refusal {
        return library().all().stream().map(JobEngine::card).toList();
    }

    private synchronized Library library() throws Refusal {
        if (library == null) {
            library = Substrates.load();
        }
        return library;
    }

    private static SubstrateCard card(Substrate substrate) {
        List<String> notes = new ArrayList<>(substrate.notes());
        if (substrate.underbaseAdvised()) {
            notes.add("A white underbase is usual under colours on this.");
        }
        return new SubstrateCard(
                substrate.id(),
                substrate.name(),
                substrate.kind() == Substrate.Kind.GARMENT,
                substrate.lab(),
                Srgb.labToArgb(substrate.lab()),
                substrate.texture().kind().name().toLowerCase(Locale.ROOT),
                substrate.source(),
                notes);
    }

    @Override
    public List<PrintProcess> processes() throws Refusal {
        return library().processes();
    }

    @Override
    public Optional<Path> demo() {
        return demo;
    }

    @Override
    public Optional<Session> session(Path artwork) throws Refusal {
        Path file = AssignmentFile.beside(artwork);
        return Files.isRegularFile(file) ? Optional.of(SessionFile.load(file)) : Optional.empty();
    }

    @Override
    public Path keep(Session session, Path artwork) throws Refusal {
        Path file = AssignmentFile.beside(artwork);
        SessionFile.save(session, file, true);
        return file;
    }

    @Override
    public ColourAssignment rules(Path file) throws Refusal {
        boolean itself = file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".json");
        return SessionFile.load(itself ? file : AssignmentFile.beside(file))
                .arrangement()
                .assignment();
    }

    @Override
    public OpenFile open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return new JobFile(Job.open(file, cancel, progress));
    }

    private final class JobFile implements OpenFile {
        private final Job job;

        JobFile(Job job) {
            this.job = job;
        }

        @Override
        public Path path() {
            return job.file();
        }

        @Override
        public int pageCount() {
            return job.pages().size();
        }

        @Override
        public OpenPage page(int number, ColourAssignment assignment, Cancel cancel, Progress progress) throws Refusal {
            return new JobPage(job.page(number, assignment, cancel, progress), library());
        }

        @Override
        public CleanFile.Result clean(
                ColourAssignment assignment, Path target, boolean replace, Cancel cancel, Progress progress)
                throws Refusal {
            return KnockOuts.write(job, assignment, target, replace, cancel, progress);
        }

        @Override
        public void close() {
            job.close();
        }
    }

    private static final class JobPage implements OpenPage {
        private final PageJob page;
        private final Library library;

        JobPage(PageJob page, Library library) {
            this.page = page;
            this.library = library;
        }

        @Override
        public PageInfo info() {
            return page.info();
        }

        @Override
        public List<Layer> layers() {
            return page.displayList().layers();
        }

        @Override
        public List<InkCard> inks() {
            return page.inkColours().stream()
                    .map(c -> new InkCard(c.ink(), c.source(), c.opacity()))
                    .toList();
        }

        @Override
        public List<Integer> printOrder() {
            return page.printOrder();
        }

        @Override
        public List<String> notes() {
            return page.notes();
        }

        @Override
        public InkPlanes render(PlateRequest request, Cancel cancel, Progress progress) throws Refusal {
            return page.plate().render(request, cancel, progress);
        }

        @Override
        public Painter painter(Look look) {
            StackModel model = new StackModel(stack(look));
            ProofMap map = look.map().map(choice -> map(choice, look, model)).orElse(null);
            Maps.Play play = look.map()
                    .filter(choice -> choice.kind() == MapKind.REGISTER)
                    .map(choice -> Maps.play(choice, inks().size()))
                    .orElse(null);
            return new StackPainter(page.plate(), model, map, play, look.plate());
        }

        private ProofMap map(MapChoice choice, Look look, StackModel model) {
            if (choice.before().isEmpty()) {
                return Maps.of(choice, page, model);
            }
            JobPage before = (JobPage) choice.before().get();
            StackModel under =
                    new StackModel(before.stack(look.ofInks(before.inks().size())));
            return PageComparison.map(
                    page, before.page, model, under, choice.limits().de00());
        }

        @Override
        public PageComparison compare(
                OpenPage before, String substrateId, double limitDe00, Cancel cancel, Progress progress)
                throws Refusal {
            Substrate on = library.byId(substrateId).orElseThrow();
            PageComparison.Order order = new PageComparison.Order(((JobPage) before).page, page, on, limitDe00);
            return PageComparison.of(order, cancel, progress);
        }

        private Stack stack(Look look) {
            // Looks name only substrates that the rack showed, and the rack shows what the library holds.
            Substrate substrate = library.byId(look.substrateId()).orElseThrow();
            List<InkColour> colours = new ArrayList<>(page.inkColours());
            look.opacities()
                    .forEach((plane, opacity) ->
                            colours.set(plane, colours.get(plane).withOpacity(opacity)));
            return new Stack(
                    substrate,
                    colours,
                    page.condition(),
                    look.shown(),
                    look.printOrder(),
                    look.underbase().map(JobPage::underbase).orElse(null));
        }

        private static Underbase underbase(WhiteBase base) {
            return new Underbase(
                    InkColours.underbaseWhite(),
                    base.tint(),
                    base.hits(),
                    base.chokeMm(),
                    Set.of(),
                    base.knockedOutUnder());
        }

        @Override
        public String cover(InkPlanes planes, int x, int y) {
            return BareMap.classify(planes, x, y).label();
        }

        @Override
        public Figures measure(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress)
                throws Refusal {
            PlateRequest request = PlateRequest.of(info().box(PageBox.TRIM), MEASURE_DPI, overprint, layersOn);
            InkUse.Sum uses = new InkUse.Sum();
            page.plate().stream(request, MEASURE_ROWS, cancel, progress, uses::add);
            return new Figures(uses.uses().stream()
                    .map(use -> new InkFigure(use.coveredCm2(), use.meanTint()))
                    .toList());
        }

        @Override
        public MapReport measureMap(
                Look look, boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) throws Refusal {
            PlateRequest request = PlateRequest.of(info().box(PageBox.TRIM), MEASURE_DPI, overprint, layersOn);
            ProofMap map = map(look.map().orElseThrow(), look, new StackModel(stack(look)));
            MapFigures figures = map.figures(PlaneSource.of(page.plate()), request, cancel, progress);
            List<MapEntry> entries = new ArrayList<>();
            for (int i = 0; i < map.legend().size(); i++) {
                ProofMap.Entry entry = map.legend().get(i);
                entries.add(new MapEntry(
                        entry.word(),
                        entry.explanation(),
                        figures.cm2(i),
                        figures.share(i),
                        entry.pattern().sample(MapEntry.SAMPLE_PX)));
            }
            String largest = Double.isNaN(figures.largest())
                    ? ""
                    : String.format(Locale.ROOT, "%.1f %s", figures.largest(), map.unit());
            return new MapReport(
                    map.title(), entries, largest, places(look.map().orElseThrow(), request, cancel, progress));
        }

        private List<MapPlace> places(MapChoice choice, PlateRequest trim, Cancel cancel, Progress progress)
                throws Refusal {
            if (choice.kind() != MapKind.THIN) {
                return List.of();
            }
            ThinFeatures.Limits limits = Maps.widths(choice.limits());
            PlateRequest fine = PlateRequest.of(
                    info().box(PageBox.TRIM), ThinFeatures.dpi(limits), trim.overprint(), trim.layersOn());
            return ThinFeatures.of(PlaneSource.of(page.plate()), fine, limits, cancel, progress).places().stream()
                    .limit(MOST_PLACES)
                    .map(place -> new MapPlace(
                            String.format(
                                    Locale.ROOT,
                                    "%s of %.2f mm in %s",
                                    place.kind().word(),
                                    place.widthMm(),
                                    place.ink().name()),
                            place.box()))
                    .toList();
        }

        @Override
        public ColourInventory colours(Cancel cancel, Progress progress) throws Refusal {
            return ColourInventory.of(page, cancel, progress);
        }

        @Override
        public List<Candidate> grounds(ColourInventory colours, Lab garment) {
            return Grounds.candidates(page, colours, garment);
        }

        @Override
        public Deletion deletion(ColourAssignment nominated, Cancel cancel, Progress progress) throws Refusal {
            return Grounds.deletion(page, nominated, cancel, progress);
        }

        @Override
        public ColourAssignment proposal(ColourInventory colours, String substrateId, Cancel cancel, Progress progress)
                throws Refusal {
            Substrate on = library.byId(substrateId).orElseThrow();
            Lab garment = on.kind() == Substrate.Kind.GARMENT ? on.lab() : null;
            List<Ground> grounds = Grounds.survey(page, colours, garment, cancel, progress);
            return Proposal.of(page, colours, grounds, on, ColourInventory.NEAR_DE00)
                    .assignment();
        }

        @Override
        public Optional<ColourUse> colourAt(
                ColourInventory colours, double xPt, double yPt, Set<Integer> layersOn, Cancel cancel) throws Refusal {
            return colours.at(page, xPt, yPt, layersOn, cancel);
        }

        @Override
        public void export(ExportRequest request, Cancel cancel, Progress progress) throws Refusal {
            Proofs.write(
                    new Proofs.Order(
                            page,
                            stack(request.look()),
                            request.box(),
                            request.dpi(),
                            request.overprint(),
                            request.layersOn(),
                            request.target(),
                            request.replace()),
                    cancel,
                    progress);
        }
    }

    /**
     * @param from rasterises what lies around a region
     * @param map drawn over the colours; null for none
     * @param play how far the inks lie off, which is shown in place of the map; null for none
     * @param plate plane index of the ink whose plate is shown in place of all; -1 for none
     */
    private record StackPainter(Plate from, StackModel model, ProofMap map, Maps.Play play, int plate)
            implements Painter {
        @Override
        public void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) throws Refusal {
            cancel.check();
            if (plate >= 0) {
                PlateMap.paint(planes, plate, argb, offset, stride);
                return;
            }
            if (play != null) {
                // The colours themselves, off register, are what the eye has to judge; a hatch would hide them.
                InkPlanes off = Register.shifted(
                        PlaneSource.of(from), planes.request(), play.dxMm(), play.dyMm(), cancel);
                Appearance.paint(off, model, argb, offset, stride, cancel);
                return;
            }
            int reach = Appearance.reachPx(model.stack(), planes.request().pxPerPt());
            if (reach > 0) {
                paintWithin(planes.request(), reach, argb, offset, stride, cancel);
            } else {
                Appearance.paint(planes, model, argb, offset, stride, cancel);
            }
            if (map != null) {
                map.paint(planes, argb, offset, stride, cancel);
            }
        }

        /** Where colours hang on what lies around, the region is painted with a margin, so that tiles show no seam. */
        private void paintWithin(PlateRequest region, int reach, int[] argb, int offset, int stride, Cancel cancel)
                throws Refusal {
            PlateRequest wide = region.grown(reach);
            int[] pixels = new int[wide.width() * wide.height()];
            InkPlanes planes = from.render(wide, cancel, Progress.NONE);
            Appearance.paint(planes, model, pixels, 0, wide.width(), cancel);
            for (int y = 0; y < region.height(); y++) {
                System.arraycopy(pixels, (y + reach) * wide.width() + reach, argb, offset + y * stride, region.width());
            }
        }

        @Override
        public int colour(int[] tints) {
            return model.toArgb(tints);
        }

        @Override
        public Lab lab(int[] tints) {
            double[] xyz = new double[3];
            model.toXyz(tints, xyz);
            return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
        }
    }
}
