package inkground.appearance;

import inkground.plate.InkPlanes;

/** One ink as its printing plate or screen is made from: black where it is solid, white where it is not, whatever its colour. */
public final class PlateMap {
    private PlateMap() {}

    /**
     * Paints the plate of one ink over all pixels of the planes.
     *
     * @param plane which ink
     * @param argb receives 0xffRRGGBB, grey of even steps from white for no tint to black for the solid
     * @param offset of the first pixel
     * @param stride pixels from row to row
     */
    public static void paint(InkPlanes planes, int plane, int[] argb, int offset, int stride) {
        byte[] tints = new byte[planes.width()];
        for (int y = 0; y < planes.height(); y++) {
            planes.row(plane, y, tints, 0);
            for (int x = 0; x < tints.length; x++) {
                int grey = 255 - (tints[x] & 255);
                argb[offset + y * stride + x] = 0xff000000 | grey << 16 | grey << 8 | grey;
            }
        }
    }
}
