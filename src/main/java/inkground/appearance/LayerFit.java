package inkground.appearance;

import inkground.colour.Characterisation;
import inkground.colour.Characterisation.Patch;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.ModelFit;
import inkground.colour.PrintCondition;
import inkground.ink.Ink;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How far the layer model, which knows of each ink only its solid, is from measured prints: tried on the process inks' own data,
 * patches of one ink, of two, three or four over one another. What it misses there is the best guess at what it misses elsewhere.
 */
public final class LayerFit {
    private static final List<Ink> PROCESS = List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK);

    private LayerFit() {}

    /**
     * @param data of cyan, magenta, yellow and black
     * @param condition made of the same data
     * @param inks number of inks in one place, 1 or more; more than four counts as four
     * @return the fit over all patches of so many inks
     */
    public static ModelFit of(Characterisation data, PrintCondition condition, int inks) {
        StackModel model = new StackModel(stack(data, condition));
        int wanted = Math.min(PROCESS.size(), inks);
        double[] xyz = new double[3];
        return ModelFit.of(data.patches().stream()
                .filter(p -> Arrays.stream(p.tints()).filter(t -> t > 0).count() == wanted)
                .mapToDouble(p -> {
                    model.toXyz(tints(p), xyz);
                    return Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), p.lab());
                })
                .toArray());
    }

    private static int[] tints(Patch patch) {
        return Arrays.stream(patch.tints())
                .mapToInt(t -> (int) Math.round(255 * t))
                .toArray();
    }

    // As cloth of the paper's colour, since on a garment all inks are layers.
    private static Stack stack(Characterisation data, PrintCondition condition) {
        Lab paper = data.find(0, 0, 0, 0);
        Substrate cloth = new Substrate(
                "fit",
                data.name(),
                Substrate.Kind.GARMENT,
                paper,
                data.source(),
                Texture.NONE,
                List.of(),
                0,
                false,
                0,
                List.of());
        List<InkColour> inks = new ArrayList<>();
        double[] white = Cie.labToXyz(paper);
        for (int i = 0; i < PROCESS.size(); i++) {
            double[] tints = new double[PROCESS.size()];
            tints[i] = 1;
            double[] xyz = Cie.labToXyz(data.find(tints));
            Lab solid = Cie.xyzToLab(
                    xyz[0] / white[0] * Cie.D50_X, xyz[1] / white[1] * Cie.D50_Y, xyz[2] / white[2] * Cie.D50_Z);
            inks.add(new InkColour(PROCESS.get(i), solid, InkColours.PROCESS_OPACITY, data.name()));
        }
        return Stack.of(cloth, inks, condition);
    }
}
