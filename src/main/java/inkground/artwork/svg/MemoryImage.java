package inkground.artwork.svg;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import java.awt.image.BufferedImage;

/** A rasterised part: sRGB with alpha, in memory. */
record MemoryImage(Pixels decode) implements ImageSource {
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();

    static MemoryImage of(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        byte[] colour = new byte[width * height * 3];
        byte[] alpha = new byte[width * height];
        int[] row = new int[width];
        for (int y = 0, at = 0; y < height; y++) {
            image.getRGB(0, y, width, 1, row, 0, width);
            for (int x = 0; x < width; x++, at++) {
                colour[3 * at] = (byte) (row[x] >> 16);
                colour[3 * at + 1] = (byte) (row[x] >> 8);
                colour[3 * at + 2] = (byte) row[x];
                alpha[at] = (byte) (row[x] >>> 24);
            }
        }
        return new MemoryImage(new Pixels(width, height, 3, colour, new Pixels(width, height, 1, alpha, null)));
    }

    @Override
    public int width() {
        return decode.width();
    }

    @Override
    public int height() {
        return decode.height();
    }

    @Override
    public ColourSpace space() {
        return RGB;
    }

    @Override
    public boolean interpolate() {
        return true;
    }

    @Override
    public int bits() {
        return 8;
    }

    // equal only to itself, as every image source
    @Override
    public boolean equals(Object o) {
        return this == o;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
