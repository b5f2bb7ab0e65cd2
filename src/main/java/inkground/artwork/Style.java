package inkground.artwork;

/**
 * How an operation meets what is already there.
 *
 * @param alpha constant alpha, 0 to 1
 * @param blend blend mode
 * @param overprint the graphics state's OP (strokes) or op (everything else): ISO 32000-2 §8.6.7
 * @param overprintMode OPM: 1 lets zero tints of direct DeviceCMYK leave their ink alone
 * @param softMask mask of the graphics state, or null
 * @param alphaIsShape AIS
 * @param transfer transfer function, or null for none
 */
public record Style(
        double alpha,
        BlendMode blend,
        boolean overprint,
        int overprintMode,
        SoftMask softMask,
        boolean alphaIsShape,
        Transfer transfer) {
    /** Opaque, normal, knocking out. */
    public static final Style PLAIN = new Style(1, BlendMode.NORMAL, false, 0, null, false);

    /** Rejects an alpha outside 0 to 1. */
    public Style {
        if (!(alpha >= 0 && alpha <= 1)) {
            throw new IllegalArgumentException("alpha " + alpha);
        }
    }

    /** Without a transfer function. */
    public Style(
            double alpha,
            BlendMode blend,
            boolean overprint,
            int overprintMode,
            SoftMask softMask,
            boolean alphaIsShape) {
        this(alpha, blend, overprint, overprintMode, softMask, alphaIsShape, null);
    }

    /** @return whether nothing beneath shows through or takes part */
    public boolean opaque() {
        return alpha == 1 && blend == BlendMode.NORMAL && softMask == null;
    }
}
