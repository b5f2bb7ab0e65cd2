package inkground.plate;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.base.Cancel;
import inkground.base.Refusal;
import java.util.Arrays;
import java.util.Optional;

/**
 * A picture out of which the bare colours were taken: where one was seen alone nothing is kept, and along a soft edge the
 * other colour is kept by its share.
 */
public final class ClearedPicture {
    private final int width;
    private final int height;
    private final ColourSpace space;
    private final byte[] samples;
    private final byte[] kept;
    private final ImageSource.Pixels mask;

    private ClearedPicture(ImageSource.Pixels pixels, ColourSpace space, byte[] samples, byte[] kept) {
        this.width = pixels.width();
        this.height = pixels.height();
        this.space = space;
        this.samples = samples;
        this.kept = kept;
        this.mask = pixels.mask();
    }

    /**
     * Takes the bare colours out of a picture.
     *
     * @param image to decode
     * @param mapping says what is bare
     * @return the picture; nothing when it has no bare colour
     * @throws Refusal if it cannot be decoded
     */
    public static Optional<ClearedPicture> of(ImageSource image, InkMapping mapping, Cancel cancel) throws Refusal {
        if (!mapping.anyBare()) {
            return Optional.empty();
        }
        ImageSource.Pixels pixels = image.decode();
        ColourSpace stored = image.space();
        ColourSpace space = InkMapping.base(stored);
        SoftEdges edges = mapping.softEdges(pixels, stored, cancel);
        int in = pixels.components();
        int n = space.components();
        int size = pixels.width() * pixels.height();
        byte[] source = pixels.samples();
        byte[] samples = new byte[Math.multiplyExact(size, n)];
        byte[] kept = new byte[size];
        float[] clear = new float[n];
        double share = 1;
        boolean any = false;
        for (int i = 0; i < size; i++) {
            if (i % pixels.width() == 0) {
                cancel.check();
            }
            if (i == 0 || !Arrays.equals(source, i * in, i * in + in, source, i * in - in, i * in)) {
                share = mapping.kept(space, colour(stored, source, i * in), edges, clear);
            }
            kept[i] = (byte) Math.round(255 * share);
            any |= kept[i] != -1;
            for (int c = 0; c < n; c++) {
                float unit = (clear[c] - space.min(c)) / (space.max(c) - space.min(c));
                samples[i * n + c] = (byte) Math.round(255 * Math.max(0, Math.min(1, unit)));
            }
        }
        if (!any) {
            return Optional.empty();
        }
        ClearedPicture cleared = new ClearedPicture(pixels, space, samples, kept);
        cleared.spread();
        return Optional.of(cleared);
    }

    private static float[] colour(ColourSpace space, byte[] samples, int at) {
        if (space instanceof ColourSpace.Indexed indexed) {
            return indexed.lookup(samples[at] & 255);
        }
        float[] out = new float[space.components()];
        for (int c = 0; c < out.length; c++) {
            out[c] = space.min(c) + (space.max(c) - space.min(c)) * (samples[at + c] & 255) / 255f;
        }
        return out;
    }

    /** Gives samples that are gone the colour of one beside them, so that a renderer that averages brings nothing back. */
    private void spread() {
        boolean[] coloured = new boolean[kept.length];
        for (int i = 0; i < kept.length; i++) {
            coloured[i] = kept[i] != 0;
        }
        for (int i = 0; i < kept.length; i++) {
            take(coloured, i, i % width > 0 ? i - 1 : -1);
            take(coloured, i, i - width);
        }
        for (int i = kept.length - 1; i >= 0; i--) {
            take(coloured, i, i % width < width - 1 ? i + 1 : -1);
            take(coloured, i, i + width < kept.length ? i + width : -1);
        }
    }

    private void take(boolean[] coloured, int i, int from) {
        if (!coloured[i] && from >= 0 && coloured[from]) {
            int n = space.components();
            System.arraycopy(samples, from * n, samples, i * n, n);
            coloured[i] = true;
        }
    }

    /** @return width in samples, also of the original */
    public int width() {
        return width;
    }

    /** @return height in samples, also of the original */
    public int height() {
        return height;
    }

    /** @return space of the samples; the palette's base where the original had a palette */
    public ColourSpace space() {
        return space;
    }

    /** @return samples as in {@link ImageSource.Pixels}; not to be changed */
    public byte[] samples() {
        return samples;
    }

    /** @return share of each sample that is kept, 255 all; not to be changed */
    public byte[] kept() {
        return kept;
    }

    /** @return the original's mask, of its own size; null where all is opaque */
    public ImageSource.Pixels mask() {
        return mask;
    }

    /** @return whether nothing at all is kept */
    public boolean empty() {
        for (byte share : kept) {
            if (share != 0) {
                return false;
            }
        }
        return true;
    }

    /** @return the original's mask at a sample, 255 opaque */
    public int maskAt(int x, int y) {
        if (mask == null) {
            return 255;
        }
        int mx = (int) ((x + 0.5) * mask.width() / width);
        int my = (int) ((y + 0.5) * mask.height() / height);
        return mask.samples()[my * mask.width() + mx] & 255;
    }
}
