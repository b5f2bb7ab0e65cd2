package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.base.Cancel;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Colours inside a group that blends in RGB or grey (ISO 32000-2 §11.6.6, colour space of a group). The planes keep their
 * places: in an RGB group planes 0 to 2 hold the complements of red, green and blue and plane 3 nothing; in a grey group
 * plane 3 holds the complement of grey. Spot planes are as everywhere. A {@link GroupEdge} brings the first four planes back.
 *
 * <p>Such a group has no process inks to name: a Separation or DeviceN that names one is painted by its alternate (§11.7.3).
 */
final class GroupMapping implements ColourMapping {
    /** How the group blends. */
    enum Kind {
        RGB,
        GREY
    }

    private final InkMapping inks;
    private final Kind kind;
    private final LuminosityMapping luminosity;
    private final ProcessGrid edge;
    private final Map<ColourSpace, ProcessGrid> grids = new ConcurrentHashMap<>();

    /** @param space the group's, grey or RGB, as the group wants its colours brought to the print: §11.7.5.3 */
    GroupMapping(InkMapping inks, ColourSpace space) {
        this.inks = inks;
        this.kind = kindOf(space);
        this.edge = inks.process().fromRgb(space.rendering());
        this.luminosity = new LuminosityMapping(inks.reader());
    }

    /** @return how a group of this space blends, or null for in process tints */
    static Kind kindOf(ColourSpace space) {
        if (space.components() == 4) {
            return null;
        }
        return space.components() == 1 ? Kind.GREY : Kind.RGB;
    }

    Kind kind() {
        return kind;
    }

    /** @return the inks that all is brought to in the end */
    InkMapping inks() {
        return inks;
    }

    @Override
    public int tintPlanes() {
        return inks.tintPlanes();
    }

    @Override
    public long touched(ColourSpace space, boolean overprint) {
        return inks.touched(inks.namesProcess(space) ? Alternates.of(space) : space, overprint);
    }

    /** Overprint mode 1 is for groups of DeviceCMYK: §11.7.4.3. */
    @Override
    public boolean zeroRule(ColourSpace space) {
        return false;
    }

    @Override
    public boolean paintsNothing(ColourSpace space) {
        return inks.paintsNothing(space);
    }

    @Override
    public int[] direct(ColourSpace space) {
        int[] planes = inks.direct(space);
        return planes == null || Arrays.stream(planes).anyMatch(p -> p >= 0 && p < 4) ? null : planes;
    }

    @Override
    public int inkPlanes() {
        return inks.inkPlanes();
    }

    @Override
    public void tints(ColourSpace space, float[] components, int[] out) {
        if (inks.namesProcess(space)) {
            Colour alternate = Alternates.of(space, components);
            tints(alternate.space(), alternate.components(), out);
            return;
        }
        inks.tints(space, components, out);
        toGroup(space, components, out);
    }

    @Override
    public boolean assignedByLook(Colour colour) {
        return inks.assignedByLook(colour);
    }

    @Override
    public SoftEdges softEdges(ImageSource.Pixels pixels, ColourSpace space, Cancel cancel) {
        return inks.softEdges(pixels, space, cancel);
    }

    @Override
    public SoftEdges softEdges(Paint.Shading shading) {
        return inks.softEdges(shading);
    }

    @Override
    public void mixedTints(ColourSpace space, float[] components, SoftEdges edges, int[] out) {
        if (inks.namesProcess(space)) {
            tints(space, components, out); // soft edges are for colours that name no ink
            return;
        }
        inks.mixedTints(space, components, edges, out);
        toGroup(space, components, out);
    }

    @Override
    public Inking inking(Colour colour, Style style, boolean overprint) {
        if (!inks.assigned(colour)) {
            return ColourMapping.super.inking(colour, style, overprint);
        }
        // what an assigned colour touches is decided by its inks, before they become colours of the group
        Inking inking = inks.inking(colour, style, overprint);
        toGroup(colour.space(), colour.components(), inking.tints());
        return inking;
    }

