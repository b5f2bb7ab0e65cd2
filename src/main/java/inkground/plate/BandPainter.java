package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.base.Cancel;
import java.util.ArrayDeque;
import java.util.IdentityHashMap;
import java.util.Map;

/** Paints one band at a time. Belongs to one thread; keeps its scratch from band to band. */
final class BandPainter {
    /** Clips kept per band; a page with more than these in turn rasterises some twice. */
    private static final int CLIPS_KEPT = 64;

    private final CellPool pool = new CellPool();
    private final ArrayDeque<CoverBand> spareBands = new ArrayDeque<>();
    private final Map<PreparedClip, CoverBand> clips = new IdentityHashMap<>();
    private final Map<PreparedMask, Veil> masks = new IdentityHashMap<>();
    private final Cancel cancel;

    private int bandX;
    private int bandY;
    private int width;
    private int cols;

    /** A soft mask over one band: per cell one cover, or one per pixel. */
    private record Veil(int[] all, int[][] cover) {}

    BandPainter(Cancel cancel) {
        this.cancel = cancel;
    }

    /**
     * Paints the band whose top left device pixel is ({@code x}, {@code y}).
     *
     * @param out receives the cells from {@code at}
     */
    void paint(PreparedList list, int tintPlanes, int x, int y, int widthPx, InkPlanes.Cell[] out, int at) {
        bandX = x;
        bandY = y;
        width = widthPx;
        cols = (widthPx + CELL_W - 1) / CELL_W;
        Surface surface = new Surface(tintPlanes + 2, cols, pool);
        paint(list, surface);
        for (int c = 0; c < cols; c++) {
            out[at + c] = surface.toCell(c);
        }
        surface.release();
        clips.values().forEach(this::give);
        clips.clear();
        for (Veil veil : masks.values()) {
            for (int[] cell : veil.cover) {
                if (cell != null) {
                    pool.give(cell);
                }
            }
        }
        masks.clear();
    }

    private void paint(PreparedList list, Surface surface) {
        list.forRows(bandY, bandY + CELL_H, op -> {
            if (op.left() < bandX + width && op.right() > bandX) {
                cancel.check();
                paint(op, surface);
            }
        });
    }

    private void paint(PreparedOp op, Surface surface) {
        int first = Math.max(0, (op.left() - bandX) / CELL_W);
        int last = Math.min(cols - 1, (op.right() - 1 - bandX) / CELL_W);
        CoverBand clip = clipOf(op.clip());
        CoverBand shape = null;
        if (op.shape() != null) {
            shape = takeBand();
            shape.fill(op.shape().get(), op.rule(), bandX, bandY, width);
            first = Math.max(first, shape.firstCol());
            last = Math.min(last, shape.lastCol());
        }
        if (op.filling() instanceof Filling.Content content) {
            group(op, content, shape, clip, first, last, surface);
        } else {
            Veil veil = veilOf(op.mask());
            for (int col = first; col <= last; col++) {
                cell(op, col, shape, clip, veil, surface);
            }
        }
        if (shape != null) {
            give(shape);
        }
    }

    private void cell(PreparedOp op, int col, CoverBand shape, CoverBand clip, Veil veil, Surface surface) {
        Cover cover = coverOf(op, col, shape, clip, veil);
        if (cover.nothing()) {
            return;
        }
        if (op.filling() instanceof Filling.Flat flat) {
            flat(flat.inking(), col, cover, surface);
        } else {
            varied((Filling.Varied) op.filling(), col, cover, surface);
        }
        cover.release();
    }

    /** How much of each pixel of a cell an operation covers: one value, or one per pixel. */
    private final class Cover {
        int all = Fixed.COVER_ONE;
        int[] cells;
        private boolean owned;

        boolean nothing() {
            return cells == null && all == 0;
        }

        void times(int factor) {
            if (factor == Fixed.COVER_ONE) {
                return;
            }
            if (cells == null) {
                all = Fixed.times(all, factor);
                return;
            }
            int[] mine = own();
            for (int i = 0; i < mine.length; i++) {
                mine[i] = Fixed.times(mine[i], factor);
            }
        }

