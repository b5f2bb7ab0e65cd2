package inkground.app;

import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.ImageSource.Pixels;
import inkground.artwork.Op;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintConditions;
import inkground.colour.Srgb;
import inkground.plate.ColourReader;
import java.nio.file.Path;
import java.util.List;

/**
 * A picture to pick the colour of a cloth or paper from, read through its own colour profile and reduced to at most
 * {@value #LONGEST_PX} pixels an edge. What it gives is a hint, not a measurement: light and camera change colour.
 * Immutable.
 */
public final class Photograph {
    /** Longest edge of the reduced picture. */
    public static final int LONGEST_PX = 640;

    /** Said with every colour that is picked from one. */
    public static final String CAUTION =
            "A photograph is only a hint: light and camera change colour. Compare with the cloth itself, or have it measured.";

    private final int widthPx;
    private final int heightPx;
    private final float[] xyz;

    private Photograph(int widthPx, int heightPx, float[] xyz) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.xyz = xyz;
    }

    /**
     * @param file a picture of any kind that can be opened as artwork; its first frame is taken
     * @throws Refusal if it is no picture or cannot be read
     */
    public static Photograph read(Path file, Cancel cancel, Progress progress) throws Refusal {
        try (Artwork artwork = ArtworkFiles.open(file, cancel, progress)) {
            List<Op> ops = artwork.record(1, cancel, progress).ops();
            if (ops.size() != 1 || !(ops.get(0) instanceof Op.Image image)) {
                throw new Refusal(file.getFileName() + " is no photograph. Choose a JPEG, PNG, TIFF or WebP picture.");
            }
            return reduced(image.image(), cancel, progress);
        }
    }

    private static Photograph reduced(ImageSource source, Cancel cancel, Progress progress) throws Refusal {
        Pixels pixels = source.decode();
        ColourReader reader = new ColourReader(PrintConditions.bundled(Job.DEFAULT_CONDITION));
        double scale = Math.min(1, (double) LONGEST_PX / Math.max(pixels.width(), pixels.height()));
        int width = Math.max(1, (int) Math.round(pixels.width() * scale));
        int height = Math.max(1, (int) Math.round(pixels.height() * scale));
        float[] xyz = new float[3 * width * height];
        for (int y = 0; y < height; y++) {
            cancel.check();
            progress.report("reading colours", (double) y / height);
            int y0 = (int) ((long) y * pixels.height() / height);
            int y1 = Math.max(y0 + 1, (int) ((y + 1L) * pixels.height() / height));
            for (int x = 0; x < width; x++) {
                int x0 = (int) ((long) x * pixels.width() / width);
                int x1 = Math.max(x0 + 1, (int) ((x + 1L) * pixels.width() / width));
                Lab lab = reader.toLab(source.space(), mean(pixels, source.space(), x0, y0, x1, y1));
                double[] one = Cie.labToXyz(lab);
                for (int i = 0; i < 3; i++) {
                    xyz[3 * (y * width + x) + i] = (float) one[i];
                }
            }
        }
        return new Photograph(width, height, xyz);
    }

    /** Means of the coded values: within the few samples of one reduced pixel the curve is as good as straight. */
    private static float[] mean(Pixels pixels, ColourSpace space, int x0, int y0, int x1, int y1) {
        int n = pixels.components();
        float[] out = new float[n];
        boolean index = space instanceof ColourSpace.Indexed;
        if (index) {
            // Between two entries of a palette lies nothing.
            out[0] = pixels.samples()[y0 * pixels.width() + x0] & 255;
            return out;
        }
        for (int c = 0; c < n; c++) {
            long sum = 0;
            for (int y = y0; y < y1; y++) {
                for (int x = x0; x < x1; x++) {
                    sum += pixels.samples()[(y * pixels.width() + x) * n + c] & 255;
                }
            }
            float mean = (float) sum / ((x1 - x0) * (y1 - y0));
            out[c] = space.min(c) + (space.max(c) - space.min(c)) * mean / 255f;
        }
        return out;
    }

    /** @return width of the reduced picture */
    public int widthPx() {
        return widthPx;
    }

    /** @return height of the reduced picture */
    public int heightPx() {
        return heightPx;
    }

    /** @return the reduced picture, 0xffRRGGBB, row by row */
    public int[] argb() {
        int[] argb = new int[widthPx * heightPx];
        for (int i = 0; i < argb.length; i++) {
            argb[i] = Srgb.xyzD50ToArgb(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]);
        }
        return argb;
    }

    /**
     * A picked colour.
     *
     * @param lab mean of the light, D50
     * @param spreadDe00 mean ΔE00 of the pixels from it: how even the patch is
     */
    public record Patch(Lab lab, double spreadDe00) {}

    /**
     * Averages the light of a round patch.
     *
     * @param x middle, in pixels of the reduced picture; held within it
     * @param y likewise
     * @param radiusPx 0 for one pixel
     */
    public Patch patch(double x, double y, double radiusPx) {
        int cx = (int) Math.max(0, Math.min(widthPx - 1, Math.floor(x)));
        int cy = (int) Math.max(0, Math.min(heightPx - 1, Math.floor(y)));
        int reach = (int) Math.max(0, Math.min(LONGEST_PX, Math.ceil(radiusPx)));
        double[] sum = new double[3];
        int[] count = new int[1];
        each(cx, cy, reach, radiusPx, at -> {
            for (int i = 0; i < 3; i++) {
                sum[i] += xyz[at + i];
            }
            count[0]++;
        });
        Lab mean = Cie.xyzToLab(sum[0] / count[0], sum[1] / count[0], sum[2] / count[0]);
        double[] spread = new double[1];
        each(
                cx,
                cy,
                reach,
                radiusPx,
                at -> spread[0] += Cie.deltaE00(mean, Cie.xyzToLab(xyz[at], xyz[at + 1], xyz[at + 2])));
        return new Patch(mean, spread[0] / count[0]);
    }

    private void each(int cx, int cy, int reach, double radiusPx, java.util.function.IntConsumer pixel) {
        for (int y = Math.max(0, cy - reach); y <= Math.min(heightPx - 1, cy + reach); y++) {
            for (int x = Math.max(0, cx - reach); x <= Math.min(widthPx - 1, cx + reach); x++) {
                if (Math.hypot(x - cx, y - cy) <= Math.max(0, radiusPx)) {
                    pixel.accept(3 * (y * widthPx + x));
                }
            }
        }
    }
}
