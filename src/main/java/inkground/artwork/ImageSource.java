package inkground.artwork;

import inkground.base.Refusal;

/** An image of the artwork, decoded only when a plate needs it. Thread-safe; equal only to itself. */
public interface ImageSource {
    /** @return width in samples, at least 1 */
    int width();

    /** @return height in samples, at least 1 */
    int height();

    /** @return space of the samples; DeviceGray for stencils */
    ColourSpace space();

    /** @return whether the file asks for smooth enlargement */
    boolean interpolate();

    /** @return bits per component in the file */
    int bits();

    /**
     * Whether the mask of the decoded image is opacity, as a soft mask is, and not shape, as explicit and colour-key masks
     * are: ISO 32000-2 §11.6.4.2 and 3. It makes a difference in knockout groups only.
     */
    default boolean maskIsOpacity() {
        return false;
    }

    /**
     * Decodes the image.
     *
     * @return samples and, if there is one, the mask
     * @throws Refusal if it cannot be decoded or would not fit the memory limit
     */
    Pixels decode() throws Refusal;

    /**
     * Samples of one image, row by row from the top.
     *
     * @param width in samples
     * @param height in samples
     * @param components per sample
     * @param samples width × height × components bytes, interleaved; each is the decoded value scaled so that 0 is
     *     {@link ColourSpace#min} and 255 is {@link ColourSpace#max}, with the file's Decode array applied; for an Indexed
     *     space the byte is the index itself. Not to be changed.
     * @param mask alpha of each sample, of one component and of its own size, 255 opaque; null where all is opaque.
     *     Explicit, colour-key and soft masks all arrive here, pre-blended colour undone.
     */
    record Pixels(int width, int height, int components, byte[] samples, Pixels mask) {
        /** Checks the sizes. */
        public Pixels {
            if (width < 1 || height < 1 || (long) width * height * components != samples.length) {
                throw new IllegalArgumentException("image of " + width + " × " + height + " × " + components + " with "
                        + samples.length + " bytes");
            }
        }
    }
}
