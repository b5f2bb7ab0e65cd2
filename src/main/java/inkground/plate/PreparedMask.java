package inkground.plate;

/**
 * A soft mask at one scale.
 *
 * @param content what is painted to get it, with a {@link LuminosityMapping} or, for an alpha mask, any mapping
 * @param luminosity whether luminosity, else alpha, is the mask
 * @param tintPlanes planes of the mapping
 * @param backdropDarkness darkness under a luminosity group, 0 to {@link Fixed#TINT_ONE}
 * @param transfer mask value (0 to 255) to coverage
 */
record PreparedMask(PreparedList content, boolean luminosity, int tintPlanes, int backdropDarkness, int[] transfer) {
    @Override
    public boolean equals(Object o) {
        return this == o;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
