package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import java.util.List;

/**
 * One picture of a file, upright.
 *
 * @param source its samples
 * @param dpiX samples per inch across, above 0; 0 where the file does not say
 * @param dpiY samples per inch down, likewise
 * @param notes what reading could not keep exactly
 * @param spots inks beside the process inks that it declares
 */
public record Frame(
        ImageSource source, double dpiX, double dpiY, List<Note> notes, List<ColourSpace.Separation> spots) {
    /** Copies the lists. */
    public Frame {
        notes = List.copyOf(notes);
        spots = List.copyOf(spots);
    }

    /**
     * Something not kept exactly.
     *
     * @param feature what, in a few words
     * @param shownAs what is shown instead
     */
    public record Note(String feature, String shownAs) {}
}
