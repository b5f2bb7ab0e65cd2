package inkground.substrate;

/**
 * How a surface is uneven: made by a procedure from a seed, so that it looks the same at any size and on any machine.
 *
 * @param kind which procedure
 * @param strength 0 none, 1 as strong as the kind gets
 * @param seed tells two surfaces of one kind apart
 */
public record Texture(Kind kind, double strength, long seed) {
    /** An even surface. */
    public static final Texture NONE = new Texture(Kind.COATED, 0, 0);

    /** Checks the strength. */
    public Texture {
        if (kind == null || !(strength >= 0 && strength <= 1)) {
            throw new IllegalArgumentException("a texture needs a kind and a strength from 0 to 1");
        }
    }

    /** Kinds of surface. */
    public enum Kind {
        /** Coated paper: all but even. */
        COATED,
        /** Uncoated paper: soft clouds and fine fibres. */
        UNCOATED,
        /** Recycled paper: as uncoated, with specks. */
        RECYCLED,
        /** Kraft paper: long fibres. */
        KRAFT,
        /** Single jersey: columns of knitted stitches. */
        JERSEY,
        /** Jersey of mixed light and dark fibres. */
        HEATHER,
        /** Plain weave. */
        WOVEN,
        /** Brushed fleece: soft and without a grain. */
        FLEECE
    }
}
