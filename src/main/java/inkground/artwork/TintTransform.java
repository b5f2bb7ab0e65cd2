package inkground.artwork;

/**
 * A pure function of colour components: the tint transform of Separation and DeviceN, or the colour function of a
 * shading. Thread-safe.
 */
public interface TintTransform {
    /** One value to the same value. */
    TintTransform UNCHANGED = new TintTransform() {
        @Override
        public int outputs() {
            return 1;
        }

        @Override
        public void apply(float[] in, float[] out) {
            out[0] = in[0];
        }
    };

    /** @return number of output values */
    int outputs();

    /**
     * @param in input values, as many as the function takes, inside its domain or clipped to it
     * @param out receives {@link #outputs} values; not the same array as {@code in}
     */
    void apply(float[] in, float[] out);
}
