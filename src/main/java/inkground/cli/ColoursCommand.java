package inkground.cli;

import inkground.app.AssignmentFile;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.Proposal;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.plate.PictureColours;
import inkground.substrate.Substrate;
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
import picocli.CommandLine.Spec;

/** Lists the colours of a page. */
@Command(
        name = "colours",
        description = {
            "List every flat colour that a page of FILE paints: how many objects, and the area where it is seen;"
                    + " near-duplicates, leftovers, and what may be the garment's colour painted in."
        })
final class ColoursCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private FileArgument file;

    @Mixin
    private PageOption page;

    @Option(
            names = "--on",
            paramLabel = "SUBSTRATE",
            description = "Paper or garment that the artwork is for: colours close to its own are pointed out.")
    private String substrate;

    @Option(
            names = "--near",
            paramLabel = "dE",
            defaultValue = "3",
            description =
                    "Colour difference (CIEDE2000) up to which colours are near-duplicates. Default: ${DEFAULT-VALUE}.")
    private double near;

    @Option(
            names = "--propose",
            paramLabel = "FILE.json",
            description =
                    "Also write a colour assignment that prints every flat colour as an ink of its own: near-duplicates"
                            + " as one, white as the substrate of --on has it, a painted-in ground bare. Look it over before use.")
    private Path proposal;

    @Option(names = "--replace", description = "Replace a file that exists already.")
    private boolean replace;

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    ColoursCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (!(near >= 0 && near <= 50)) {
            throw new ParameterException(spec.commandLine(), "--near is a colour difference from 0 to 50");
        }
        Substrate on = substrate == null ? null : SubstrateChoice.of(substrate, spec);
        try (Job job = file.open(Job.Choices.NONE, console)) {
            PageJob one = job.page(page.page(), console.cancel(), console.progress());
            ColourInventory inventory = ColourInventory.of(one, console.cancel(), console.progress());
            List<Grounds.Ground> grounds =
                    Grounds.survey(one, inventory, on == null ? null : on.lab(), console.cancel(), console.progress());
            Proposal proposed = proposal == null ? null : Proposal.of(one, inventory, grounds, on, near);
            if (proposed != null) {
                AssignmentFile.save(proposed.assignment(), proposal, replace);
            }
            if (json) {
                console.json(asJson(inventory, grounds));
            } else {
                asWords(inventory, grounds);
                if (proposed != null) {
                    proposed.lines().forEach(line -> console.say("proposed: " + line));
                    console.say(
                            proposal + ": " + proposed.assignment().rules().size() + " rules; use them with --assign.");
                }
            }
        }
        return ExitCode.FINE;
    }

    private void asWords(ColourInventory inventory, List<Grounds.Ground> grounds) {
        Table table = new Table("colour", "seen as", "objects", "seen cm2", "");
        for (ColourUse use : inventory.colours()) {
            table.row(
                    use.words(),
                    use.hex(),
                    Integer.toString(use.objects()),
                    String.format(Locale.ROOT, "%.2f", use.visibleCm2()),
                    use.hidden() ? "hidden" : use.tiny() ? "tiny" : "");
        }
        table.lines().forEach(console::say);
        if (inventory.gradients() > 0) {
            console.say("besides: " + inventory.gradients() + " gradients");
        }
        for (ColourInventory.Picture image : inventory.images()) {
            console.say("an image: " + words(image.colours()));
        }
        for (List<ColourUse> group : inventory.nearDuplicates(near)) {
            console.say("near-duplicates: "
                    + String.join(", ", group.stream().map(ColourUse::words).toList()));
        }
        grounds.forEach(ground -> console.say("painted-in ground? " + ground.words()));
    }

    private Map<String, Object> asJson(ColourInventory inventory, List<Grounds.Ground> grounds) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("file", file.path().toString());
        root.put("page", page.page());
        root.put(
                "colours",
                inventory.colours().stream().map(ColoursCommand::asJson).toList());
        root.put("gradients", inventory.gradients());
        root.put(
                "images",
                inventory.images().stream()
                        .map(image -> asJson(image.colours()))
                        .toList());
        root.put(
                "nearDuplicates",
                inventory.nearDuplicates(near).stream()
                        .map(group -> group.stream().map(ColourUse::words).toList())
                        .toList());
        root.put("grounds", grounds.stream().map(ColoursCommand::asJson).toList());
        return root;
    }

    private static Map<String, Object> asJson(ColourUse use) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("colour", use.words());
        out.put("seenAs", use.hex());
        out.put("lab", List.of(use.lab().L(), use.lab().a(), use.lab().b()));
        out.put("objects", use.objects());
        out.put("visibleCm2", use.visibleCm2());
        out.put("hidden", use.hidden());
        out.put("tiny", use.tiny());
        return out;
    }

    private static String words(PictureColours image) {
        StringBuilder out = new StringBuilder();
        for (PictureColours.Flat flat : image.flats()) {
            out.append(String.format(Locale.ROOT, "%s %.1f %%, ", hex(flat.lab()), 100 * flat.share()));
        }
        return out.append(String.format(
                        Locale.ROOT,
                        "edges between these %.1f %%, tone %.1f %%",
                        100 * image.mixedShare(),
                        100 * image.toneShare()))
                .toString();
    }

    private static String hex(Lab lab) {
        return String.format(Locale.ROOT, "#%06X", Srgb.labToArgb(lab) & 0xffffff);
    }

    private static Map<String, Object> asJson(PictureColours image) {
        List<Map<String, Object>> flats = new ArrayList<>();
        for (PictureColours.Flat flat : image.flats()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("seenAs", hex(flat.lab()));
            one.put("lab", List.of(flat.lab().L(), flat.lab().a(), flat.lab().b()));
            one.put("share", flat.share());
            flats.add(one);
        }
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("flats", flats);
        out.put("mixedShare", image.mixedShare());
        out.put("toneShare", image.toneShare());
        return out;
    }

    private static Map<String, Object> asJson(Grounds.Ground ground) {
        Map<String, Object> out = new LinkedHashMap<>();
        Grounds.Candidate c = ground.candidate();
        out.put("colour", c.use().words());
        out.put("seenAs", c.use().hex());
        out.put(
                "reasons",
                c.reasons().stream().sorted().map(Grounds.Reason::words).toList());
        out.put("garmentDe00", Double.isNaN(c.garmentDe00()) ? null : c.garmentDe00());
        out.put("objects", ground.deletion().objects());
        Map<String, Object> uncovered = new LinkedHashMap<>();
        ground.deletion().inks().forEach(u -> uncovered.put(u.ink().name(), u.cm2()));
        out.put("deletingUncoversCm2", uncovered);
        return out;
    }
}
