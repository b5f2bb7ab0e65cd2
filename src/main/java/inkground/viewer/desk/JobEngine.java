package inkground.viewer.desk;

import inkground.app.Approvals;
import inkground.app.Approvals.Approved;
import inkground.app.ArtworkFiles;
import inkground.app.AssignmentFile;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.Grounds.Ground;
import inkground.app.InkUse;
import inkground.app.InkedBox;
import inkground.app.Job;
import inkground.app.LineUp;
import inkground.app.OwnSubstrates;
import inkground.app.PageComparison;
import inkground.app.PageComparison.Side;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.app.Proofs;
import inkground.app.Proposal;
import inkground.app.Session;
import inkground.app.SessionFile;
import inkground.app.WornProofs;
import inkground.appearance.ArtworkEdges;
import inkground.appearance.AskedColours;
import inkground.appearance.BareMap;
import inkground.appearance.InkColour;
import inkground.appearance.ProofMap;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.VanishScore;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.garment.Placement;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.substrate.Cut;
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
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** The port of the window over the use cases of the program. */
public final class JobEngine implements ProofEngine {
    /** Resolution of the measures: 0.17 mm, as fine as the ink report of the command line. */
    static final double MEASURE_DPI = 150;
    /** Rows rasterised together while measuring; bounds memory on the widest page. */
    private static final int MEASURE_ROWS = 512;

    private final Optional<Path> demo;
    private final OwnStock own;
    private Library library;

    /**
     * @param demo the demo artwork, if it is there
     */
    public JobEngine(Optional<Path> demo) {
        this(demo, OwnSubstrates.ofUser());
    }

    /**
     * @param demo the demo artwork, if it is there
     * @param own the user's own papers and garments
     */
    public JobEngine(Optional<Path> demo, OwnSubstrates own) {
        this.demo = demo;
        this.own = new OwnStock(own);
    }

    @Override
    public List<SubstrateCard> substrates() throws Refusal {
        List<SubstrateCard> all = new ArrayList<>();
        library().all().forEach(substrate -> all.add(OwnStock.card(substrate, false)));
        all.addAll(own.read(library().all().stream().map(Substrate::id).collect(Collectors.toSet())));
        return all;
    }

    @Override
    public OwnShelf own() {
        return own;
    }

    /** Looks name only substrates that the rack showed: the library's, or the user's own, those removed since too. */
    private Substrate substrate(String id) {
        return own.byId(id).or(() -> library.byId(id)).orElseThrow();
    }

    @Override
    public List<Cut> cuts() throws Refusal {
        return library().cuts();
    }

    private synchronized Library library() throws Refusal {
        if (library == null) {
            library = Substrates.load();
        }
        return library;
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
        Path file = AssignmentFile.foundBeside(artwork);
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
        return SessionFile.load(itself ? file : AssignmentFile.foundBeside(file))
                .arrangement()
                .assignment();
    }

    @Override
    public OpenFile open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal {
        return file(Job.open(file, Job.Choices.NONE.sized(size), cancel, progress));
    }

    @Override
    public Earlier earlier(Path file, PictureSize size, int number, Cancel cancel, Progress progress) throws Refusal {
        if (Approvals.isRecord(file)) {
            Approved approved = Approvals.open(file, cancel, progress);
            Side side = approved.side();
            return new Earlier(
                    new JobFile(approved.job(), approved::close, this::page, this::substrate),
                    new JobPage(side.page(), Optional.of(side)),
                    Optional.of(new ApprovedAs(
                            approved.approval().caption(),
                            OwnStock.card(side.stack().substrate(), false),
                            side.overprint(),
                            side.layersOn())));
        }
        OpenFile revision = open(file, ArtworkFiles.fitting(size, file), cancel, progress);
        boolean read = false;
        try {
            int nearest = Math.min(number, revision.pageCount());
            Earlier earlier = new Earlier(
                    revision, revision.page(nearest, ColourAssignment.NONE, cancel, progress), Optional.empty());
            read = true;
            return earlier;
        } finally {
            if (!read) {
                revision.close();
            }
        }
    }

    private JobFile file(Job job) {
        return new JobFile(job, job::close, this::page, this::substrate);
    }

    private OpenPage page(PageJob page) {
        return new JobPage(page, Optional.empty());
    }

    private final class JobPage implements OpenPage {
        private final PageJob page;
        private final Optional<Side> approved;
        private final AskedColours asked;

        /** @param approved how it was approved, for a page of a record */
        JobPage(PageJob page, Optional<Side> approved) {
            this.page = page;
            this.approved = approved;
            this.asked = new AskedColours(page.inkColours(), page.condition());
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
            Side side =
                    before.approved.orElseGet(() -> before.asRevision(likewise(look, before), true, Placement.USUAL));
            return PageComparison.map(
                    info(),
                    model,
                    side,
                    before.approved.isEmpty(),
                    choice.limits().de00());
        }

