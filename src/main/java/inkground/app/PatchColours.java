package inkground.app;

import inkground.appearance.InkColour;
import inkground.appearance.InkColours;
import inkground.appearance.InkLibrary;
import inkground.appearance.LayerFit;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.Underbase;
import inkground.base.Refusal;
import inkground.colour.Characterisation;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.ModelFit;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Computes the colour of single patches: named inks at given tints on a substrate. Not thread-safe. */
public final class PatchColours {
    private static final List<Ink> PROCESS = List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK);
    private static final String LETTERS = "CMYK";

    private final Substrate on;
    private final PrintCondition condition;
    private final Characterisation data;
    private final InkLibrary library;
    private final PrintProcess process;
    private final Underbase underbase;
    private final Map<Integer, Expected> expected = new HashMap<>();

    /**
     * @param on what is printed on
     * @param condition of process inks: a bundled name, or a file
     * @param library the user's inks
     * @param process that prints; null for none in particular
     * @param underbase white under the colours; null for none
     * @throws Refusal if the condition cannot be used
     */
    public PatchColours(Substrate on, String condition, InkLibrary library, PrintProcess process, Underbase underbase)
            throws Refusal {
        this.on = on;
        this.condition = PrintConditions.find(condition);
        this.data = PrintConditions.findData(condition);
        this.library = library;
        this.process = process;
        this.underbase = underbase;
    }

    /**
     * One patch.
     *
     * @param tints 0 to 1, by ink name, process inks by their full names
     * @param lab absolute, D50
     * @param argb nearest colour of an sRGB display, 0xffRRGGBB
     * @param displayShows whether an sRGB display can show it
     * @param inks the inks, first printed first, with the source of each colour
     * @param error how far the print may be off
     */
    public record Patch(
            Map<String, Double> tints, Lab lab, int argb, boolean displayShows, List<InkColour> inks, Expected error) {}

    /**
     * The error to expect of the model; that of the inks' and the substrate's own colours comes on top.
     *
     * @param meanDe00 mean ΔE00
     * @param p95De00 ΔE00 that 95 of 100 patches do not exceed
     * @param basis what was measured, for the user
     */
    public record Expected(double meanDe00, double p95De00, String basis) {}

    /** @return the name the program gives an ink: process inks are known by name in any case and by letter */
    public static String inkName(String word) {
        if (word.length() == 1 && LETTERS.contains(word)) {
            return PROCESS.get(LETTERS.indexOf(word)).name();
        }
        return PROCESS.stream()
                .map(Ink::name)
                .filter(name -> name.equalsIgnoreCase(word))
                .findFirst()
                .orElse(word);
    }

    /**
     * @param tints 0 to 1, by ink name as {@link #inkName} gives it; at most {@link InkSet#MAX_INKS}
     * @throws Refusal if the error cannot be estimated from the condition's data
     */
    public Patch of(Map<String, Double> tints) throws Refusal {
        LinkedHashMap<String, Double> ordered = new LinkedHashMap<>();
        PROCESS.stream().map(Ink::name).filter(tints::containsKey).forEach(n -> ordered.put(n, tints.get(n)));
        ordered.putAll(tints);
        InkSet inks = new InkSet(ordered.keySet().stream().map(Ink::named).toList());
        List<InkColour> colours = InkColours.of(inks, List.of(), condition, library);
        Stack stack = PrintedStack.of(Stack.of(on, colours, condition), process, underbase);
        int[] tints255 = ordered.values().stream()
                .mapToInt(t -> (int) Math.round(255 * t))
                .toArray();
        StackModel model = new StackModel(stack);
        double[] xyz = new double[3];
        model.toXyz(tints255, xyz);
        List<InkColour> printed =
                stack.printOrder().stream().map(stack.inks()::get).toList();
        return new Patch(
                ordered,
                Cie.xyzToLab(xyz[0], xyz[1], xyz[2]),
                Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2]),
                Srgb.shows(xyz[0], xyz[1], xyz[2]),
                printed,
                error(stack, tints255));
    }

    private Expected error(Stack stack, int[] tints) throws Refusal {
        List<InkColour> inks = stack.inks();
        int printed = 0;
        boolean process = on.kind() == Substrate.Kind.PAPER;
        for (int i = 0; i < tints.length; i++) {
            printed += tints[i] > 0 ? 1 : 0;
            process &= tints[i] == 0 || inks.get(i).ink().kind() == InkKind.PROCESS;
        }
        if (printed == 0) {
            return new Expected(0, 0, "no ink: the substrate's own colour, " + on.source());
        }
        int layers = process ? 0 : Math.min(PROCESS.size(), printed + (stack.underbase() == null ? 0 : 1));
        Expected known = expected.get(layers);
        if (known == null) {
            known = process ? ofProcess() : ofLayers(layers);
            expected.put(layers, known);
        }
        return known;
    }

    private Expected ofProcess() throws Refusal {
        ModelFit fit = ModelFit.of(data);
        if (fit.patches() == 0) {
            Characterisation tried = usual();
            ModelFit guess = ModelFit.withoutOverprints(tried);
            return new Expected(
                    guess.meanDe00(),
                    guess.p95De00(),
                    condition.name() + " has no patches to try the model on; without overprints it predicts the "
                            + guess.patches() + " patches of " + tried.name() + " so");
        }
        return new Expected(
                fit.meanDe00(),
                fit.p95De00(),
                "the model from primaries and ramps alone, on the " + fit.patches() + " other patches of "
                        + condition.name() + "; correction for this paper not included");
    }

    private static Characterisation usual() {
        return PrintConditions.bundledData(PrintConditions.BUNDLED.get(0));
    }

    private Expected ofLayers(int layers) {
        ModelFit own = LayerFit.of(data, condition, layers);
        boolean tried = own.patches() > 0;
        Characterisation from = tried ? data : usual();
        ModelFit fit = tried ? own : LayerFit.of(from, PrintConditions.bundled(from.name()), layers);
        return new Expected(
                fit.meanDe00(),
                fit.p95De00(),
                "the layer model, on the " + fit.patches() + " patches of "
                        + (layers == PROCESS.size() ? "four" : Integer.toString(layers)) + " of the inks of "
                        + from.name() + "; the inks' own colours and opacities not included");
    }
}
