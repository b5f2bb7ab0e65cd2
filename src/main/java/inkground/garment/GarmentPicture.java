package inkground.garment;

import inkground.appearance.Grain;
import java.util.stream.IntStream;

/** Puts cloth, print and light together. */
public final class GarmentPicture {
    private GarmentPicture() {}

    /**
     * Artwork painted on the substrate's colour, to be laid into the picture.
     *
     * @param argb opaque sRGB, row by row
     * @param x left pixel, in pixels of the garment
     * @param y top pixel, in pixels of the garment
     * @param width of a row
     * @param height rows
     */
    public record Print(int[] argb, int x, int y, int width, int height) {}

    /**
     * Paints a region. Fabric and print are shaded together; what does not lie on printable cloth is not printed.
     *
     * @param cloth the region's light
     * @param grain of the fabric, of the same region; null for none
     * @param strength of the grain, 0 to 1
     * @param substrateArgb colour of the cloth
     * @param print null for none
     * @param out receives premultiplied sRGB, row by row: the garment, its shadow as black of some alpha, and nothing beside
     */
    public static void paint(
            ClothLight cloth, Grain grain, double strength, int substrateArgb, Print print, int[] out) {
        GarmentRequest r = cloth.request();
        IntStream.range(0, r.height()).parallel().forEach(y -> {
            int at = y * r.width();
            int printRow = print == null ? -1 : r.y0() + y - print.y();
            boolean printed = printRow >= 0 && printRow < print.height();
            for (int x = 0; x < r.width(); x++, at++) {
                int cover = cloth.cover[at] & 255;
                int shadow = cloth.shadow[at] & 255;
                if (cover == 0) {
                    out[at] = shadow << 24;
                    continue;
                }
                int colour = substrateArgb;
                int takes = cloth.print[at] & 255;
                if (printed && takes > 0) {
                    int column = r.x0() + x - print.x();
                    if (column >= 0 && column < print.width()) {
                        int ink = print.argb()[printRow * print.width() + column];
                        colour = takes == 255 ? ink : mix(substrateArgb, ink, takes);
                    }
                }
                int light = cloth.light[at];
                if (grain != null) {
                    light = grain.shade(light, at, strength);
                }
                out[at] = lit(colour, light, cover, shadow);
            }
        });
    }

    private static int lit(int colour, int light, int cover, int shadow) {
        int r = Math.min(255, (colour >> 16 & 255) * light + ClothLight.ONE / 2 >> 12);
        int g = Math.min(255, (colour >> 8 & 255) * light + ClothLight.ONE / 2 >> 12);
        int b = Math.min(255, (colour & 255) * light + ClothLight.ONE / 2 >> 12);
        if (cover == 255) {
            return 0xff000000 | r << 16 | g << 8 | b;
        }
        int alpha = cover + (255 - cover) * shadow / 255;
        return alpha << 24 | r * cover / 255 << 16 | g * cover / 255 << 8 | b * cover / 255;
    }

    private static int mix(int under, int over, int share) {
        int out = 0xff;
        for (int shift = 16; shift >= 0; shift -= 8) {
            int a = under >> shift & 255;
            int b = over >> shift & 255;
            out = out << 8 | a + ((b - a) * share + 127) / 255;
        }
        return out;
    }

    /** @return a premultiplied pixel laid over an opaque one */
    public static int over(int premultiplied, int ground) {
        int rest = 255 - (premultiplied >>> 24);
        int out = 0xff;
        for (int shift = 16; shift >= 0; shift -= 8) {
            out = out << 8
                    | Math.min(255, (premultiplied >> shift & 255) + ((ground >> shift & 255) * rest + 127) / 255);
        }
        return out;
    }
}
