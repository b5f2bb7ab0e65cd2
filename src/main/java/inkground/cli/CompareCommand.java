package inkground.cli;

import inkground.app.Approval;
import inkground.app.Approvals;
import inkground.app.Arrangement;
import inkground.app.ArtworkFiles;
import inkground.app.AssignmentFile;
import inkground.app.Job;
import inkground.app.PageComparison;
import inkground.app.PageComparison.InkChange;
import inkground.app.PageComparison.PlaceMm;
import inkground.app.PageComparison.Side;
import inkground.app.PageComparison.Size;
import inkground.app.PageJob;
import inkground.app.Proofs;
import inkground.app.SessionFile;
import inkground.appearance.AskedColours;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import inkground.substrate.Substrate;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Compares two revisions of a page. */
@Command(
        name = "compare",
        description = {
            "Compare a page of two revisions, laid on each other by the corners of their trims: which inks changed, where the"
                    + " colours differ, and by how much. Exit code 1 tells that they differ.",
            "One may be an approval record: it counts as what was before, on the substrate and in the arrangement that were"
                    + " approved. The artwork is arranged as --assign says, else as is kept beside it.",
            "A size is taken for both files, or for the one of them that is a picture or an SVG; never for a record."
        })
final class CompareCommand implements Callable<Integer> {
    private static final int PLACES_SHOWN = 12;

    private final Console console;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BEFORE", description = "The first revision, or an approval record.")
    private Path before;

    @Parameters(index = "1", paramLabel = "AFTER", description = "The second revision.")
    private Path after;

    @Mixin
    private SizeOptions size;

    @Mixin
    private ConditionOption condition;

    @Mixin
    private AssignmentOptions assignment;

    @Option(
            names = "--page",
            paramLabel = "N",
            converter = PageNumber.class,
            description =
                    "Page, from 1; of the artwork, where the other is a record. Default: 1, or the page of the record.")
    private Integer page;

    @Option(
            names = "--on",
            paramLabel = "SUBSTRATE",
            description =
                    "Paper or garment that both are printed on; of the artwork, where the other is a record. Without it: the"
                            + " white paper of the first file's print condition, or the substrate of the record.")
    private String substrate;

    @Option(
            names = "--limit",
            paramLabel = "dE",
            defaultValue = "" + PageComparison.DEFAULT_LIMIT_DE00,
            description = "Colour difference (CIEDE2000) that is let pass. Default: ${DEFAULT-VALUE}.")
    private double limit;

    @Option(
            names = "--map",
            paramLabel = "OUT.png",
            description = "Also write the second revision with its changes hatched.")
    private Path map;

    @Option(
            names = "--dpi",
            paramLabel = "D",
            defaultValue = "100",
            converter = Resolution.class,
            description = "Pixels per inch of the map. Default: ${DEFAULT-VALUE}.")
    private double dpi;

