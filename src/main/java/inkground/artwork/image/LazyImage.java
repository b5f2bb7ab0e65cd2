package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.base.Refusal;
import java.io.IOException;
import java.util.Locale;

/** An image whose samples are decoded when a plate asks for them, turned upright. */
final class LazyImage implements ImageSource {
    /** Largest number of values in one image: 400 million, so that its bytes fit comfortably in memory. */
    static final long MAX_VALUES = 400_000_000L;

    private final String name;
    private final int width;
    private final int height;
    private final ColourSpace space;
    private final int bits;
    private final Orientation orientation;
    private final Decoder decoder;

    /** Decodes the samples as the file stores them. */
    @FunctionalInterface
    interface Decoder {
        Pixels decode() throws IOException;
    }

    /**
     * @param name of the file, for messages
     * @param width as stored
     * @param height as stored
     */
    LazyImage(
            String name, int width, int height, ColourSpace space, int bits, Orientation orientation, Decoder decoder) {
        this.name = name;
        this.width = orientation.swaps() ? height : width;
        this.height = orientation.swaps() ? width : height;
        this.space = space;
        this.bits = bits;
        this.orientation = orientation;
        this.decoder = decoder;
    }

    /**
     * Refuses an image that is empty or too large, before anything is allocated for it.
     *
     * @param values components and alpha of one sample
     */
    static void checkSize(String name, long width, long height, int values) throws Refusal {
        if (width < 1 || height < 1) {
            throw new Refusal(name + " holds an image of no size. Export it again.");
        }
        if (width > Integer.MAX_VALUE || height > Integer.MAX_VALUE || width * height > MAX_VALUES / values) {
            throw new Refusal(String.format(
                    Locale.ROOT,
                    "%s holds an image of %d × %d samples with %d components: more than the limit of %d million values."
                            + " Export it at a lower resolution.",
                    name,
                    width,
                    height,
                    values,
                    MAX_VALUES / 1_000_000));
        }
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public ColourSpace space() {
        return space;
    }

    @Override
    public boolean interpolate() {
        return false;
    }

    @Override
    public int bits() {
        return bits;
    }

    @Override
    public Pixels decode() throws Refusal {
        try {
            return orientation.apply(decoder.decode());
        } catch (IOException | RuntimeException e) {
            throw new Refusal(name + " holds an image that cannot be decoded. Export it again.", e);
        } catch (OutOfMemoryError e) {
            throw new Refusal(
                    name + " holds an image that does not fit in memory. Export it at a lower resolution.", e);
        }
    }
}
