package inkground.app;

import inkground.app.PageComparison.Side;
import inkground.appearance.Stack;
import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.base.ScratchFolder;
import inkground.colour.PrintConditions;
import inkground.garment.Form;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Records of what a client approved: the artwork's own bytes, how they are printed, on what, and the picture that was seen. */
public final class Approvals {
    /** How records' names end by custom. */
    public static final String ENDING = ".approved.zip";

    /** Fine enough to look at on a screen. */
    private static final double PROOF_DPI = 150;
    /** Longer edge of the picture; larger pages get a coarser one. */
    private static final double MOST_EDGE_PX = 4000;

    private Approvals() {}

    /**
     * How the artwork was seen on a garment.
     *
     * @param cloth whether grain and folds were shown
     */
    public record Worn(Form form, boolean cloth) {}

    /**
     * What to keep.
     *
     * @param job the open artwork
     * @param page which page, from 1
     * @param on what it is printed on
     * @param arrangement how it is printed; its colour rules count, not the job's
     * @param hiddenInks names of inks that are not shown; inks for the finisher count as hidden only if named
     * @param underbaseOpacity opacity of the underbase's white, where it is not the usual one
     * @param printing way of printing in words, if one was named
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param worn how it was seen on a garment; empty for flat alone
     * @param by who approved; empty for no one named
     * @param when it was approved
     * @param file where the record goes
     * @param replace whether an existing file may be replaced
     */
    public record Order(
            Job job,
            int page,
            Substrate on,
            Arrangement arrangement,
            Set<String> hiddenInks,
            OptionalDouble underbaseOpacity,
            Optional<String> printing,
            boolean overprint,
            Set<Integer> layersOn,
            Optional<Worn> worn,
            Optional<String> by,
            OffsetDateTime when,
            Path file,
            boolean replace) {
        /** Checks the name and copies the sets. */
        public Order {
            if (by.map(name -> name.isBlank() || name.length() > Approval.LONGEST_NAME)
                    .orElse(false)) {
                throw new IllegalArgumentException("a name of 1 to " + Approval.LONGEST_NAME + " characters");
            }
            hiddenInks = Set.copyOf(hiddenInks);
            layersOn = Set.copyOf(layersOn);
        }
    }

    /** @return where the record of an artwork is kept by custom */
    public static Path beside(Path artwork) {
        return artwork.resolveSibling(artwork.getFileName() + ENDING);
    }

    /** @return whether a file is to be read as a record: an archive, told by how it starts; not if it cannot be read */
    public static boolean isRecord(Path file) {
        try {
            return Files.isRegularFile(file) && ApprovalFile.isArchive(file);
        } catch (IOException e) {
            return false; // whoever opens it as artwork says why
        }
    }

    /** @return the inks of a page that are hidden by custom: those for the finisher, which do not print */
    public static Set<String> technicalInks(PageJob page) {
        return page.inks().inks().stream()
                .filter(ink -> ink.kind() == InkKind.TECHNICAL)
                .map(Ink::name)
                .collect(Collectors.toSet());
    }

    /**
     * Writes a record, whole or not at all. The picture in it is painted from the record's own parts, so that it shows what the
     * record holds.
     *
     * @throws Refusal if the artwork changed since it was opened, is too large, or the record cannot be written
     */
    public static void write(Order order, Cancel cancel, Progress progress) throws Refusal {
        SafeFiles.file(order.file(), order.replace(), temporary -> {
            try (ScratchFolder scratch = ScratchFolder.make()) {
                pack(order, scratch.path(), temporary, cancel, progress);
            }
        });
    }

