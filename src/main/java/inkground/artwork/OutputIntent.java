package inkground.artwork;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The printing condition a file says it was made for: ISO 32000-2 §14.11.5.
 *
 * @param condition its identifier or description, for the user
 * @param profile the destination profile; null when only named
 * @param spectra by the name of a spot ink, a CxF/X-4 document that characterises it (SpectralData); as in the file, possibly broken;
 *     the bytes are not to be changed
 * @param hints how its inks mix
 */
public record OutputIntent(
        String condition, ColourSpace.Profile profile, Map<String, byte[]> spectra, MixingHints hints) {
    /** Copies the map. */
    public OutputIntent {
        spectra = Collections.unmodifiableMap(new LinkedHashMap<>(spectra));
    }

    /** An intent that says nothing of spot inks. */
    public OutputIntent(String condition, ColourSpace.Profile profile) {
        this(condition, profile, Map.of(), MixingHints.NONE);
    }
}