    @Option(names = "--replace", description = "Replace a map that exists already.")
    private boolean replace;

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    private Path earlier;
    private Path later;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (!(limit >= 0 && limit <= 100)) {
            throw new ParameterException(spec.commandLine(), "--limit is a colour difference from 0 to 100");
        }
        // a record is always what was before
        boolean swapped = Approvals.isRecord(after) && !Approvals.isRecord(before);
        earlier = swapped ? after : before;
        later = swapped ? before : after;
        return Approvals.isRecord(earlier) ? withRecord() : withRevision();
    }

    private int withRevision() throws Refusal {
        if (assignment.given()) {
            throw new ParameterException(
                    spec.commandLine(), "--assign and --bare are for comparing with an approval record");
        }
        Job.Choices choices = condition.choices(null, Arrangement.AS_FILED.sized(size.or(PictureSize.STATED)));
        PictureSize first = ArtworkFiles.fitting(choices.size(), earlier);
        // a size that fits neither is refused by the second
        PictureSize second = first.chosen() ? ArtworkFiles.fitting(choices.size(), later) : choices.size();
        try (Job one = Job.open(earlier, choices.sized(first), console.cancel(), console.progress());
                Job two = Job.open(later, choices.sized(second), console.cancel(), console.progress())) {
            PageJob was = one.page(page == null ? 1 : page, console.cancel(), console.progress());
            PageJob is = two.page(page == null ? 1 : page, console.cancel(), console.progress());
            Substrate on =
                    substrate == null ? AskedColours.ownPaper(was.condition()) : SubstrateChoice.of(substrate, spec);
            return tell(new PageComparison.Order(Side.of(was, on), Side.of(is, on), limit), null);
        }
    }

    private int withRecord() throws Refusal {
        try (Approvals.Approved record = Approvals.open(earlier, console.cancel(), console.progress())) {
            Substrate on = substrate == null ? record.side().stack().substrate() : SubstrateChoice.of(substrate, spec);
            if (Approvals.isRecord(later)) {
                if (size.given() || assignment.given()) {
                    throw new ParameterException(
                            spec.commandLine(), "records are compared as they are: leave out size and assignment");
                }
                try (Approvals.Approved other = Approvals.open(later, console.cancel(), console.progress())) {
                    return tell(new PageComparison.Order(record.side(), other.side(), limit), record.approval());
                }
            }
            Arrangement arrangement = arrangement();
            try (Job two = size.open(later, condition.choices(null, arrangement), console)) {
                int number = page == null ? record.approval().page() : page;
                PageJob second = two.page(number, console.cancel(), console.progress());
                return tell(
                        new PageComparison.Order(record.side(), Side.of(second, on, arrangement), limit),
                        record.approval());
            }
        }
    }

    /** As the options say; without them as it is kept beside the artwork, and else as the file has it. */
    private Arrangement arrangement() throws Refusal {
        Path kept = AssignmentFile.foundBeside(later);
        if (assignment.given() || !Files.isRegularFile(kept)) {
            return assignment.arrangement();
        }
        if (!json) {
            console.say(later.getFileName() + " is arranged as kept in " + kept.getFileName());
        }
        return SessionFile.load(kept).arrangement();
    }

    /** @param approval what the record states; null where the earlier one is a file */
    private int tell(PageComparison.Order order, Approval approval) throws Refusal {
        PageComparison result = PageComparison.of(order, console.cancel(), console.progress());
        if (map != null) {
            PageComparison.writeMap(order, dpi, map, replace, console.cancel(), console.progress());
        }
        if (json) {
            console.json(asJson(order, result, approval));
        } else {
            asWords(order, result, approval);
        }
        return result.changed() ? ExitCode.FINDINGS : ExitCode.FINE;
    }

    private void asWords(PageComparison.Order order, PageComparison result, Approval approval) {
        if (approval != null) {
            console.say(approval.artworkName() + ", page " + approval.page() + ", " + approval.caption());
        }
        result.arrangement().forEach(line -> console.say("arranged otherwise: " + line));
        if (result.before().differsFrom(result.after())) {
            console.say("the pages differ in size: " + words(result.before()) + " and " + words(result.after())
                    + "; compared from the top left corner of the trim");
        }
        console.say(String.format(
                Locale.ROOT,
                "on %s: %.2f cm2 changed by more than dE00 %.1f (%.2f %%), at most dE00 %.1f",
                on(order),
                result.changedCm2(),
                limit,
                100 * result.changedShare(),
                result.largestDe00()));
        Table table = new Table("ink", "", "before cm2", "after cm2", "changed cm2");
        for (InkChange ink : result.inks()) {
            table.row(
                    ink.ink().name(),
                    ink.change().word(),
                    figure(ink.beforeCm2()),
                    figure(ink.afterCm2()),
                    figure(ink.changedCm2()));
        }
        table.lines().forEach(console::say);
        List<PlaceMm> places = result.places();
        for (PlaceMm place : places.subList(0, Math.min(PLACES_SHOWN, places.size()))) {
            console.say(String.format(
                    Locale.ROOT,
                    "changed: %.1f to %.1f mm from the left, %.1f to %.1f mm from the top",
                    place.x0(),
                    place.x1(),
                    place.y0(),
                    place.y1()));
        }
        if (places.size() > PLACES_SHOWN) {
            console.say("and " + (places.size() - PLACES_SHOWN) + " smaller places");
        }
        if (map != null) {
            console.say(map + ": the second revision, its changes hatched. " + Proofs.CAUTION);
        }
    }

    private static String on(PageComparison.Order order) {
        return order.after().stack().substrate().name();
    }

    private static String figure(double cm2) {
        return String.format(Locale.ROOT, "%.2f", cm2);
    }

    private static String words(Size size) {
        return String.format(Locale.ROOT, "%.1f x %.1f mm", size.widthMm(), size.heightMm());
    }

    private Map<String, Object> asJson(PageComparison.Order order, PageComparison result, Approval approval) {
        List<Object> inks = new ArrayList<>();
        for (InkChange ink : result.inks()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", ink.ink().name());
            one.put("change", ink.change().word());
            one.put("beforeCm2", ink.beforeCm2());
            one.put("afterCm2", ink.afterCm2());
            one.put("changedCm2", ink.changedCm2());
            inks.add(one);
        }
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("before", earlier.toString());
        if (approval != null) {
            Map<String, Object> approved = new LinkedHashMap<>();
            approved.put("artwork", approval.artworkName());
            approved.put("page", approval.page());
            approved.put("when", approval.when().toString());
            approved.put("by", approval.by().orElse(null));
            root.put("approved", approved);
        }
        root.put("after", later.toString());
        root.put("page", order.after().page().info().number());
        root.put("on", on(order));
        root.put("limitDe00", limit);
        root.put("changed", result.changed());
        root.put(
                "sizeBeforeMm",
                List.of(result.before().widthMm(), result.before().heightMm()));
        root.put("sizeAfterMm", List.of(result.after().widthMm(), result.after().heightMm()));
        root.put("changedCm2", result.changedCm2());
        root.put("changedShare", result.changedShare());
        root.put("largestDe00", result.largestDe00());
        root.put("arrangement", result.arrangement());
        root.put("inks", inks);
        root.put(
                "placesMm",
                result.places().stream()
                        .map(p -> List.of(p.x0(), p.y0(), p.x1(), p.y1()))
                        .toList());
        return root;
    }
}
