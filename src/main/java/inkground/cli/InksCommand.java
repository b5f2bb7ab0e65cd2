package inkground.cli;

import inkground.app.InkReport;
import inkground.app.InkUse;
import inkground.app.Job;
import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists the inks of each page. */
@Command(
        name = "inks",
        description = {
            "List the inks that FILE prints with, page by page: the area each covers inside the trim,"
                    + " and its mean tint there (0 none, 1 solid)."
        })
final class InksCommand implements Callable<Integer> {
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

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    InksCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        List<InkReport> reports = new ArrayList<>();
        Job.Choices choices = condition.choices(null, assignment.assignment(), file.size());
        try (Job job = Job.open(file.path(), choices, console.cancel(), console.progress())) {
            int[] pages =
                    page == null ? IntStream.rangeClosed(1, job.pages().size()).toArray() : new int[] {page};
            for (int number : pages) {
                reports.add(InkReport.of(
                        job.page(number, console.cancel(), console.progress()), console.cancel(), console.progress()));
            }
        }
        if (json) {
            console.json(asJson(reports));
        } else {
            reports.forEach(this::asWords);
        }
        return ExitCode.FINE;
    }

    private Map<String, Object> asJson(List<InkReport> reports) {
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
            one.put("notes", report.notes());
            pages.add(one);
        }
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("file", file.path().toString());
        all.put("pages", pages);
        return all;
    }

    private void asWords(InkReport report) {
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
        report.notes().forEach(note -> console.say("note: " + note));
    }
}
