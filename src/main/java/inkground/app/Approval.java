package inkground.app;

import inkground.artwork.PictureSize;
import inkground.colour.BlackPointCompensation;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What an approval record states beside its parts. Files are named by their path inside the record.
 *
 * @param artwork the artwork
 * @param page which page was approved, from 1
 * @param condition how process inks print: a bundled name, or a file of the record; empty for what the artwork says
 * @param inks file of the user's ink colours, if any
 * @param size chosen for a picture
 * @param black whether black was matched where colours went to process inks and the file left it open
 * @param printing way of printing in words, if one was named
 * @param underbaseOpacity opacity of the underbase's white, 0 to 1, where it is not the usual one
 * @param overprint whether overprint was honoured
 * @param layersOn ids of the layers that were on, as the artwork numbers them
 * @param by who approved, as typed
 * @param when the record was made
 */
public record Approval(
        String artwork,
        int page,
        Optional<String> condition,
        Optional<String> inks,
        PictureSize size,
        BlackPointCompensation black,
        Optional<String> printing,
        OptionalDouble underbaseOpacity,
        boolean overprint,
        Set<Integer> layersOn,
        Optional<String> by,
        OffsetDateTime when) {
    /** Longest name of who approved, in characters. */
    public static final int LONGEST_NAME = 120;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    /** Checks what is not checked by types, and copies the set. */
    public Approval {
        Objects.requireNonNull(artwork);
        Objects.requireNonNull(when);
        if (page < 1) {
            throw new IllegalArgumentException("page " + page);
        }
        layersOn = Set.copyOf(layersOn);
    }

    /** @return when and by whom, such as "approved 26 Nov 2026 by Ada" */
    public String caption() {
        return "approved " + DAY.format(when) + by.map(name -> " by " + name).orElse("");
    }

    /** @return the name of the artwork's file */
    public String artworkName() {
        return artwork.substring(artwork.lastIndexOf('/') + 1);
    }
}