    /** Brings tints of inks to the group's colours. */
    private void toGroup(ColourSpace space, float[] components, int[] out) {
        if (space instanceof ColourSpace.Indexed indexed) {
            toGroup(indexed.base(), indexed.lookup(Math.round(components[0])), out);
            return;
        }
        boolean spots = false;
        for (int p = 4; p < out.length; p++) {
            spots |= out[p] != 0;
        }
        if (kind == Kind.GREY) {
            boolean process = out[0] != 0 || out[1] != 0 || out[2] != 0;
            if (process) {
                Arrays.fill(out, 0, 3, 0);
                out[3] = Fixed.tint(1 - luminosity.luminosity(space, components));
            }
        } else if (spots || inks.assigned(space, components)) {
            fromProcess(out);
        } else {
            toRgb(space, components, out);
        }
    }

    /** Grey and RGB stay what they are in an RGB group (§10.4.2): on the way through process tints they would lose. */
    private void toRgb(ColourSpace space, float[] components, int[] out) {
        if (inks.process().isDisplayRgb(space)) {
            for (int i = 0; i < 3; i++) {
                out[i] = Fixed.tint(1 - components[i]);
            }
        } else if (isGrey(space)) {
            Arrays.fill(out, 0, 3, out[3]);
        } else if (isRgb(space)) {
            grids.computeIfAbsent(space, s -> new ProcessGrid(s, this::complement))
                    .tints(components, out);
        } else {
            fromProcess(out);
        }
        out[3] = 0;
    }

    private void complement(ColourSpace space, float[] components, float[] out) {
        float[] rgb = new float[3];
        inks.process().toDisplayRgb(space, components, rgb);
        for (int i = 0; i < 3; i++) {
            out[i] = 1 - rgb[i];
        }
    }

    private static boolean isGrey(ColourSpace space) {
        return space instanceof ColourSpace.DeviceGray
                || space instanceof ColourSpace.CalGray
                || space instanceof ColourSpace.Icc icc && icc.components() == 1;
    }

    private static boolean isRgb(ColourSpace space) {
        return space instanceof ColourSpace.CalRgb
                || space instanceof ColourSpace.Icc icc
                        && icc.components() == 3
                        && !(icc.alternate() instanceof ColourSpace.CieLab);
    }

    private void fromProcess(int[] out) {
        if (out[0] == 0 && out[1] == 0 && out[2] == 0 && out[3] == 0) {
            return; // no ink is white, exactly
        }
        float[] rgb = new float[3];
        inks.process().toDisplayRgb(out, rgb);
        for (int i = 0; i < 3; i++) {
            out[i] = Fixed.tint(1 - rgb[i]);
        }
        out[3] = 0;
    }

    /** Brings a colour of the group to process tints, at the edge of the group. */
    void toProcess(int[] tints) {
        if (kind == Kind.RGB && (tints[0] | tints[1] | tints[2]) != 0) {
            float[] rgb = new float[3];
            for (int i = 0; i < 3; i++) {
                rgb[i] = 1 - (float) tints[i] / Fixed.TINT_ONE;
            }
            edge.tints(rgb, tints);
        }
    }

    /** Takes a grey over from a group inside this one. */
    void fromGrey(int[] tints) {
        if (kind == Kind.RGB) {
            Arrays.fill(tints, 0, 3, tints[3]);
            tints[3] = 0;
        }
    }

    /** Takes process tints, or complements of RGB, over from a group inside this one that blends in those and not in these. */
    void fromColours(int[] tints) {
        if (kind == Kind.RGB) {
            fromProcess(tints);
        } else { // §10.4: the same weights for red, green and blue as for their complements
            double dark = 0.3 * tints[0] + 0.59 * tints[1] + 0.11 * tints[2] + tints[3];
            Arrays.fill(tints, 0, 3, 0);
            tints[3] = (int) Math.rint(Math.min(Fixed.TINT_ONE, dark));
        }
    }
}
