package inkground.appearance;

import inkground.artwork.ColourSpace;
import inkground.artwork.ColourSpace.Separation;
import inkground.artwork.MixingHints;
import inkground.artwork.TintTransform;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import inkground.plate.ColourReader;
import inkground.substrate.PrintProcess;
import java.util.List;
import java.util.Optional;

/** Finds the colour of each ink of a job, from the best source there is, and says which. */
public final class InkColours {
    /** Colour of white ink where nothing better is known: a clean white, a little below paper. Common practice, no source. */
    public static final Lab WHITE = new Lab(94, -0.8, -0.5);
    /** Opacity of white ink where nothing better is known. Common practice, no source. */
    public static final double WHITE_OPACITY = 0.85;
    /** Opacity of process inks, which are made to be filters. Common practice, no source. */
    public static final double PROCESS_OPACITY = 0.05;
    /** Opacity of spot inks where nothing better is known. Common practice for screen inks, no source. */
    public static final double SPOT_OPACITY = 0.7;
    /** Shown for an ink of which the file says no colour. */
    public static final Lab UNKNOWN = new Lab(55, 0, 0);

    private static final Lab NOTHING = new Lab(100, 0, 0);
    private static final String NO_WHITE = "prints nothing: the print process has no white ink";
    private static final String ASSUMED = "; its opacity is assumed";

    private InkColours() {}

    /**
     * @param inks of the job
     * @param declared Separation spaces of the file, by which spot inks get their colours; the first of a name counts
     * @param condition how process inks print
     * @return one per ink, in plane order
     */
    public static List<InkColour> of(InkSet inks, List<Separation> declared, PrintCondition condition) {
        return of(inks, declared, condition, InkLibrary.EMPTY);
    }

    /** As {@link #of(InkSet, List, PrintCondition)}, with a library that is asked first for all but process inks. */
    public static List<InkColour> of(
            InkSet inks, List<Separation> declared, PrintCondition condition, InkLibrary library) {
        ColourReader reader = new ColourReader(condition);
        return inks.inks().stream()
                .map(ink -> library.find(ink.name())
                        .filter(e -> ink.kind() != InkKind.PROCESS)
                        .map(e -> of(ink, e))
                        .orElseGet(() -> of(ink, declared, reader)))
                .toList();
    }

    /** @return names of the inks of which nothing tells a colour, so that they are shown as a mid grey */
    public static List<String> unknown(InkSet inks, List<Separation> declared, InkLibrary library) {
        return inks.inks().stream()
                .filter(ink -> ink.kind() == InkKind.SPOT || ink.kind() == InkKind.TECHNICAL)
                .map(Ink::name)
                .filter(name -> library.find(name).isEmpty()
                        && declared.stream().noneMatch(d -> d.name().equals(name)))
                .toList();
    }

    private static InkColour of(Ink ink, InkLibrary.Entry entry) {
        double usual = ink.kind() == InkKind.WHITE ? WHITE_OPACITY : SPOT_OPACITY;
        String opacity = entry.opacity().isPresent() ? "" : ASSUMED;
        return new InkColour(
                ink,
                entry.solid(),
                entry.opacity().orElse(usual),
                entry.overBlack(),
                entry.tone(),
                entry.source() + opacity);
    }

    /**
     * What a file hints of its inks: opacities (solidities) and dot gain, for inks that were not measured over black.
     *
     * @return the same inks, each source saying what is hinted
     */
    public static List<InkColour> hinted(MixingHints hints, List<InkColour> colours) {
        return colours.stream().map(c -> hinted(hints, c)).toList();
    }

    private static InkColour hinted(MixingHints hints, InkColour colour) {
        InkColour out = colour;
        Optional<Double> solidity = hints.solidity(colour.ink().name());
        TintTransform gain = hints.dotGain().get(colour.ink().name());
        if (solidity.isPresent() && colour.overBlack() == null) {
            out = out.withOpacity(solidity.get())
                    .from(out.source().replace(ASSUMED, "") + "; opacity from the file's mixing hints");
        }
        if (gain != null && colour.tone() == null) {
            out = out.withTone(DotGain.tone(gain, colour.solid()))
                    .from(out.source() + "; dot gain from the file's mixing hints");
        }
        return out;
    }

    /**
     * @return the same inks with the opacities that are usual in a print process; process inks stay filters, inks measured over black
     *     stay as they were measured, but for a process that only dyes, and white prints nothing where there is none
     */
    public static List<InkColour> in(PrintProcess process, List<InkColour> colours) {
        boolean dyes = process.inkOpacity() == 0;
        return colours.stream()
                .map(c -> c.overBlack() != null && !dyes
                        ? c
                        : switch (c.ink().kind()) {
                            case WHITE ->
                                process.white() == PrintProcess.White.BARE
                                        ? new InkColour(c.ink(), NOTHING, 0, NO_WHITE)
                                        : c.withOpacity(process.whiteOpacity());
                            case SPOT, TECHNICAL -> c.withOpacity(process.inkOpacity());
                            case PROCESS -> c.withOpacity(Math.min(c.opacity(), process.inkOpacity()));
                        })
                .toList();
    }

    /** @return white ink for an underbase that no plane of the job prints */
    public static InkColour underbaseWhite() {
        return new InkColour(new Ink("Underbase", InkKind.WHITE), WHITE, WHITE_OPACITY, "assumed white ink, no source");
    }

    private static InkColour of(Ink ink, List<Separation> declared, ColourReader reader) {
        float[] solid = {1};
        if (ink.kind() == InkKind.PROCESS) {
            Separation process = new Separation(ink.name(), new ColourSpace.DeviceGray(), NO_TINT);
            return new InkColour(
                    ink,
                    reader.toLab(process, solid),
                    PROCESS_OPACITY,
                    "solid of " + reader.condition().name()
                            + (reader.condition().gaps().isEmpty() ? "" : ", whose data has gaps: see the notes"));
        }
        if (ink.kind() == InkKind.WHITE) {
            // Files give white ink a stand-in colour to be seen by; it is not the colour of the ink.
            return new InkColour(
                    ink, WHITE, WHITE_OPACITY, "assumed white ink, no source; the file's stand-in is not used");
        }
        for (Separation separation : declared) {
            if (separation.name().equals(ink.name())) {
                return new InkColour(
                        ink,
                        reader.toLab(separation, solid),
                        SPOT_OPACITY,
                        source(separation.alternate(), reader.condition()));
            }
        }
        return new InkColour(ink, UNKNOWN, SPOT_OPACITY, "unknown: the file states no colour for this ink; shown grey");
    }

    private static String source(ColourSpace alternate, PrintCondition condition) {
        if (alternate instanceof ColourSpace.CieLab) {
            return "Lab value in the file";
        } else if (alternate instanceof ColourSpace.DeviceCmyk || alternate instanceof ColourSpace.DeviceGray) {
            return "process mixture in the file, seen through " + condition.name();
        } else if (alternate instanceof ColourSpace.DeviceRgb) {
            return "RGB value in the file, taken as sRGB";
        } else if (alternate instanceof ColourSpace.Icc) {
            return "value in the file, seen through its colour profile";
        }
        return "value in the file's alternate colour space";
    }

    private static final TintTransform NO_TINT = new TintTransform() {
        @Override
        public int outputs() {
            return 1;
        }

        @Override
        public void apply(float[] in, float[] out) {
            out[0] = 1 - in[0];
        }
    };
}
