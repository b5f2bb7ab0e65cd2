package inkground.plate;

/**
 * What is composited onto one cell: tints that are not premultiplied, and how they meet the backdrop.
 *
 * @param flat per plane one tint; used where {@code varied} has none
 * @param varied per plane one tint per pixel, or null
 * @param touched planes that are replaced; the others keep what the backdrop has
 * @param anyInk per pixel not 0 where ink is laid down; null when it is everywhere or nowhere, by {@code inked}
 * @param inked whether any ink is laid down
 */
record Element(int[] flat, int[][] varied, long touched, int[] anyInk, boolean inked) {
    boolean touches(int plane) {
        return (touched >> plane & 1) != 0;
    }

    boolean touchesAll(int planes) {
        long all = planes == 64 ? -1L : (1L << planes) - 1;
        return (touched & all) == all;
    }

    int tint(int plane, int pixel) {
        return varied != null && varied[plane] != null ? varied[plane][pixel] : flat[plane];
    }
}
