package inkground.plate;

import inkground.artwork.TintTransform;
import inkground.artwork.Transfer;

/** A transfer function of the process inks as tables. Immutable. */
final class TransferTables {
    private static final int STEPS = 255;

    private final int[][] tables;

    TransferTables(Transfer transfer) {
        tables = new int[transfer.functions().size()][STEPS + 2];
        for (int p = 0; p < tables.length; p++) {
            fill(tables[p], transfer.functions().get(p));
        }
    }

    private static void fill(int[] table, TintTransform function) {
        float[] light = new float[1];
        float[] out = new float[function.outputs()];
        for (int step = 0; step <= STEPS; step++) {
            light[0] = 1 - (float) step / STEPS; // the functions speak of light, not of ink
            function.apply(light, out);
            table[step] = Fixed.tint(1 - out[0]);
        }
        table[STEPS + 1] = table[STEPS];
    }

    /** @return whether tints of this plane change */
    boolean concerns(int plane) {
        return plane >= 0 && plane < tables.length;
    }

    /** @return the tint that a tint of a process plane becomes */
    int apply(int plane, int tint) {
        int[] table = tables[plane];
        int step = tint >> 8;
        return table[step] + ((table[step + 1] - table[step]) * (tint & 255) >> 8);
    }

    /** The same for a flat colour; planes that it does not touch stay untouched. */
    Inking of(Inking inking) {
        int[] tints = inking.tints().clone();
        for (int p = 0; p < tables.length && p < tints.length; p++) {
            if ((inking.touched() >> p & 1) != 0) {
                tints[p] = apply(p, tints[p]);
            }
        }
        return new Inking(tints, inking.inks(), inking.touched());
    }

    /** The same for tints that vary. */
    PixelSource of(PixelSource source) {
        int[] planes = source.planes();
        return new PixelSource() {
            @Override
            public int[] planes() {
                return planes;
            }

            @Override
            public Extent cell(int deviceX, int deviceY, int[][] tints, int[] cover) {
                Extent extent = source.cell(deviceX, deviceY, tints, cover);
                for (int k = 0; extent != Extent.NONE && k < planes.length; k++) {
                    if (concerns(planes[k])) {
                        for (int i = 0; i < tints[k].length; i++) {
                            tints[k][i] = apply(planes[k], tints[k][i]);
                        }
                    }
                }
                return extent;
            }
        };
    }
}
