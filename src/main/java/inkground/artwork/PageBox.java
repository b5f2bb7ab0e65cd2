package inkground.artwork;

import java.util.Locale;

/** The page boxes of ISO 32000-2 §14.11.2. */
public enum PageBox {
    /** The medium. */
    MEDIA,
    /** What is shown. */
    CROP,
    /** What is needed with bleed. */
    BLEED,
    /** The finished product. */
    TRIM,
    /** The meaningful content. */
    ART;

    /** @return the lower-case word used on the command line */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
