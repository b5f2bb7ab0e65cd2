package inkground.substrate;

import java.util.List;
import java.util.Set;

/**
 * A way of printing and what it can do. The values are a starting point that users change; the word of their printer wins.
 *
 * @param id short and unique, of lower-case letters, digits and hyphens
 * @param name for the user
 * @param on kinds of substrate it prints on
 * @param white what becomes of white
 * @param inkOpacity usual opacity of a coloured ink, 0 a pure filter, 1 hides what is beneath
 * @param whiteOpacity usual opacity of its white ink; 0 where it has none
 * @param minLineMm thinnest line that holds
 * @param minGapMm narrowest gap that stays open
 * @param minTypePt smallest type that reads, by its body size
 * @param minImageDpi lowest image resolution at print size
 * @param maxTotalInkPercent largest sum of tints in one place
 * @param bleedMm artwork needed beyond the trim; 0 where nothing is trimmed
 * @param safeMm distance that matter worth keeping has from the trim or the edge of the print area
 * @param registerMm how far one ink may lie from another
 * @param maxInks largest number of inks
 * @param source where the values come from
 * @param cautions for the health of printer and wearer
 * @param notes plain remarks for the user
 * @param order place in lists; equal places are sorted by name
 */
public record PrintProcess(
        String id,
        String name,
        Set<Substrate.Kind> on,
        White white,
        double inkOpacity,
        double whiteOpacity,
        double minLineMm,
        double minGapMm,
        double minTypePt,
        double minImageDpi,
        double maxTotalInkPercent,
        double bleedMm,
        double safeMm,
        double registerMm,
        int maxInks,
        String source,
        List<String> cautions,
        List<String> notes,
        int order) {
    /** What becomes of white. */
    public enum White {
        /** White is the bare substrate; there is no white ink. */
        BARE,
        /** White ink is one of the inks, printed where the artwork asks for it. */
        INK,
        /** White ink is one of the inks and is usually also laid under colours. */
        UNDERBASE,
        /** The device lays its own white under everything printed. */
        AUTOMATIC
    }

    /** Copies the collections. */
    public PrintProcess {
        on = Set.copyOf(on);
        cautions = List.copyOf(cautions);
        notes = List.copyOf(notes);
    }
}
