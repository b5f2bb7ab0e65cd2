package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.app.Proofs;
import inkground.appearance.Stack;
import inkground.artwork.PageBox;
import inkground.base.Refusal;
import inkground.substrate.Substrate;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes a picture of a page on a substrate. */
@Command(
        name = "proof",
        description = {"Write a PNG of a page as it will look on a paper or garment. " + Proofs.CAUTION})
final class ProofCommand implements Callable<Integer> {
    private static final double USUAL_DPI = 150;

    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private FileArgument file;

    @Mixin
    private ConditionOption condition;

    @Mixin
    private InkLibraryOption library;

    @Mixin
    private PageOptions options;

    @Mixin
    private AssignmentOptions assignment;

    @Mixin
    private SubstrateOption substrate;

    @Option(
            names = "--dpi",
            paramLabel = "D",
            converter = Resolution.class,
            description = "Pixels per inch. Default: 150, or 75 with --worn.")
    private Double dpi;

    @Option(names = "--out", paramLabel = "FILE.png", required = true, description = "Picture to write.")
    private Path out;

    @Mixin
    private LayersOption layers;

    @Mixin
    private WornOptions worn;

    @Mixin
    private ProcessOption process;

    @Mixin
    private UnderbaseOptions underbase;

    @Mixin
    private ScreenOption screen;

    ProofCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        Substrate on = substrate.substrate();
        Arrangement arrangement = assignment.arrangement();
        worn.check(on, arrangement.placement(), spec);
        if (worn.chosen() && screen.chosen()) {
            throw new ParameterException(spec.commandLine(), "--screen is for flat proofs; leave it or --worn out");
        }
        try (Job job = file.open(condition.choices(library.file(), arrangement), console)) {
            PageJob page = job.page(options.page(), console.cancel(), console.progress());
            Stack stack = PrintedStack.of(page.stackOn(on), arrangement, process.process(), underbase.underbase());
            if (worn.chosen()) {
                worn.write(page, stack, dpi, layers.on(page.displayList()), out, options.replace(), console);
            } else {
                flat(page, stack);
            }
            stack.inks().forEach(c -> console.say("colour of " + c.ink().name() + ": " + c.source()));
            page.notes().forEach(note -> console.say("note: " + note));
            console.say(Proofs.CAUTION);
        }
        return ExitCode.FINE;
    }

    private void flat(PageJob page, Stack stack) throws Refusal {
        Proofs.Result result = Proofs.write(
                new Proofs.Order(
                        page,
                        stack,
                        options.box(PageBox.TRIM),
                        dpi == null ? USUAL_DPI : dpi,
                        true,
                        layers.on(page.displayList()),
                        out,
                        options.replace(),
                        screen.screen()),
                console.cancel(),
                console.progress());
        console.say(result.file() + ": " + result.widthPx() + " x " + result.heightPx() + " px, on "
                + stack.substrate().name() + ".");
    }
}
