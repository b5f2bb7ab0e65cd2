package inkground.plate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/** Operations at one scale, in painting order, with an index by rows so that a band meets only what can show in it. */
final class PreparedList {
    private static final int BLOCK = InkPlanes.CELL_H;

    /** Lists shorter than this are simply walked. */
    private static final int INDEX_FROM = 32;

    private final PreparedOp[] ops;
    private final int firstBlock;
    private final int[] start;
    private final int[] entries;

    PreparedList(List<PreparedOp> list) {
        this.ops = list.toArray(PreparedOp[]::new);
        if (ops.length < INDEX_FROM) {
            firstBlock = 0;
            start = null;
            entries = null;
            return;
        }
        firstBlock = Arrays.stream(ops).mapToInt(op -> block(op.top())).min().getAsInt();
        int blocks =
                Arrays.stream(ops).mapToInt(op -> block(op.bottom() - 1)).max().getAsInt() - firstBlock + 1;
        start = new int[blocks + 1];
        for (PreparedOp op : ops) {
            for (int b = block(op.top()); b <= block(op.bottom() - 1); b++) {
                start[b - firstBlock + 1]++;
            }
        }
        for (int b = 0; b < blocks; b++) {
            start[b + 1] += start[b];
        }
        int[] fill = start.clone();
        entries = new int[start[blocks]];
        for (int i = 0; i < ops.length; i++) {
            for (int b = block(ops[i].top()); b <= block(ops[i].bottom() - 1); b++) {
                entries[fill[b - firstBlock]++] = i;
            }
        }
    }

    /** @param cells the operations of each cell of a pattern, to be painted one cell after the other */
    static PreparedList ofCells(List<List<PreparedOp>> cells) {
        return new PreparedList(cells.stream().flatMap(List::stream).toList());
    }

    /**
     * Cells that do not overlap may be painted in any order: so the first operation of every cell, then the second, each in
     * all cells as one shape, since cells that abut leave no seam: ISO 32000-2 §8.7.3.
     *
     * @param cells the operations of each cell
     */
    static PreparedList ofCellsApart(List<List<PreparedOp>> cells) {
        int each = cells.isEmpty() ? 0 : cells.get(0).size();
        if (cells.stream().anyMatch(cell -> cell.size() != each)) { // some beyond the rim of what can be addressed
            return ofCells(cells);
        }
        List<PreparedOp> out = new ArrayList<>();
        for (int k = 0; k < each; k++) {
            PreparedOp first = cells.get(0).get(k);
            List<PreparedOp> others = new ArrayList<>();
            for (List<PreparedOp> cell : cells.subList(1, cells.size())) {
                others.add(cell.get(k));
            }
            if (others.stream().allMatch(first::samePaint)) {
                out.add(first.repeated(others));
            } else {
                out.add(first);
                out.addAll(others);
            }
        }
        return new PreparedList(out);
    }

    private static int block(int row) {
        return Math.floorDiv(row, BLOCK);
    }

    int size() {
        return ops.length;
    }

    /** @return all operations in painting order; not to be changed */
    PreparedOp[] all() {
        return ops;
    }

    /** Visits, in painting order, every operation that can show in rows {@code y0 <= y < y1}, at most one block high. */
    void forRows(int y0, int y1, Consumer<PreparedOp> visitor) {
        if (start == null) {
            for (PreparedOp op : ops) {
                offer(op, y0, y1, visitor);
            }
            return;
        }
        int a = Math.max(0, block(y0) - firstBlock);
        int b = Math.min(start.length - 2, block(y1 - 1) - firstBlock);
        if (a > b) {
            return;
        }
        // a band that is not aligned to the blocks meets two of them: merge both in order, without repeats
        int i = start[a];
        int j = a == b ? start[a + 1] : start[b];
        int iEnd = start[a + 1];
        int jEnd = a == b ? j : start[b + 1];
        while (i < iEnd || j < jEnd) {
            int next;
            if (j >= jEnd || i < iEnd && entries[i] <= entries[j]) {
                next = entries[i++];
                if (j < jEnd && entries[j] == next) {
                    j++;
                }
            } else {
                next = entries[j++];
            }
            offer(ops[next], y0, y1, visitor);
        }
    }

    private static void offer(PreparedOp op, int y0, int y1, Consumer<PreparedOp> visitor) {
        if (op.top() < y1 && op.bottom() > y0) {
            visitor.accept(op);
        }
    }
}
