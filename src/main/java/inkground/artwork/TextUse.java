package inkground.artwork;

/**
 * Says that a path was type.
 *
 * @param font name of the font in the file, without a subset tag
 * @param sizePt size in points on the page, as drawn
 * @param embedded whether the file carries the font
 * @param text what the type says, where the file tells; else empty
 */
public record TextUse(String font, double sizePt, boolean embedded, String text) {}