    private static void pack(Order order, Path folder, Path target, Cancel cancel, Progress progress)
            throws IOException, Refusal {
        // recorded first: only then is it known which pictures it links to
        order.job().page(order.page(), order.arrangement().assignment(), cancel, progress);
        List<String> parts = new ArrayList<>();
        String artwork = gather(order, folder, parts, cancel);
        Job.Choices choices = order.job().choices();
        Optional<String> condition = Optional.ofNullable(choices.condition());
        if (condition.isPresent() && !PrintConditions.BUNDLED.contains(condition.get())) {
            condition = Optional.of(copy(Path.of(condition.get()), "condition", folder, parts));
        }
        Optional<String> inks =
                choices.inks() == null ? Optional.empty() : Optional.of(copy(choices.inks(), "inks", folder, parts));
        Session session = new Session(
                order.arrangement().sized(choices.size()),
                Optional.of(new Session.View(order.on().id(), order.page(), order.hiddenInks())));
        SessionFile.save(session, folder.resolve(ApprovalFile.SESSION), false);
        Files.writeString(folder.resolve(ApprovalFile.SUBSTRATE), JsonText.of(OwnSubstrates.json(order.on())) + "\n");
        Approval approval = new Approval(
                artwork,
                order.page(),
                condition,
                inks,
                choices.size(),
                choices.black(),
                order.printing(),
                order.underbaseOpacity(),
                order.overprint(),
                order.layersOn(),
                order.by(),
                order.when());
        parts.addAll(List.of(ApprovalFile.SESSION, ApprovalFile.SUBSTRATE, ApprovalFile.PROOF));
        try (Approved seen = Approved.of(folder, approval, cancel, progress)) {
            paint(order, seen.side(), folder, parts, cancel, progress);
        }
        ApprovalFile.pack(approval, folder, parts, target, cancel, progress);
    }

    /** Copies the artwork and what it links to. */
    private static String gather(Order order, Path folder, List<String> parts, Cancel cancel)
            throws IOException, Refusal {
        Path file = order.job().file().toAbsolutePath();
        String name = file.getFileName().toString();
        // what the file is, is told by how it starts; its name need not be kept where some system would trip over it
        String plain = ApprovalFile.safeName(name) ? name : "artwork";
        Path home = file.getParent().normalize();
        List<Path> linked = order.job().artwork().linkedFiles();
        for (Path link : linked) {
            cancel.check();
            String path = home.relativize(link).toString().replace(File.separatorChar, '/');
            copy(link, folder, "artwork/" + path, parts);
        }
        String artwork = copy(file, folder, "artwork/" + plain, parts);
        if (!order.job().unchanged()) {
            throw new Refusal(name + " was changed since it was opened. Read it again, look at it, and keep that.");
        }
        return artwork;
    }

    private static String copy(Path from, String kind, Path folder, List<String> parts) throws IOException {
        return copy(from, folder, kind + "/" + from.getFileName(), parts);
    }

    private static String copy(Path from, Path folder, String path, List<String> parts) throws IOException {
        Path to = folder.resolve(path);
        Files.createDirectories(to.getParent());
        Files.copy(from, to);
        parts.add(path);
        return path;
    }

    private static void paint(Order order, Side side, Path folder, List<String> parts, Cancel cancel, Progress progress)
            throws Refusal {
        Box trim = side.page().info().box(PageBox.TRIM);
        double dpi = Math.min(PROOF_DPI, 72 * MOST_EDGE_PX / Math.max(trim.width(), trim.height()));
        Proofs.write(
                new Proofs.Order(
                        side.page(),
                        side.stack(),
                        PageBox.TRIM,
                        dpi,
                        side.overprint(),
                        side.layersOn(),
                        folder.resolve(ApprovalFile.PROOF),
                        false),
                cancel,
                progress);
        if (order.worn().isPresent()) {
            Worn worn = order.worn().get();
            WornProofs.write(
                    new WornProofs.Order(
                            side.page(),
                            side.stack(),
                            side.placement(),
                            worn.form(),
                            worn.cloth(),
                            WornProofs.USUAL_DPI,
                            side.overprint(),
                            side.layersOn(),
                            folder.resolve(ApprovalFile.WORN),
                            false),
                    cancel,
                    progress);
            parts.add(ApprovalFile.WORN);
        }
    }

