package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;

/** Undoes the blending of an image with its matte colour: ISO 32000-2 §11.6.5.3. */
final class Matte {
    private Matte() {}

    /** @return samples c with c' = m + α (c − m), where c' is the image, m the matte and α the mask */
    static byte[] undo(Pixels image, Pixels alpha, double[] matte, ColourSpace space) {
        int n = image.components();
        if (matte.length < n || space instanceof ColourSpace.Indexed) {
            return image.samples();
        }
        double[] m = new double[n];
        for (int i = 0; i < n; i++) {
            m[i] = 255 * (matte[i] - space.min(i)) / (space.max(i) - space.min(i));
        }
        byte[] out = new byte[image.samples().length];
        for (int y = 0; y < image.height(); y++) {
            int ay = (int) ((long) y * alpha.height() / image.height());
            for (int x = 0; x < image.width(); x++) {
                int ax = (int) ((long) x * alpha.width() / image.width());
                double a = (alpha.samples()[ay * alpha.width() + ax] & 255) / 255.0;
                int at = (y * image.width() + x) * n;
                for (int i = 0; i < n; i++) {
                    int c = image.samples()[at + i] & 255;
                    double undone = a == 0 ? c : m[i] + (c - m[i]) / a;
                    out[at + i] = (byte) Math.round(Math.max(0, Math.min(255, undone)));
                }
            }
        }
        return out;
    }
}
