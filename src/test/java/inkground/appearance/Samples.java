package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** Small substrates, inks and planes, invented for the tests. */
final class Samples {
    static final PrintCondition FOGRA = PrintConditions.bundled("FOGRA39L");
    static final Substrate FOGRA_PAPER = substrate(Substrate.Kind.PAPER, new Lab(95, 0, -2));
    static final Substrate WHITE_SHIRT = substrate(Substrate.Kind.GARMENT, new Lab(100, 0, 0));
    static final Substrate NAVY_SHIRT = substrate(Substrate.Kind.GARMENT, new Lab(18, 2, -13));

    private Samples() {}

    static Substrate substrate(Substrate.Kind kind, Lab lab) {
        return substrate(kind, lab, Texture.NONE);
    }

    static Substrate substrate(Substrate.Kind kind, Lab lab, Texture texture) {
        return new Substrate("s", "S", kind, lab, "invented", texture, List.of(), 0, false, 0, List.of());
    }

    static InkColour spot(String name, Lab solid, double opacity) {
        return new InkColour(new Ink(name, InkKind.SPOT), solid, opacity, "invented");
    }

    static InkColour white(double opacity) {
        return new InkColour(new Ink("White", InkKind.WHITE), new Lab(94, -1, 0), opacity, "invented");
    }

    static List<InkColour> process() {
        return InkColours.of(new InkSet(List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK)), List.of(), FOGRA);
    }

    static Stack stack(Substrate substrate, InkColour... inks) {
        return Stack.of(substrate, List.of(inks), FOGRA);
    }

    /** Planes of 72 px an inch: one pixel a point; rasters of the inks, then mark, then inked. */
    static InkPlanes planes(List<InkColour> inks, int width, int height, byte[]... rasters) {
        return PlanesForTests.ofRasters(
                new InkSet(inks.stream().map(InkColour::ink).toList()),
                new PlateRequest(1, 0, 0, width, height, true, Set.of()),
                rasters);
    }

    /** How many pixels have each mark of a map, edges not shared out, and the largest value. */
    static MapFigures marked(ProofMap map, InkPlanes planes) throws Refusal {
        byte[] marks = new byte[planes.width() * planes.height()];
        double largest = map.mark(planes, marks, new Cancel());
        Double[] counts = new Double[map.legend().size()];
        Arrays.fill(counts, 0.0);
        for (byte mark : marks) {
            counts[mark]++;
        }
        return new MapFigures(List.of(counts), MapFigures.cm2PerPixel(planes.request()), largest);
    }

    static byte[] filled(int size, int value) {
        byte[] out = new byte[size];
        Arrays.fill(out, (byte) value);
        return out;
    }
}
