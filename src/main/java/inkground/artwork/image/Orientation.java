package inkground.artwork.image;

import inkground.artwork.ImageSource.Pixels;

/**
 * How a stored image is turned to stand upright: the Orientation tag, 274, of TIFF 6.0 and Exif.
 *
 * @param tag 1 (upright) to 8
 */
record Orientation(int tag) {
    static final Orientation UPRIGHT = new Orientation(1);

    /** Anything but 1 to 8 means upright. */
    Orientation {
        tag = tag >= 1 && tag <= 8 ? tag : 1;
    }

    /** @return whether width and height change places */
    boolean swaps() {
        return tag >= 5;
    }

    /** @return the image upright; the same object when it is already */
    Pixels apply(Pixels stored) {
        if (tag == 1) {
            return stored;
        }
        Pixels mask = stored.mask() == null ? null : apply(stored.mask());
        int w = stored.width();
        int h = stored.height();
        int n = stored.components();
        int outWidth = swaps() ? h : w;
        int outHeight = swaps() ? w : h;
        byte[] in = stored.samples();
        byte[] out = new byte[in.length];
        for (int y = 0, o = 0; y < outHeight; y++) {
            for (int x = 0; x < outWidth; x++, o += n) {
                System.arraycopy(in, source(x, y, w, h) * n, out, o, n);
            }
        }
        return new Pixels(outWidth, outHeight, n, out, mask);
    }

    /** Which stored sample comes to (x, y) of the upright image. */
    private int source(int x, int y, int w, int h) {
        return switch (tag) {
            case 2 -> y * w + (w - 1 - x);
            case 3 -> (h - 1 - y) * w + (w - 1 - x);
            case 4 -> (h - 1 - y) * w + x;
            case 5 -> x * w + y;
            case 6 -> (h - 1 - x) * w + y;
            case 7 -> (h - 1 - x) * w + (w - 1 - y);
            case 8 -> x * w + (w - 1 - y);
            default -> y * w + x;
        };
    }
}