        @Override
        public PageComparison compare(CompareRequest request, Cancel cancel, Progress progress) throws Refusal {
            JobPage before = (JobPage) request.before();
            Look look = request.look();
            Side after = new Side(page, stack(look), request.layersOn(), request.overprint(), request.placement());
            Side earlier = before.approved.orElseGet(
                    () -> before.asRevision(likewise(look, before), request.overprint(), request.placement()));
            return PageComparison.of(new PageComparison.Order(earlier, after, request.limitDe00()), cancel, progress);
        }

        private Side asRevision(Look look, boolean overprint, Placement placement) {
            return new Side(page, stack(look), page.displayList().defaultLayers(), overprint, placement);
        }

        /** The same look at another page: its inks are meant by their names, those that only it has are shown and printed last. */
        private Look likewise(Look look, JobPage other) {
            Set<Integer> shown = new HashSet<>();
            Map<Integer, Double> opacities = new HashMap<>();
            List<String> order = look.printOrder().stream()
                    .map(i -> page.inks().get(i).name())
                    .toList();
            for (int plane = 0; plane < other.page.inks().size(); plane++) {
                Ink ink = other.page.inks().get(plane);
                int here = page.inks().indexOf(ink.name());
                if (here < 0 ? ink.kind() != InkKind.TECHNICAL : look.shown().contains(here)) {
                    shown.add(plane);
                }
                if (look.opacities().containsKey(here)) {
                    opacities.put(plane, look.opacities().get(here));
                }
            }
            List<Integer> printed = other.printOrder().stream()
                    .sorted(Comparator.comparingInt(plane -> {
                        int at = order.indexOf(other.page.inks().get(plane).name());
                        return at < 0 ? order.size() : at;
                    }))
                    .toList();
            return new Look(look.substrateId(), shown, printed, opacities, look.underbase(), Optional.empty(), -1);
        }

        /** What was approved stays as it was, whatever the look. */
        private Stack stack(Look look) {
            if (approved.isPresent()) {
                return approved.get().stack();
            }
            List<InkColour> colours = new ArrayList<>(page.inkColours());
            look.opacities()
                    .forEach((plane, opacity) ->
                            colours.set(plane, colours.get(plane).withOpacity(opacity)));
            return new Stack(
                    substrate(look.substrateId()),
                    colours,
                    page.condition(),
                    look.shown(),
                    look.printOrder(),
                    look.underbase().map(PrintedStack::underbase).orElse(null));
        }

        @Override
        public String cover(InkPlanes planes, int x, int y) {
            return BareMap.classify(planes, x, y).label();
        }

        @Override
        public Lab asked(int[] tints) {
            return Arrays.stream(tints).allMatch(tint -> tint == 0) ? null : asked.lab(tints);
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
            MapChoice choice = look.map().orElseThrow();
            PlateRequest request =
                    PlateRequest.of(info().box(PageBox.TRIM), MapMeasure.dpi(choice.kind()), overprint, layersOn);
            ProofMap map = map(choice, look, new StackModel(stack(look)));
            return MapMeasure.of(map, PlaneSource.of(page.plate()), request, cancel, progress);
        }

        @Override
        public Optional<Box> inkedBox(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress)
                throws Refusal {
            return InkedBox.of(page, overprint, layersOn, cancel, progress);
        }

        @Override
        public Edges edges(boolean overprint, Set<Integer> layersOn, Cancel cancel, Progress progress) throws Refusal {
            PlateRequest request = PlateRequest.of(info().box(PageBox.TRIM), ArtworkEdges.DPI, overprint, layersOn);
            ArtworkEdges edges = ArtworkEdges.of(
                    PlaneSource.of(page.plate()),
                    request,
                    new AskedColours(page.inkColours(), page.condition()),
                    cancel,
                    progress);
            return look -> {
                VanishScore score = VanishScore.of(edges, new StackModel(stack(look)));
                return new Vanish(score.score(), score.lostMm(), score.edgesMm());
            };
        }

        @Override
        public void writeSheet(SheetRequest request, Cancel cancel, Progress progress) throws Refusal {
            List<LineUp.Place> places = LineUp.score(
                    page,
                    request.looks().stream().map(this::stack).toList(),
                    request.overprint(),
                    request.layersOn(),
                    request.ranked(),
                    cancel,
                    progress);
            LineUp.write(
                    new LineUp.Order(
                            page,
                            request.name(),
                            places,
                            request.ranked(),
                            request.overprint(),
                            request.layersOn(),
                            request.picturePx(),
                            request.target(),
                            request.replace()),
                    cancel,
                    progress);
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
            Substrate on = substrate(substrateId);
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
            if (request.worn().isPresent()) {
                WornAs worn = request.worn().get();
                WornProofs.write(
                        new WornProofs.Order(
                                page,
                                stack(request.look()),
                                worn.placement(),
                                worn.form(),
                                worn.cloth(),
                                request.dpi(),
                                request.overprint(),
                                request.layersOn(),
                                request.target(),
                                request.replace()),
                        cancel,
                        progress);
                return;
            }
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
}