    /**
     * Opens a record: unpacks it into a temporary folder, compares all sums, and opens the artwork in it as it was approved.
     *
     * @throws Refusal if it is no record, was changed, or its artwork cannot be opened
     */
    public static Approved open(Path file, Cancel cancel, Progress progress) throws Refusal {
        if (!Files.isRegularFile(file)) {
            throw new Refusal("There is no file " + file + ". Check the name.");
        }
        ScratchFolder scratch = ScratchFolder.make();
        boolean opened = false;
        try {
            Approval approval = ApprovalFile.unpack(file, scratch.path(), cancel, progress);
            Approved approved =
                    Approved.of(scratch.path(), approval, cancel, progress).owning(scratch);
            opened = true;
            return approved;
        } finally {
            if (!opened) {
                scratch.close();
            }
        }
    }

    /** What was approved, opened. Thread-safe; close it when it is no longer looked at. */
    public static final class Approved implements AutoCloseable {
        private final Approval approval;
        private final Job job;
        private final Side side;
        private final ScratchFolder scratch;

        private Approved(Approval approval, Job job, Side side, ScratchFolder scratch) {
            this.approval = approval;
            this.job = job;
            this.side = side;
            this.scratch = scratch;
        }

        private static Approved of(Path folder, Approval approval, Cancel cancel, Progress progress) throws Refusal {
            Arrangement arrangement =
                    SessionFile.load(folder.resolve(ApprovalFile.SESSION)).arrangement();
            Job.Choices choices = new Job.Choices(
                    approval.condition()
                            .map(named ->
                                    named.contains("/") ? folder.resolve(named).toString() : named)
                            .orElse(null),
                    approval.inks().map(folder::resolve).orElse(null),
                    arrangement.assignment(),
                    approval.size(),
                    approval.black());
            Job job = Job.open(folder.resolve(approval.artwork()), choices, cancel, progress);
            boolean whole = false;
            try {
                Approved approved = new Approved(
                        approval, job, side(folder, approval, job.page(approval.page(), cancel, progress)), null);
                whole = true;
                return approved;
            } finally {
                if (!whole) {
                    job.close();
                }
            }
        }

        private static Side side(Path folder, Approval approval, PageJob page) throws Refusal {
            Session session = SessionFile.load(folder.resolve(ApprovalFile.SESSION));
            Substrate on = Substrates.read(folder.resolve(ApprovalFile.SUBSTRATE));
            Stack stack = PrintedStack.arranged(page.stackOn(on), session.arrangement());
            Set<String> hidden = session.view().map(Session.View::hiddenInks).orElse(technicalInks(page));
            Set<Integer> shown = IntStream.range(0, stack.inks().size())
                    .filter(plane ->
                            !hidden.contains(stack.inks().get(plane).ink().name()))
                    .boxed()
                    .collect(Collectors.toSet());
            Stack seen = stack.showing(shown);
            if (approval.underbaseOpacity().isPresent() && seen.underbase() != null) {
                seen = seen.over(
                        seen.underbase().withWhiteOf(approval.underbaseOpacity().getAsDouble()));
            }
            return new Side(
                    page,
                    seen,
                    layers(approval, page.displayList()),
                    approval.overprint(),
                    session.arrangement().placement());
        }

        private static Set<Integer> layers(Approval approval, DisplayList list) {
            Set<Integer> known = list.layers().stream().map(Layer::id).collect(Collectors.toSet());
            Set<Integer> on = new HashSet<>(approval.layersOn());
            on.retainAll(known);
            return on;
        }

        private Approved owning(ScratchFolder folder) {
            return new Approved(approval, job, side, folder);
        }

        /** @return what the record states */
        public Approval approval() {
            return approval;
        }

        /** @return the artwork as it was */
        public Job job() {
            return job;
        }

        /** @return the page as it was approved */
        public Side side() {
            return side;
        }

        @Override
        public void close() {
            job.close();
            if (scratch != null) {
                scratch.close();
            }
        }
    }
}
