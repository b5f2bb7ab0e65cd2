package inkground.plate;

import java.util.Arrays;

/**
 * What one flat colour does to the planes.
 *
 * @param tints per plane, 0 to {@link Fixed#TINT_ONE}
 * @param inks how many of them are inks; one beyond them is the bare plane, which leaves no ink
 * @param touched bit {@code i} set where ink {@code i} is replaced; a clear bit leaves the ink as it is (overprint)
 */
record Inking(int[] tints, int inks, long touched) {
    /** Paints nothing at all: the colorant None. */
    static final Inking NOTHING = new Inking(new int[0], 0, 0);

    /** @return whether any ink is laid down */
    boolean inked() {
        for (int i = 0; i < inks; i++) {
            if (tints[i] > 0 && (touched >> i & 1) != 0) {
                return true;
            }
        }
        return false;
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof Inking i && touched == i.touched && inks == i.inks && Arrays.equals(tints, i.tints);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(tints) * 31 + Long.hashCode(touched);
    }
}
