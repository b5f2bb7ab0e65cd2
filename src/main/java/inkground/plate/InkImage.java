package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Cancel;
import java.util.Arrays;

/**
 * An image as tints of planes: interleaved bytes, one per plane it can print on. Half-size versions are made when a small
 * scale asks for them. Thread-safe.
 */
final class InkImage {
    final int width;
    final int height;
    /** Bytes per sample. */
    final int channels;
    /** Plane of each channel; -1 for a channel that prints nothing. */
    final int[] planes;
    /** Tint of each channel, 255 solid. */
    final byte[] tints;

    private InkImage half;

    InkImage(int width, int height, int[] planes, byte[] tints) {
        this.width = width;
        this.height = height;
        this.channels = planes.length;
        this.planes = planes;
        this.tints = tints;
    }

    /** An alpha mask or stencil: one channel. */
    static InkImage ofMask(Pixels mask) {
        return new InkImage(mask.width(), mask.height(), new int[] {0}, mask.samples());
    }

    /** Converts samples of {@code space}. */
    static InkImage of(Pixels pixels, ColourSpace space, ColourMapping mapping, Cancel cancel) {
        int[] direct = mapping.direct(space);
        if (direct != null) {
            return new InkImage(pixels.width(), pixels.height(), direct, pixels.samples());
        }
        SoftEdges edges = mapping.softEdges(pixels, space, cancel);
        return space.components() == 1
                ? ofOneComponent(pixels, space, mapping, edges)
                : ofManyComponents(pixels, space, mapping, edges, cancel);
    }

    private static InkImage ofOneComponent(Pixels pixels, ColourSpace space, ColourMapping mapping, SoftEdges edges) {
        int n = mapping.tintPlanes();
        int[][] table = new int[256][n];
        boolean[] used = new boolean[n];
        boolean indexed = space instanceof ColourSpace.Indexed;
        for (int v = 0; v < 256; v++) {
            float component = indexed ? v : space.min(0) + (space.max(0) - space.min(0)) * v / 255f;
            mapping.mixedTints(space, new Colour(space, component).components(), edges, table[v]);
        }
        for (byte sample : distinct(pixels.samples())) {
            for (int p = 0; p < n; p++) {
                used[p] |= table[sample & 255][p] != 0;
            }
        }
        int[] planes = planesOf(used);
        byte[] out = new byte[Math.multiplyExact(pixels.samples().length, planes.length)];
        byte[] samples = pixels.samples();
        for (int i = 0, o = 0; i < samples.length; i++) {
            int[] row = table[samples[i] & 255];
            for (int plane : planes) {
                out[o++] = (byte) Fixed.toByte(row[plane]);
            }
        }
        return new InkImage(pixels.width(), pixels.height(), planes, out);
    }

    private static byte[] distinct(byte[] samples) {
        boolean[] seen = new boolean[256];
        for (byte b : samples) {
            seen[b & 255] = true;
        }
        byte[] out = new byte[256];
        int n = 0;
        for (int v = 0; v < 256; v++) {
            if (seen[v]) {
                out[n++] = (byte) v;
            }
        }
        return Arrays.copyOf(out, n);
    }

    /** One plane at least, so that an image of white has something to sample. */
    private static int[] planesOf(boolean[] used) {
        int[] planes = java.util.stream.IntStream.range(0, used.length)
                .filter(p -> used[p])
                .toArray();
        return planes.length > 0 ? planes : new int[] {0};
    }

    private static InkImage ofManyComponents(
            Pixels pixels, ColourSpace space, ColourMapping mapping, SoftEdges edges, Cancel cancel) {
        int n = mapping.tintPlanes();
        int in = pixels.components();
        int[] planes =
                java.util.stream.IntStream.range(0, mapping.tintPlanes(space)).toArray();
        byte[] out = new byte[Math.multiplyExact(pixels.width() * planes.length, pixels.height())];
        byte[] samples = pixels.samples();
        float[] colour = new float[in];
        int[] tints = new int[n];
        byte[] last = new byte[in];
        boolean have = false;
        for (int i = 0, o = 0; i < samples.length; i += in) {
            if ((i & 0xfffff) < in) {
                cancel.check();
            }
            if (!have || !Arrays.equals(samples, i, i + in, last, 0, in)) {
                for (int c = 0; c < in; c++) {
                    colour[c] = space.min(c) + (space.max(c) - space.min(c)) * (samples[i + c] & 255) / 255f;
                }
                mapping.mixedTints(space, colour, edges, tints);
                System.arraycopy(samples, i, last, 0, in);
                have = true;
            }
            for (int plane : planes) {
                out[o++] = (byte) Fixed.toByte(tints[plane]);
            }
        }
        return new InkImage(pixels.width(), pixels.height(), planes, out);
    }

    /** @return this image at half its width and height, each sample the mean of four; made once */
    synchronized InkImage half() {
        if (half == null) {
            half = reduce();
        }
        return half;
    }

    private InkImage reduce() {
        int w = (width + 1) / 2;
        int h = (height + 1) / 2;
        byte[] out = new byte[w * h * channels];
        for (int y = 0, o = 0; y < h; y++) {
            int rowA = 2 * y * width;
            int rowB = Math.min(2 * y + 1, height - 1) * width;
            for (int x = 0; x < w; x++) {
                int xa = 2 * x;
                int xb = Math.min(2 * x + 1, width - 1);
                for (int c = 0; c < channels; c++) {
                    int sum = (tints[(rowA + xa) * channels + c] & 255)
                            + (tints[(rowA + xb) * channels + c] & 255)
                            + (tints[(rowB + xa) * channels + c] & 255)
                            + (tints[(rowB + xb) * channels + c] & 255);
                    out[o++] = (byte) (sum + 2 >> 2);
                }
            }
        }
        return new InkImage(w, h, planes, out);
    }

    /** @return weight in bytes, smaller versions counted in */
    long bytes() {
        return tints.length * 4L / 3 + 64;
    }
}