        void times(int[] factors) {
            if (cells == null && all == Fixed.COVER_ONE) {
                cells = factors;
                owned = false;
                return;
            }
            int[] mine = own();
            for (int i = 0; i < mine.length; i++) {
                mine[i] = Fixed.times(mine[i], factors[i]);
            }
        }

        void times(CoverBand band, int col) {
            if (band.state[col] == CoverBand.NONE) {
                release();
                all = 0;
            } else if (band.state[col] == CoverBand.MIXED && !nothing()) {
                times(band.cover[col]);
            }
        }

        /** Takes an array that came from the pool. */
        void adopt(int[] array) {
            if (cells == null && all == Fixed.COVER_ONE) {
                cells = array;
                owned = true;
            } else {
                times(array);
                pool.give(array);
            }
        }

        private int[] own() {
            if (!owned) {
                int[] copy = pool.take();
                if (cells == null) {
                    java.util.Arrays.fill(copy, all);
                } else {
                    System.arraycopy(cells, 0, copy, 0, copy.length);
                }
                cells = copy;
                owned = true;
            }
            return cells;
        }

        void release() {
            if (owned) {
                pool.give(cells);
            }
            cells = null;
            owned = false;
        }
    }

    private Cover coverOf(PreparedOp op, int col, CoverBand shape, CoverBand clip, Veil veil) {
        Cover cover = new Cover();
        if (shape != null) {
            cover.times(shape, col);
        }
        if (clip != null && !cover.nothing()) {
            cover.times(clip, col);
        }
        if (op.stencil() != null && !cover.nothing()) {
            int[] cells = pool.take();
            op.stencil().cell(bandX + col * CELL_W, bandY, cells);
            cover.adopt(cells);
        }
        if (veil != null && !cover.nothing()) {
            if (veil.cover[col] == null) {
                cover.times(veil.all[col]);
            } else {
                cover.times(veil.cover[col]);
            }
        }
        if (!cover.nothing()) {
            cover.times(op.cover());
        }
        return cover;
    }

    private void flat(Inking inking, int col, Cover cover, Surface surface) {
        int[] tints = inking.tints();
        for (int p = 0; p < tints.length; p++) {
            if ((inking.touched() >> p & 1) != 0) {
                surface.mix(p, col, tints[p], cover.cells, cover.all);
            }
        }
        surface.mix(surface.mark(), col, Fixed.TINT_ONE, cover.cells, cover.all);
        if (inking.inked()) {
            surface.mix(surface.inked(), col, Fixed.TINT_ONE, cover.cells, cover.all);
        }
    }

    private void varied(Filling.Varied varied, int col, Cover cover, Surface surface) {
        int[] planes = varied.source().planes();
        int[][] tints = new int[planes.length][];
        for (int k = 0; k < planes.length; k++) {
            tints[k] = pool.take();
        }
        int[] own = pool.take();
        if (varied.source().cell(bandX + col * CELL_W, bandY, tints, own)) {
            cover.times(own);
        }
        long given = 0;
        for (int k = 0; k < planes.length; k++) {
            if (planes[k] >= 0 && (varied.touched() >> planes[k] & 1) != 0) {
                surface.mix(planes[k], col, tints[k], cover.cells, cover.all);
                given |= 1L << planes[k];
            }
        }
        for (int p = 0; p < surface.mark(); p++) {
            if ((varied.touched() >> p & 1) != 0 && (given >> p & 1) == 0) {
                surface.mix(p, col, 0, cover.cells, cover.all);
            }
        }
        surface.mix(surface.mark(), col, Fixed.TINT_ONE, cover.cells, cover.all);
        inkedOf(planes, tints, own);
        inked(surface, col, own, cover);
        for (int[] cell : tints) {
            pool.give(cell);
        }
        pool.give(own);
    }

    /** Where any tint is above none, by pixel. */
    private static void inkedOf(int[] planes, int[][] tints, int[] out) {
        java.util.Arrays.fill(out, 0);
        for (int k = 0; k < planes.length; k++) {
            if (planes[k] >= 0) {
                int[] tint = tints[k];
                for (int i = 0; i < out.length; i++) {
                    out[i] |= tint[i];
                }
            }
        }
    }

