package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.GamutReport;
import inkground.app.InkReport;
import inkground.app.InkUse;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.app.Proofs;
import inkground.appearance.GamutSurvey;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Lists the inks of each page. */
@Command(
        name = "inks",
        description = {
            "List the inks that FILE prints with, page by page: the area each covers inside the trim,"
                    + " and its mean tint there (0 none, 1 solid)."
        })
final class InksCommand implements Callable<Integer> {
    private static final int WORST_TOLD = 5;

    private final Console console;

    @Mixin
    private FileArgument file;

    @Mixin
    private ConditionOption condition;

    @Mixin
    private AssignmentOptions assignment;

    @Option(
            names = "--page",
            paramLabel = "N",
            converter = PageNumber.class,
            description = "Only this page, from 1. Without it: all pages.")
    private Integer page;

    @Option(
            names = "--on",
            paramLabel = "SUBSTRATE",
            description =
                    "Also tell what these inks cannot reach on this paper or garment, and what a screen cannot show of it:"
                            + " an id ('inkground substrates' lists them) or a file.")
    private String substrate;

    @Option(
            names = "--limit",
            paramLabel = "DE00",
            description = "With --on: colour difference that is let pass, 0 to 100. Default: 3.")
    private Double limit;

    @Spec
    private CommandSpec spec;

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    InksCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (limit != null && (substrate == null || !(limit >= 0 && limit <= 100))) {
            throw new ParameterException(
                    spec.commandLine(), "--limit is a colour difference from 0 to 100, and goes with --on");
        }
        Substrate on = substrate == null ? null : SubstrateChoice.of(substrate, spec);
        List<InkReport> reports = new ArrayList<>();
        List<GamutReport> gamuts = new ArrayList<>();
        Arrangement arrangement = assignment.arrangement();
        try (Job job = file.open(condition.choices(null, arrangement), console)) {
            int[] pages =
                    page == null ? IntStream.rangeClosed(1, job.pages().size()).toArray() : new int[] {page};
            for (int number : pages) {
                PageJob read = job.page(number, console.cancel(), console.progress());
                reports.add(InkReport.of(read, console.cancel(), console.progress()));
                if (on != null) {
                    double let = limit == null ? GamutReport.USUAL_DE00 : limit;
                    gamuts.add(GamutReport.of(
                            read,
                            PrintedStack.arranged(read.stackOn(on), arrangement),
                            let,
                            console.cancel(),
                            console.progress()));
                }
            }
        }
        if (json) {
            console.json(asJson(reports, gamuts));
        } else {
            for (int i = 0; i < reports.size(); i++) {
                asWords(reports.get(i), gamuts.isEmpty() ? null : gamuts.get(i));
            }
        }
        return ExitCode.FINE;
    }

    private Map<String, Object> asJson(List<InkReport> reports, List<GamutReport> gamuts) {
        List<Object> pages = new ArrayList<>();
        for (InkReport report : reports) {
            List<Object> inks = new ArrayList<>();
            for (InkUse use : report.inks()) {
                Map<String, Object> ink = new LinkedHashMap<>();
                ink.put("name", use.ink().name());
                ink.put("kind", use.ink().kind().word());
                ink.put("coveredCm2", use.coveredCm2());
                ink.put("meanTint", use.meanTint());
                inks.add(ink);
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("page", report.page());
            one.put("trimWidthMm", report.trimWidthMm());
            one.put("trimHeightMm", report.trimHeightMm());
            one.put("inks", inks);
            if (!gamuts.isEmpty()) {
                one.put("gamut", asJson(gamuts.get(pages.size())));
            }
            one.put("notes", report.notes());
            pages.add(one);
        }
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("file", file.path().toString());
        all.put("pages", pages);
        return all;
    }

    private static Map<String, Object> asJson(GamutReport report) {
        GamutSurvey.Found found = report.found();
        List<Object> worst = new ArrayList<>();
        found.worst().stream().limit(WORST_TOLD).forEach(colour -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put(
                    "askedLab",
                    List.of(
                            colour.asked().L(),
                            colour.asked().a(),
                            colour.asked().b()));
            one.put(
                    "nearestLab",
                    List.of(
                            colour.nearest().L(),
                            colour.nearest().a(),
                            colour.nearest().b()));
            one.put("de00", colour.de00());
            one.put("areaCm2", report.cm2(colour.pixels()));
            worst.add(one);
        });
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("on", report.on().id());
        out.put("limitDe00", report.limitDe00());
        out.put("beyondReachCm2", report.cm2(found.beyondReach()));
        out.put("beyondReachShare", report.share(found.beyondReach()));
        out.put("worst", worst);
        out.put("beyondScreenCm2", report.cm2(found.beyondScreen()));
        out.put("beyondScreenShare", report.share(found.beyondScreen()));
        out.put("note", Proofs.CAUTION);
        return out;
    }

    private void asWords(GamutReport report) {
        GamutSurvey.Found found = report.found();
        console.say(String.format(
                Locale.ROOT,
                "on %s these inks cannot reach %.1f cm2 (%.1f %%) within %.1f dE00; %s",
                report.on().name(),
                report.cm2(found.beyondReach()),
                100 * report.share(found.beyondReach()),
                report.limitDe00(),
                "asked for on the print condition's own paper"));
        if (!found.worst().isEmpty()) {
            Table table = new Table("asked Lab", "nearest Lab", "dE00", "cm2");
            found.worst().stream()
                    .limit(WORST_TOLD)
                    .forEach(colour -> table.row(
                            lab(colour.asked()),
                            lab(colour.nearest()),
                            String.format(Locale.ROOT, "%.1f", colour.de00()),
                            String.format(Locale.ROOT, "%.1f", report.cm2(colour.pixels()))));
            table.lines().forEach(console::say);
        }
        console.say(String.format(
                Locale.ROOT,
                "of the print a screen (sRGB) cannot show %.1f cm2 (%.1f %%)",
                report.cm2(found.beyondScreen()),
                100 * report.share(found.beyondScreen())));
        console.say("note: " + Proofs.CAUTION);
    }

    private static String lab(Lab lab) {
        return String.format(Locale.ROOT, "%.0f %.0f %.0f", lab.L(), lab.a(), lab.b());
    }

    private void asWords(InkReport report, GamutReport gamut) {
        console.say(String.format(
                Locale.ROOT,
                "page %d, trim %.1f x %.1f mm",
                report.page(),
                report.trimWidthMm(),
                report.trimHeightMm()));
        Table table = new Table("ink", "kind", "covered cm2", "mean tint");
        for (InkUse use : report.inks()) {
            table.row(
                    use.ink().name(),
                    use.ink().kind().word(),
                    String.format(Locale.ROOT, "%.1f", use.coveredCm2()),
                    String.format(Locale.ROOT, "%.1f %%", 100 * use.meanTint()));
        }
        table.lines().forEach(console::say);
        if (gamut != null) {
            asWords(gamut);
        }
        report.notes().forEach(note -> console.say("note: " + note));
    }
}
