package inkground.cli;

import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.Separations;
import inkground.artwork.PageBox;
import inkground.base.Refusal;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the ink planes of a page. */
@Command(
        name = "separate",
        description = {
            "Write one grey TIFF for each ink of a page (255 is no ink, 0 is solid), and separations.json,"
                    + " which lists them."
        })
final class SeparateCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private FileArgument file;

    @Mixin
    private ConditionOption condition;

    @Mixin
    private PageOptions options;

    @Mixin
    private AssignmentOptions assignment;

    @Option(
            names = "--dpi",
            paramLabel = "D",
            defaultValue = "300",
            converter = Resolution.class,
            description = "Pixels per inch. Default: ${DEFAULT-VALUE}.")
    private double dpi;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write to; made if missing.")
    private Path out;

    @Option(names = "--json", description = "Also write the list to standard output, as JSON.")
    private boolean json;

    SeparateCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        Separations.Result result;
        try (Job job = file.open(condition.choices(null, assignment.arrangement()), console)) {
            PageJob page = job.page(options.page(), console.cancel(), console.progress());
            result = Separations.write(
                    new Separations.Order(page, dpi, options.box(PageBox.MEDIA), out, options.replace()),
                    console.cancel(),
                    console.progress());
            if (!json) {
                say(result);
                page.notes().forEach(note -> console.say("note: " + note));
            }
        }
        if (json) {
            console.json(Separations.json(result));
        }
        return ExitCode.FINE;
    }

    private void say(Separations.Result result) {
        console.say(String.format(
                Locale.ROOT,
                "%d planes of %d x %d px in %s",
                result.planes().size(),
                result.widthPx(),
                result.heightPx(),
                out));
        Table table = new Table("ink", "file", "covered cm2", "mean tint");
        for (Separations.Plane plane : result.planes()) {
            table.row(
                    plane.use().ink().name(),
                    plane.file(),
                    String.format(Locale.ROOT, "%.1f", plane.use().coveredCm2()),
                    String.format(Locale.ROOT, "%.1f %%", 100 * plane.use().meanTint()));
        }
        table.lines().forEach(console::say);
    }
}
