package inkground.plate;

/**
 * Brings the colours of a finished isolated group from its own space to that of what is around it, at any depth: ISO 32000-2
 * §11.6.6, §11.7.2.
 */
final class GroupEdge {
    /** Changes the first four tints of a colour, not premultiplied. */
    @FunctionalInterface
    private interface Conversion {
        void apply(int[] tints);
    }

    private final Conversion conversion;

    /**
     * @param group mapping inside the group
     * @param around mapping of the group or page around it
     */
    GroupEdge(ColourMapping group, ColourMapping around) {
        if (around instanceof GroupMapping outer) {
            conversion = group instanceof GroupMapping inner && inner.kind() == GroupMapping.Kind.GREY
                    ? outer::fromGrey
                    : outer::fromColours;
        } else {
            conversion = ((GroupMapping) group)::toProcess;
        }
    }

    /** Converts one cell. */
    void convert(Surface group, int col) {
        int alphaAll = group.uniform(group.mark(), col);
        boolean flat = group.dense(group.mark(), col) == null;
        for (int p = 0; p < 4; p++) {
            flat &= group.dense(p, col) == null;
        }
        int[] tints = new int[4];
        if (flat) {
            for (int p = 0; p < 4; p++) {
                tints[p] = group.uniform(p, col);
            }
            convert(tints, alphaAll);
            for (int p = 0; p < 4; p++) {
                group.set(p, col, tints[p]);
            }
            return;
        }
        int[][] planes = new int[4][];
        for (int p = 0; p < 4; p++) {
            planes[p] = group.densify(p, col);
        }
        int[] alpha = group.dense(group.mark(), col);
        int[] before = {-1, -1, -1, -1, -1};
        for (int i = 0; i < CoverBand.CELL; i++) {
            int a = alpha == null ? alphaAll : alpha[i];
            boolean same = a == before[4];
            for (int p = 0; p < 4; p++) {
                same &= planes[p][i] == before[p];
            }
            if (!same) {
                for (int p = 0; p < 4; p++) {
                    before[p] = planes[p][i];
                    tints[p] = planes[p][i];
                }
                before[4] = a;
                convert(tints, a);
            }
            for (int p = 0; p < 4; p++) {
                planes[p][i] = tints[p];
            }
        }
    }

    /** Undoes the premultiplication, converts, and redoes it. */
    private void convert(int[] tints, int alpha) {
        if (alpha == 0 || (tints[0] | tints[1] | tints[2] | tints[3]) == 0) {
            return; // white is white in every space
        }
        for (int p = 0; p < 4; p++) {
            tints[p] = (int) Math.min(Fixed.TINT_ONE, ((long) tints[p] * Fixed.TINT_ONE + alpha / 2) / alpha);
        }
        conversion.apply(tints);
        for (int p = 0; p < 4; p++) {
            tints[p] = (int) Math.rint((double) tints[p] * alpha / Fixed.TINT_ONE);
        }
    }
}
