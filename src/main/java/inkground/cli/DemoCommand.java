package inkground.cli;

import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.Proofs;
import inkground.appearance.Stack;
import inkground.appearance.Underbase;
import inkground.artwork.PageBox;
import inkground.base.Refusal;
import inkground.substrate.Library;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The main job on the demo artwork: in the viewer where there is a screen, as proofs where there is none. */
@Command(
        name = "demo",
        description = {
            "Show the demo artwork: with a screen, in the viewer; without one, write its proofs and say where."
        })
final class DemoCommand implements Callable<Integer> {
    private static final Path USUAL_FOLDER = Path.of("target", "demo-proofs");
    private static final String POSTER = "regatta-poster.pdf";
    private static final String SHIRT = "regatta-shirt.pdf";
    /** The shirt has its colour painted in; on a real garment it has to go. */
    private static final String PREVIEW_LAYER = "Shirt colour (preview)";

    private final Console console;

    @Option(names = "--proofs", description = "Write the proofs even where there is a screen.")
    private boolean proofs;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the proofs. Default: target/demo-proofs, where earlier ones are replaced.")
    private Path out;

    @Option(
            names = "--dpi",
            paramLabel = "D",
            defaultValue = "100",
            converter = Resolution.class,
            description = "Pixels per inch of the proofs. Default: ${DEFAULT-VALUE}.")
    private double dpi;

    @Option(names = "--replace", description = "Replace files that exist already in DIR.")
    private boolean replace;

    /** One proof to make. */
    private record Plan(String file, String substrate, List<String> layersOff) {}

    private static final List<Plan> PLANS = List.of(
            new Plan(POSTER, "coated-white", List.of()),
            new Plan(POSTER, "uncoated-ivory", List.of()),
            new Plan(SHIRT, "tee-navy", List.of(PREVIEW_LAYER)),
            new Plan(SHIRT, "tee-natural", List.of(PREVIEW_LAYER)),
            new Plan(SHIRT, "tee-bottle", List.of(PREVIEW_LAYER)),
            new Plan(SHIRT, "tee-heather-grey", List.of(PREVIEW_LAYER)));

    DemoCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        Path demo = folder();
        if (!proofs && out == null && Screen.show(Optional.of(demo.resolve(SHIRT)), console)) {
            return ExitCode.FINE;
        }
        Path target = out == null ? USUAL_FOLDER : out;
        try {
            Files.createDirectories(target);
        } catch (IOException e) {
            throw new Refusal("Cannot make the folder " + target + ". Name another with --out.", e);
        }
        Library library = Substrates.load();
        console.say("Proofs of the demo artwork, " + Console.decimal(dpi) + " dpi. " + Proofs.CAUTION);
        for (String file : List.of(POSTER, SHIRT)) {
            try (Job job = Job.open(demo.resolve(file), console.cancel(), console.progress())) {
                PageJob page = job.page(1, console.cancel(), console.progress());
                for (Plan plan : PLANS) {
                    if (plan.file().equals(file)) {
                        prove(page, plan, library, target);
                    }
                }
            }
        }
        return ExitCode.FINE;
    }

    private void prove(PageJob page, Plan plan, Library library, Path target) throws Refusal {
        Substrate substrate = library.byId(plan.substrate())
                .orElseThrow(() -> new Refusal("The substrate '" + plan.substrate()
                        + "' that the demo needs is not in the folder of substrates. Put its file back."));
        Stack stack = page.stackOn(substrate);
        String name = plan.file().replace(".pdf", "-on-" + plan.substrate() + ".png");
        Proofs.Result result = Proofs.write(
                new Proofs.Order(
                        page,
                        substrate.underbaseAdvised() ? stack.over(Underbase.full()) : stack,
                        PageBox.TRIM,
                        dpi,
                        true,
                        LayersOption.without(plan.layersOff(), page.displayList()),
                        target.resolve(name),
                        replace || out == null),
                console.cancel(),
                console.progress());
        console.say("  " + result.file() + "  " + substrate.name());
    }

    /** The demo artwork lies beside the program; when run from the sources, in the project's folder. */
    private static Path folder() throws Refusal {
        String home = System.getProperty("inkground.home");
        for (Path folder : home == null ? List.of(Path.of("demo")) : List.of(Path.of(home, "demo"), Path.of("demo"))) {
            if (Files.isRegularFile(folder.resolve(SHIRT))) {
                return folder;
            }
        }
        throw new Refusal("The demo artwork is missing. Build the program again with: mvn -B -DskipTests package");
    }
}
