package inkground.ink;

import java.util.Locale;
import java.util.Set;

/**
 * One ink of a job.
 *
 * @param name the separation's name exactly as the file has it; process inks are Cyan, Magenta, Yellow, Black
 * @param kind what it is for
 */
public record Ink(String name, InkKind kind) {
    /** Process cyan. */
    public static final Ink CYAN = new Ink("Cyan", InkKind.PROCESS);
    /** Process magenta. */
    public static final Ink MAGENTA = new Ink("Magenta", InkKind.PROCESS);
    /** Process yellow. */
    public static final Ink YELLOW = new Ink("Yellow", InkKind.PROCESS);
    /** Process black. */
    public static final Ink BLACK = new Ink("Black", InkKind.PROCESS);

    // Names in common use in English-language print shops; common practice, no source.
    private static final Set<String> WHITE_WORDS = Set.of("white", "underbase", "underprint", "opaque white");
    private static final Set<String> TECHNICAL_WORDS = Set.of(
            "cut",
            "die",
            "dieline",
            "die line",
            "crease",
            "fold",
            "perf",
            "perforation",
            "score",
            "varnish",
            "trim",
            "bleed",
            "safe",
            "guides",
            "dimensions");

    /** Rejects an empty name. */
    public Ink {
        if (name == null || name.isEmpty() || kind == null) {
            throw new IllegalArgumentException("an ink needs a name and a kind");
        }
    }

    /**
     * The ink of a separation of this name. The four process names of ISO 32000-2 §8.6.6.4 are process inks; the kind of
     * all others is read from the name by the words of common practice, else spot.
     */
    public static Ink named(String name) {
        return switch (name) {
            case "Cyan" -> CYAN;
            case "Magenta" -> MAGENTA;
            case "Yellow" -> YELLOW;
            case "Black" -> BLACK;
            default -> new Ink(name, kindOf(name.toLowerCase(Locale.ROOT).strip()));
        };
    }

    private static InkKind kindOf(String lower) {
        if (WHITE_WORDS.contains(lower) || lower.startsWith("white ") || lower.endsWith(" white")) {
            return InkKind.WHITE;
        }
        return TECHNICAL_WORDS.contains(lower) ? InkKind.TECHNICAL : InkKind.SPOT;
    }
}
