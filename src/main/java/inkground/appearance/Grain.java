package inkground.appearance;

import inkground.substrate.Texture;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The surface of a kind of cloth over one region, apart from its strength and of one fixed seed: so that stepping from one
 * garment to another of the same kind keeps it, and showing it costs a multiplication per pixel. Immutable.
 */
public final class Grain {
    private static final long SEED = 17;
    /** Deepest grain a kind has, as a change of the coded light; more is cut off. */
    private static final double DEEPEST = 0.2;

    private final Texture.Kind kind;
    private final byte[] values;
    private final boolean even;

    /**
     * @param kind which surface
     * @param mmPerPx size of a pixel, above 0; what is finer than two pixels fades
     * @param x0 left pixel, counted from where the place is 0 mm
     * @param y0 top pixel
     */
    public Grain(Texture.Kind kind, double mmPerPx, int x0, int y0, int width, int height) {
        this.kind = kind;
        Texture whole = new Texture(kind, 1, SEED);
        values = new byte[width * height];
        IntStream.range(0, height).parallel().forEach(y -> {
            double yMm = (y0 + y + 0.5) * mmPerPx;
            for (int x = 0; x < width; x++) {
                double factor = Textures.factor(whole, (x0 + x + 0.5) * mmPerPx, yMm, mmPerPx);
                double coded = Math.sqrt(factor) - 1;
                values[y * width + x] = (byte) Math.round(Math.max(-1, Math.min(1, coded / DEEPEST)) * 127);
            }
        });
        even = Arrays.equals(values, new byte[values.length]);
    }

    /** @return which surface */
    public Texture.Kind kind() {
        return kind;
    }

    /** @return whether nothing of it is seen at this size of pixel */
    public boolean even() {
        return even;
    }

    /** @return a coded light of a pixel with the grain in it */
    public int shade(int light, int pixel, double strength) {
        return (int) (light * (1 + values[pixel] * (DEEPEST / 127) * strength) + 0.5);
    }

    /**
     * The grain as a sheet to lay over a picture: black of an alpha darkens what lies under it by just that share; white of an
     * alpha lightens cloth of the given colour by its share, and brighter print by less.
     *
     * @param clothArgb colour of the cloth
     * @param strength 0 to 1
     * @return premultiplied sRGB, row by row
     */
    public int[] overlay(int clothArgb, double strength) {
        double mean = ((clothArgb >> 16 & 255) + (clothArgb >> 8 & 255) + (clothArgb & 255)) / 3.0;
        int[] sheet = new int[256];
        for (int v = -128; v < 128; v++) {
            double share = v * (DEEPEST / 127) * strength;
            double white = Math.min(share, share * mean / Math.max(1, 255 - mean));
            int alpha = (int) Math.round(255 * (share < 0 ? -share : white));
            sheet[v & 255] = share < 0 ? alpha << 24 : alpha * 0x01010101;
        }
        int[] out = new int[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = sheet[values[i] & 255];
        }
        return out;
    }

    /** @return weight in memory, in bytes */
    public long bytes() {
        return values.length;
    }
}
