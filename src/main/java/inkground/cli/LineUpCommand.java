package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.Job;
import inkground.app.LineUp;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.app.Proofs;
import inkground.appearance.Stack;
import inkground.base.Refusal;
import inkground.proof.ContactSheet;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes a contact sheet of a page on several substrates. */
@Command(
        name = "lineup",
        description = {
            "Write one PNG that shows a page on several papers or garments side by side, and tell for each how much of the"
                    + " artwork's edges loses its contrast there. " + Proofs.CAUTION
        })
final class LineUpCommand implements Callable<Integer> {
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
    private AssignmentOptions assignment;

    @ArgGroup(multiplicity = "1")
    private Which which;

    /** Named ones or all garments. */
    static final class Which {
        @Option(
                names = "--on",
                paramLabel = "SUBSTRATE",
                split = ",",
                description = "Ids of papers or garments, 2 to " + ContactSheet.MOST
                        + ", between commas; 'inkground substrates' lists them.")
        private List<String> ids;

        @Option(names = "--garments", description = "All garments, up to " + ContactSheet.MOST + ".")
        private boolean garments;
    }

    @Option(names = "--by-vanish", description = "Those that keep most edges first. Without it: in the order given.")
    private boolean byVanish;

    @Mixin
    private PageOption page;

    @Mixin
    private LayersOption layers;

    @Option(names = "--underbase", description = "Lay white ink under every coloured ink, on garments.")
    private boolean underbase;

    @Option(
            names = "--size",
            paramLabel = "PX",
            defaultValue = "" + LineUp.DEFAULT_PICTURE_PX,
            description = "Pixels on the longer side of each picture, " + LineUp.MIN_PICTURE_PX + " to "
                    + LineUp.MAX_PICTURE_PX + ". Default: ${DEFAULT-VALUE}.")
    private int size;

    @Option(names = "--out", paramLabel = "SHEET.png", required = true, description = "Picture to write.")
    private Path out;

    @Option(names = "--replace", description = "Replace a file that exists already.")
    private boolean replace;

    LineUpCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (size < LineUp.MIN_PICTURE_PX || size > LineUp.MAX_PICTURE_PX) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--size is " + LineUp.MIN_PICTURE_PX + " to " + LineUp.MAX_PICTURE_PX + " pixels");
        }
        List<Substrate> substrates = substrates();
        Arrangement kept = assignment.arrangement();
        Arrangement arrangement = underbase ? kept.over(Optional.of(Arrangement.WhiteBase.FULL)) : kept;
        try (Job job = file.open(condition.choices(library.file(), arrangement), console)) {
            PageJob one = job.page(page.page(), console.cancel(), console.progress());
            Set<Integer> layersOn = layers.on(one.displayList());
            List<Stack> stacks = substrates.stream()
                    .map(on -> PrintedStack.arranged(one.stackOn(on), arrangement))
                    .toList();
            List<LineUp.Place> places =
                    LineUp.score(one, stacks, true, layersOn, byVanish, console.cancel(), console.progress());
            String name = file.path().getFileName() + (job.pages().size() > 1 ? ", page " + page.page() : "");
            Proofs.Result result = LineUp.write(
                    new LineUp.Order(one, name, places, byVanish, true, layersOn, size, out, replace),
                    console.cancel(),
                    console.progress());
            console.say(result.file() + ": " + result.widthPx() + " x " + result.heightPx() + " px.");
            Table table = new Table("substrate", "id", "edges that vanish");
            places.forEach(place -> table.row(
                    place.substrate().name(),
                    place.substrate().id(),
                    String.format(Locale.ROOT, "%.1f %%", 100 * place.score().score())));
            table.lines().forEach(console::say);
            one.notes().forEach(note -> console.say("note: " + note));
            console.say(Proofs.CAUTION);
        }
        return ExitCode.FINE;
    }

    private List<Substrate> substrates() throws Refusal {
        List<Substrate> found = new ArrayList<>();
        if (which.garments) {
            found.addAll(Substrates.load().ofKind(Substrate.Kind.GARMENT).stream()
                    .limit(ContactSheet.MOST)
                    .toList());
        } else {
            for (String id : which.ids) {
                found.add(SubstrateChoice.of(id.strip(), spec));
            }
        }
        if (found.size() < 2 || found.size() > ContactSheet.MOST) {
            throw new ParameterException(
                    spec.commandLine(), "a line-up has 2 to " + ContactSheet.MOST + " substrates, not " + found.size());
        }
        return found;
    }
}
