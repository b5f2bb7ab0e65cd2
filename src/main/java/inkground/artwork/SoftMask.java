package inkground.artwork;

/**
 * A mask computed from a group: ISO 32000-2 §11.5.
 *
 * @param group what is painted to get the mask
 * @param luminosity whether the mask is the group's luminosity, else its alpha
 * @param backdrop colour under a luminosity group; null for black
 * @param transfer from mask value to mask value, one in and one out; null for the identity
 */
public record SoftMask(Op.Group group, boolean luminosity, Colour backdrop, TintTransform transfer) {}
