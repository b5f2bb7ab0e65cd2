package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.Paint;
import inkground.base.Cancel;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.util.Arrays;
import java.util.List;

/**
 * Colours of pictures and gradients that lie between assigned ones. First between the flat colours of the picture itself, in
 * its own space; else between the colours that rules name, as sRGB. Thread-safe.
 */
final class Mixtures {
    /** Share of a picture that may be tone; one with more is a photograph, and what lies between two colours is its own. */
    private static final double MOST_TONE = 0.1;

    private static final double ROUNDING = 1e-6; // of weights that add up to 1

    private final InkMapping mapping;
    private final AssignedColours assigned;
    private final ColourReader reader;
    private final Unmixing rules; // null where no rule is for colours

    Mixtures(InkMapping mapping, AssignedColours assigned, ColourReader reader) {
        this.mapping = mapping;
        this.assigned = assigned;
        this.reader = reader;
        this.rules = assigned.haveColours() ? ofRules(assigned) : null;
    }

    private static Unmixing ofRules(AssignedColours assigned) {
        double[][] colours = assigned.colourRules().stream()
                .map(rule -> encoded(assigned.labOf(rule)))
                .toArray(double[][]::new);
        boolean[] sought = new boolean[colours.length];
        Arrays.fill(sought, true);
        return new Unmixing(colours, sought);
    }

    /** @return the soft edges of a picture that names no inks; null where none is between assigned colours */
    SoftEdges edges(ImageSource.Pixels pixels, ColourSpace space, Cancel cancel) {
        if (rules == null) {
            return null;
        }
        PictureColours colours = PictureColours.of(pixels, space, reader, cancel);
        return colours.toneShare() > MOST_TONE
                ? null
                : between(colours.flats().stream()
                        .map(PictureColours.Flat::colour)
                        .toList());
    }

    /** @return the same of a shading */
    SoftEdges edges(Paint.Shading shading) {
        return rules == null ? null : between(new Ramp(shading).stops());
    }

    private SoftEdges between(List<Colour> ends) {
        return SoftEdges.between(ends, colour -> mapping.target(colour.space(), colour.components()));
    }

    /**
     * @param out receives the tints
     * @return whether the colour is a mixture; else nothing is written
     */
    boolean tints(ColourSpace space, float[] components, SoftEdges edges, int[] out) {
        Unmixing.Mixture mixture = edges == null ? null : edges.of(components);
        if (mixture != null) {
            Arrays.fill(out, 0);
            for (int i = 0; i < mixture.ends().length; i++) {
                addEnd(edges.end(mixture.ends()[i]), mixture.weights()[i], out);
            }
            return true;
        }
        mixture = ofRules(space, components);
        if (mixture == null) {
            return false;
        }
        Arrays.fill(out, 0);
        for (int i = 0; i < mixture.ends().length; i++) {
            ColourAssignment.Rule rule = assigned.colourRules().get(mixture.ends()[i]);
            if (rule.to() instanceof Process) {
                addProcess(assigned.labOf(rule), mixture.weights()[i], out);
            } else {
                mapping.lay(rule.to(), mixture.weights()[i], out);
            }
        }
        return true;
    }

    private Unmixing.Mixture ofRules(ColourSpace space, float[] components) {
        return rules == null ? null : rules.of(encoded(space, components));
    }

    private void addEnd(SoftEdges.End end, double amount, int[] out) {
        if (end.target() != null && !(end.target() instanceof Process)) {
            mapping.lay(end.target(), amount, out);
            return;
        }
        int[] stated = new int[out.length];
        mapping.process().tints(end.colour().space(), end.colour().components(), stated);
        for (int p = 0; p < 4; p++) {
            out[p] = Math.min(Fixed.TINT_ONE, out[p] + (int) Math.round(amount * stated[p]));
        }
    }

    private void addProcess(Lab lab, double amount, int[] out) {
        float[] cmyk = new float[4];
        reader.condition().labToCmyk(lab.L(), lab.a(), lab.b(), cmyk);
        for (int p = 0; p < 4; p++) {
            out[p] = Math.min(Fixed.TINT_ONE, out[p] + Fixed.tint(amount * cmyk[p]));
        }
    }

    /**
     * What is kept of a colour without the bare ones.
     *
     * @param clear holds the colour, and receives that of what is kept
     * @return its share, 0 to 1
     */
    double kept(ColourSpace space, float[] components, SoftEdges edges, float[] clear) {
        Unmixing.Mixture mixture = edges == null ? null : edges.of(components);
        if (mixture == null) {
            return betweenBare(ofRules(space, components)) ? 0 : 1;
        }
        double share = 0;
        double[] sum = new double[components.length];
        for (int i = 0; i < mixture.ends().length; i++) {
            SoftEdges.End end = edges.end(mixture.ends()[i]);
            if (!(end.target() instanceof Bare)) {
                share += mixture.weights()[i];
                for (int c = 0; c < sum.length; c++) {
                    sum[c] += mixture.weights()[i] * end.colour().components()[c];
                }
            }
        }
        for (int c = 0; c < sum.length && share > 0; c++) {
            clear[c] = (float) (sum[c] / share);
        }
        return share > 1 - ROUNDING ? 1 : share;
    }

    private boolean betweenBare(Unmixing.Mixture mixture) {
        return mixture != null
                && Arrays.stream(mixture.ends())
                        .allMatch(end -> assigned.colourRules().get(end).to() instanceof Bare);
    }

    private double[] encoded(ColourSpace space, float[] components) {
        return space instanceof ColourSpace.DeviceRgb
                ? new double[] {components[0], components[1], components[2]}
                : encoded(reader.toLab(space, components));
    }

    private static double[] encoded(Lab lab) {
        double[] linear = new double[3];
        Srgb.xyzToLinear(Cie.labToXyz(lab), linear);
        for (int i = 0; i < 3; i++) {
            linear[i] = Srgb.encode(Math.max(0, linear[i]));
        }
        return linear;
    }
}
