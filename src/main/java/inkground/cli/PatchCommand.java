package inkground.cli;

import inkground.app.InkLibraries;
import inkground.app.Job;
import inkground.app.PatchColours;
import inkground.app.PatchTable;
import inkground.app.Proofs;
import inkground.appearance.InkColour;
import inkground.appearance.InkLibrary;
import inkground.base.Refusal;
import inkground.ink.InkSet;
import inkground.substrate.Substrate;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
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

/** Tells the colour of inks on a substrate. */
@Command(
        name = "patch",
        description = {
            "Compute the colour of inks on a paper or garment, with the source of each ink's colour and the error to expect."
                    + " Without --ink, patches are read from standard input: a line of ink names separated by commas, then"
                    + " lines of per cents; or lines of NAME=PERCENT,NAME=PERCENT. " + Proofs.CAUTION
        })
final class PatchCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SubstrateOption substrate;

    @Option(
            names = "--condition",
            paramLabel = "FILE|NAME",
            defaultValue = Job.DEFAULT_CONDITION,
            description = "How process inks print: FOGRA39L, TR006, a characterisation file or a CMYK profile."
                    + " Default: ${DEFAULT-VALUE}.")
    private String condition;

    @Option(
            names = "--ink",
            paramLabel = "NAME=PERCENT",
            description = "An ink and its tint. May be repeated. C, M, Y, K stand for the process inks.")
    private List<String> words = List.of();

    @Mixin
    private InkLibraryOption library;

    @Mixin
    private ProcessOption process;

    @Mixin
    private UnderbaseOptions underbase;

    @Option(names = "--json", description = "Write JSON: one object, or a list for standard input.")
    private boolean json;

    PatchCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        Substrate on = substrate.substrate();
        Map<String, Double> named = named();
        InkLibrary inks = library.file() == null ? InkLibrary.EMPTY : InkLibraries.read(library.file());
        PatchColours colours = new PatchColours(on, condition, inks, process.process(), underbase.underbase());
        if (!named.isEmpty()) {
            PatchColours.Patch patch = colours.of(named);
            if (json) {
                console.json(asJson(on, patch));
            } else {
                asWords(on, patch);
            }
            return ExitCode.FINE;
        }
        List<PatchColours.Patch> patches = new ArrayList<>();
        for (Map<String, Double> tints : PatchTable.read(new InputStreamReader(console.in(), StandardCharsets.UTF_8))) {
            console.cancel().check();
            patches.add(colours.of(tints));
        }
        if (json) {
            console.json(patches.stream().map(p -> asJson(on, p)).toList());
        } else {
            asCsv(patches);
        }
        return ExitCode.FINE;
    }

    private Map<String, Double> named() {
        Map<String, Double> tints = new LinkedHashMap<>();
        for (String word : words) {
            try {
                Map.Entry<String, Double> pair = PatchTable.pair(word);
                if (tints.put(pair.getKey(), pair.getValue()) != null) {
                    throw new ParameterException(spec.commandLine(), "--ink: " + pair.getKey() + " is given twice");
                }
            } catch (Refusal e) {
                throw new ParameterException(spec.commandLine(), "--ink: " + e.getMessage());
            }
        }
        if (tints.size() > InkSet.MAX_INKS) {
            throw new ParameterException(spec.commandLine(), "--ink: more than " + InkSet.MAX_INKS + " inks");
        }
        return tints;
    }

    private void asWords(Substrate on, PatchColours.Patch p) {
        console.say(String.format(
                Locale.ROOT,
                "on %s: Lab %.1f %.1f %.1f (C* %.1f, h %.0f deg), sRGB %s%s",
                on.name(),
                p.lab().L(),
                p.lab().a(),
                p.lab().b(),
                p.lab().chroma(),
                p.lab().hueDegrees(),
                hex(p),
                p.displayShows() ? "" : " (nearest; an sRGB display cannot show it)"));
        Table table = new Table("ink", "tint", "opacity", "colour from");
        for (InkColour ink : p.inks()) {
            table.row(
                    ink.ink().name(),
                    String.format(
                            Locale.ROOT,
                            "%.1f %%",
                            100 * p.tints().get(ink.ink().name())),
                    String.format(Locale.ROOT, "%.2f", ink.opacity()),
                    ink.source());
        }
        table.lines().forEach(console::say);
        console.say(String.format(
                Locale.ROOT,
                "expected error: dE00 %.2f on average, 95 of 100 within %.2f (%s)",
                p.error().meanDe00(),
                p.error().p95De00(),
                p.error().basis()));
        console.say(Proofs.CAUTION);
    }

    private void asCsv(List<PatchColours.Patch> patches) {
        console.say("L*,a*,b*,sRGB,expected mean dE00,expected p95 dE00");
        for (PatchColours.Patch p : patches) {
            console.say(String.format(
                    Locale.ROOT,
                    "%.2f,%.2f,%.2f,%s,%.2f,%.2f",
                    p.lab().L(),
                    p.lab().a(),
                    p.lab().b(),
                    hex(p),
                    p.error().meanDe00(),
                    p.error().p95De00()));
        }
    }

    private static String hex(PatchColours.Patch p) {
        return String.format("#%06X", p.argb() & 0xffffff);
    }

    private Map<String, Object> asJson(Substrate on, PatchColours.Patch p) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("on", on.id());
        all.put("condition", condition);
        all.put("lab", List.of(p.lab().L(), p.lab().a(), p.lab().b()));
        all.put("chroma", p.lab().chroma());
        all.put("hueDegrees", p.lab().hueDegrees());
        all.put("srgb", hex(p));
        all.put("displayShows", p.displayShows());
        List<Object> inks = new ArrayList<>();
        for (InkColour ink : p.inks()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", ink.ink().name());
            one.put("kind", ink.ink().kind().word());
            one.put("percent", 100 * p.tints().get(ink.ink().name()));
            one.put(
                    "solid",
                    List.of(ink.solid().L(), ink.solid().a(), ink.solid().b()));
            one.put("opacity", ink.opacity());
            one.put("source", ink.source());
            inks.add(one);
        }
        all.put("inks", inks);
        Map<String, Object> error = new LinkedHashMap<>();
        error.put("meanDe00", p.error().meanDe00());
        error.put("p95De00", p.error().p95De00());
        error.put("basis", p.error().basis());
        all.put("expectedError", error);
        all.put("note", Proofs.CAUTION);
        return all;
    }
}
