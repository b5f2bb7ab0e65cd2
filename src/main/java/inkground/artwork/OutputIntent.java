package inkground.artwork;

/**
 * The printing condition a file says it was made for: ISO 32000-2 §14.11.5.
 *
 * @param condition its identifier or description, for the user
 * @param profile the destination profile; null when only named
 */
public record OutputIntent(String condition, ColourSpace.Profile profile) {}
