package inkground.artwork;

import java.util.Arrays;

/**
 * A colour as the artwork states it.
 *
 * @param space where the components live
 * @param components as many as the space has, inside its range; not to be changed
 */
public record Colour(ColourSpace space, float... components) {
    /** Black of DeviceGray, the initial colour of a page. */
    public static final Colour BLACK = new Colour(new ColourSpace.DeviceGray(), 0f);

    /** Clips the components to the range of the space. */
    public Colour {
        float[] clipped = new float[space.components()];
        for (int i = 0; i < clipped.length; i++) {
            float v = i < components.length && !Float.isNaN(components[i]) ? components[i] : space.min(i);
            clipped[i] = Math.max(space.min(i), Math.min(space.max(i), v));
        }
        components = clipped;
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof Colour c && space.equals(c.space) && Arrays.equals(components, c.components);
    }

    @Override
    public int hashCode() {
        return 31 * space.hashCode() + Arrays.hashCode(components);
    }

    @Override
    public String toString() {
        return space.getClass().getSimpleName() + Arrays.toString(components);
    }
}