    /** What was inked once stays inked: only pixels that get ink now move. */
    private void inked(Surface surface, int col, int[] any, Cover cover) {
        int[] gain = pool.take();
        for (int i = 0; i < gain.length; i++) {
            gain[i] = any[i] == 0 ? 0 : cover.cells == null ? cover.all : cover.cells[i];
        }
        surface.mix(surface.inked(), col, Fixed.TINT_ONE, gain, 0);
        pool.give(gain);
    }

    private void group(
            PreparedOp op,
            Filling.Content content,
            CoverBand shape,
            CoverBand clip,
            int first,
            int last,
            Surface surface) {
        boolean plain = shape == null && op.stencil() == null && op.mask() == null && op.cover() == Fixed.COVER_ONE;
        if (plain && content.paintsThrough()) {
            paint(content.list(), surface);
            return;
        }
        Surface own = new Surface(surface.planes, cols, pool);
        if (!content.isolated()) {
            own.copyFrom(surface, first, last);
        }
        paint(content.list(), own);
        Veil veil = veilOf(op.mask());
        for (int col = first; col <= last; col++) {
            Cover cover = coverOf(op, col, shape, clip, veil);
            if (!cover.nothing()) {
                if (content.isolated()) {
                    surface.over(own, col, cover.cells, cover.all);
                } else {
                    surface.mixTo(own, col, cover.cells, cover.all);
                }
            }
            cover.release();
        }
        own.release();
    }

    private CoverBand clipOf(PreparedClip clip) {
        if (clip == null) {
            return null;
        }
        CoverBand made = clips.get(clip);
        if (made == null) {
            CoverBand outer = clipOf(clip.parent());
            if (clips.size() >= CLIPS_KEPT) {
                forgetClips(clip);
                outer = clipOf(clip.parent());
            }
            made = takeBand();
            made.fill(clip.edges(), clip.rule(), bandX, bandY, width);
            if (outer != null) {
                made.times(outer);
            }
            clips.put(clip, made);
        }
        return made;
    }

    /** Forgets all clips but the ancestors of {@code of}. */
    private void forgetClips(PreparedClip of) {
        clips.entrySet().removeIf(entry -> {
            for (PreparedClip c = of; c != null; c = c.parent()) {
                if (c == entry.getKey()) {
                    return false;
                }
            }
            give(entry.getValue());
            return true;
        });
    }

    private Veil veilOf(PreparedMask mask) {
        if (mask == null) {
            return null;
        }
        Veil veil = masks.get(mask);
        if (veil == null) {
            veil = makeVeil(mask);
            masks.put(mask, veil);
        }
        return veil;
    }

    private Veil makeVeil(PreparedMask mask) {
        Surface surface = new Surface(mask.tintPlanes() + 2, cols, pool);
        paint(mask.content(), surface);
        Veil veil = new Veil(new int[cols], new int[cols][]);
        int mark = surface.mark();
        for (int col = 0; col < cols; col++) {
            int[] alpha = surface.dense(mark, col);
            int[] dark = surface.dense(0, col);
            int alphaAll = surface.uniform(mark, col);
            int darkAll = surface.uniform(0, col);
            if (alpha == null && (dark == null || !mask.luminosity())) {
                veil.all[col] = veil(mask, alphaAll, darkAll);
                continue;
            }
            int[] cover = pool.take();
            for (int i = 0; i < cover.length; i++) {
                cover[i] = veil(mask, alpha == null ? alphaAll : alpha[i], dark == null ? darkAll : dark[i]);
            }
            veil.cover[col] = cover;
        }
        surface.release();
        return veil;
    }

    private static int veil(PreparedMask mask, int alpha, int dark) {
        int value = alpha;
        if (mask.luminosity()) {
            // the group over its backdrop: premultiplied darkness plus what shows of the backdrop's
            int rest = (int) ((long) (Fixed.TINT_ONE - alpha) * mask.backdropDarkness() / Fixed.TINT_ONE);
            value = Math.max(0, Fixed.TINT_ONE - dark - rest);
        }
        int step = value >> 8;
        int next = Math.min(255, step + 1);
        int from = mask.transfer()[step];
        return from + ((mask.transfer()[next] - from) * (value & 255) >> 8);
    }

    private CoverBand takeBand() {
        CoverBand band = spareBands.poll();
        return band != null ? band : new CoverBand(pool);
    }

    private void give(CoverBand band) {
        band.release();
        spareBands.push(band);
    }
}
