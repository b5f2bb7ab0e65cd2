package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourSpace;
import java.util.List;
import java.util.function.Function;

/**
 * The flat colours of one picture, or the stops of one gradient, as ends of its soft edges: what lies between an assigned one
 * and another is a mixture of both, linear in the components of its own space. Thread-safe.
 */
final class SoftEdges {
    /** Share of assigned ends below which a colour is taken as it is stated: noise of compression. */
    private static final double LEAST_SHARE = 0.02;

    private final ColourSpace space;
    private final List<End> ends;
    private final Unmixing unmixing;

    /**
     * One end.
     *
     * @param colour of {@link #space}
     * @param target how it is printed; null for as stated
     */
    record End(Colour colour, Target target) {}

    private SoftEdges(ColourSpace space, List<End> ends) {
        this.space = space;
        this.ends = ends;
        double[][] colours =
                ends.stream().map(end -> unit(end.colour().components())).toArray(double[][]::new);
        boolean[] sought = new boolean[colours.length];
        for (int i = 0; i < sought.length; i++) {
            sought[i] = ends.get(i).target() != null;
        }
        this.unmixing = new Unmixing(colours, sought);
    }

    /**
     * @param colours all of one space, which is no indexed one
     * @param targets how each is printed; null for as stated
     * @return the edges between them; null where there are none that matter
     */
    static SoftEdges between(List<Colour> colours, Function<Colour, Target> targets) {
        List<End> ends = colours.stream().map(c -> new End(c, targets.apply(c))).toList();
        boolean any = ends.size() > 1 && ends.stream().anyMatch(end -> end.target() != null);
        return any ? new SoftEdges(ends.get(0).colour().space(), ends) : null;
    }

    /** @return the mixture of {@link #end}s that a colour is; null for none, or one of other than assigned colours */
    Unmixing.Mixture of(float[] components) {
        Unmixing.Mixture mixture = unmixing.of(unit(components));
        if (mixture == null) {
            return null;
        }
        double assigned = 0;
        for (int i = 0; i < mixture.ends().length; i++) {
            assigned += end(mixture.ends()[i]).target() == null ? 0 : mixture.weights()[i];
        }
        return assigned < LEAST_SHARE ? null : mixture;
    }

    End end(int i) {
        return ends.get(i);
    }

    private double[] unit(float[] components) {
        double[] out = new double[components.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (components[i] - space.min(i)) / (space.max(i) - space.min(i));
        }
        return out;
    }
}
