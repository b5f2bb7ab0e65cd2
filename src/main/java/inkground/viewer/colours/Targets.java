package inkground.viewer.colours;

import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;

/** What a colour can be printed as, in words. */
enum Targets {
    STATED("As stated", "Print it as the artwork states it"),
    INK("Ink", "Print it as a named ink, one of the artwork's or a new one"),
    WHITE("White ink", "Print it with the white ink of the job"),
    BARE("Bare", "Let no ink arrive where it is seen: the substrate shows, and what lies beneath stays hidden"),
    PROCESS("Process", "Mix it from cyan, magenta, yellow and black, by its colour");

    private final String label;
    private final String sentence;

    Targets(String label, String sentence) {
        this.label = label;
        this.sentence = sentence;
    }

    String label() {
        return label;
    }

    String sentence() {
        return sentence;
    }

    /** @return the kind of a rule's target; null means as stated */
    static Targets of(Target target) {
        if (target == null) {
            return STATED;
        } else if (target instanceof InkAt) {
            return INK;
        } else if (target instanceof WhiteInk) {
            return WHITE;
        }
        return target instanceof Bare ? BARE : PROCESS;
    }

    /** @return a target as a few words */
    static String words(Target target) {
        if (target instanceof InkAt at) {
            return at.tint() == 1 ? at.name() : at.name() + " " + Math.round(at.tint() * 100) + " %";
        }
        return of(target).label().toLowerCase(java.util.Locale.ROOT);
    }
}
