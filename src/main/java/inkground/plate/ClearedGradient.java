package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.Paint;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An axial or radial shading out of which the bare colours were taken: where it runs from one to another colour, the other is
 * kept by its share.
 */
public final class ClearedGradient {
    private static final int HALVINGS = 24;

    private final Ramp ramp;
    private final InkMapping mapping;
    private final SoftEdges edges;
    private final boolean backgroundKept;
    private final List<Piece> pieces = new ArrayList<>();

    /**
     * Part of a shading.
     *
     * @param from parameter of the shading's function where it begins
     * @param to where it ends
     * @param whole whether all of it is kept
     */
    public record Piece(double from, double to, boolean whole) {}

    private ClearedGradient(Paint.Shading shading, InkMapping mapping) {
        this.ramp = new Ramp(shading);
        this.mapping = mapping;
        this.edges = mapping.softEdges(shading);
        this.backgroundKept = shading.background() == null || keptOf(shading.background()) == 1;
        double begun = 0;
        for (int i = 1; i <= Ramp.STEPS; i++) {
            double here = (double) i / Ramp.STEPS;
            double before = (i - 1.0) / Ramp.STEPS;
            if (whole(before) != whole(here)) {
                double border = border(before, here);
                pieces.add(new Piece(ramp.parameter(begun), ramp.parameter(border), whole(before)));
                begun = border;
            }
        }
        pieces.add(new Piece(ramp.parameter(begun), ramp.parameter(1), whole(1)));
    }

    /**
     * @param shading axial or radial
     * @param mapping says what is bare
     * @return the shading; nothing when it has no bare colour
     */
    public static Optional<ClearedGradient> of(Paint.Shading shading, InkMapping mapping) {
        if (!mapping.anyBare() || !ShadingSource.paints(shading.geometry())) {
            return Optional.empty();
        }
        ClearedGradient cleared = new ClearedGradient(shading, mapping);
        boolean all = cleared.backgroundKept && cleared.pieces.stream().allMatch(Piece::whole);
        return all ? Optional.empty() : Optional.of(cleared);
    }

    private double border(double a, double b) {
        double from = a;
        double to = b;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (from + to) / 2;
            if (whole(middle) == whole(a)) {
                from = middle;
            } else {
                to = middle;
            }
        }
        return (from + to) / 2;
    }

    private boolean whole(double place) {
        return keptOf(ramp.at(place)) == 1;
    }

    private double keptOf(Colour colour) {
        float[] out = new float[InkMapping.base(colour.space()).components()];
        return mapping.kept(colour.space(), colour.components(), edges, out);
    }

    /** @return its parts, one after the other, each wholly kept or wholly or partly gone */
    public List<Piece> pieces() {
        return List.copyOf(pieces);
    }

    /** @return whether the background is kept, or there is none */
    public boolean backgroundKept() {
        return backgroundKept;
    }

    /** @return whether nothing at all is kept */
    public boolean empty() {
        for (int i = 0; i <= Ramp.STEPS; i++) {
            if (keptOf(ramp.at((double) i / Ramp.STEPS)) > 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * @param parameter of the shading's function
     * @param colour receives the components of what is kept, in the shading's space
     * @return share that is kept, 0 to 1
     */
    public double at(double parameter, float[] colour) {
        double length = ramp.parameter(1) - ramp.parameter(0);
        Colour stated = ramp.at(length == 0 ? 0 : (parameter - ramp.parameter(0)) / length);
        return mapping.kept(stated.space(), stated.components(), edges, colour);
    }
}
