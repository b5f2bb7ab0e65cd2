package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.artwork.BlendMode;
import inkground.artwork.Op;
import inkground.base.Cancel;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;

/** Paints one band at a time. Belongs to one thread; keeps its scratch from band to band. */
final class BandPainter {
    private final CellPool pool = new CellPool();
    private final ArrayDeque<CoverBand> spareBands = new ArrayDeque<>();
    private final ClipCovers clips = new ClipCovers(this::rasterise, this::takeBand, this::give);
    private final Map<PreparedMask, Veil> masks = new IdentityHashMap<>();
    private final Cancel cancel;
    private final Compositor compositor = new Compositor(pool);

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
        Surface surface = new Surface(tintPlanes, cols, pool);
        paint(list, surface);
        for (int c = 0; c < cols; c++) {
            out[at + c] = surface.toCell(c);
        }
        surface.release();
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
        CoverBand shape = null;
        if (op.shape() != null) {
            shape = takeBand();
            shape.fill(op.shape().get(), op.rule(), bandX, bandY, width);
            if (!op.joined().isEmpty() || op.repeats() != null) {
                join(op, shape);
            }
            first = Math.max(first, shape.firstCol());
            last = Math.min(last, shape.lastCol());
        }
        if (op.filling() instanceof Filling.Content content) {
            group(op, content, shape, first, last, surface);
        } else if (op.filling() instanceof Filling.Steps steps) {
            boolean tracks = surface.tracks || surface.knockout;
            Surface own = new Surface(surface.tints, cols, pool, false, null, tracks);
            steps.raster().paint(own, first, last, bandX, bandY, pool);
            lay(op, own, null, shape, first, last, surface);
        } else {
            // the mask first: painting it may make so many clips that one made before is forgotten
            Veil veil = veilOf(op.mask());
            CoverBand clip = clips.of(op.clip());
            for (int col = first; col <= last; col++) {
                cell(op, col, shape, clip, veil, surface);
            }
        }
        if (shape != null) {
            give(shape);
        }
    }

    /** Adds the shapes that share the paint of {@code op}. */
    private void join(PreparedOp op, CoverBand shape) {
        CoverBand other = takeBand();
        for (PreparedOp next : op.joined()) {
            if (next.top() < bandY + CELL_H && next.bottom() > bandY) {
                add(next, other, shape);
            }
        }
        if (op.repeats() != null) {
            op.repeats().forRows(bandY, bandY + CELL_H, next -> add(next, other, shape));
        }
        give(other);
    }

    private void add(PreparedOp next, CoverBand scratch, CoverBand shape) {
        if (next.left() < bandX + width && next.right() > bandX) {
            cancel.check();
            scratch.fill(next.shape().get(), next.rule(), bandX, bandY, width);
            shape.plus(scratch);
        }
    }

    private void cell(PreparedOp op, int col, CoverBand shape, CoverBand clip, Veil veil, Surface surface) {
        Cover cover = shapeOf(op, col, shape, clip);
        if (cover.nothing()) {
            return;
        }
        Element element;
        int[][] scratch = null;
        Cover outline = null; // the shape, where it is not the cover that results
        if (op.filling() instanceof Filling.Flat flat) {
            Inking inking = flat.inking();
            element = new Element(inking.tints(), null, inking.touched(), null, inking.inked());
        } else {
            scratch = new int[surface.tints + 1][];
            Filling.Varied varied = (Filling.Varied) op.filling();
            outline = varied.coverIsOpacity() && (surface.tracks || surface.knockout) ? cover.copy() : null;
            element = varied(varied, col, cover, scratch);
            if (cover.nothing() && outline == null) { // a source that covers nothing here has no shape here either
                giveAll(scratch);
                return;
            }
        }
        boolean opaque = veil == null && op.cover() == Fixed.COVER_ONE;
        if (outline == null) {
            outline = opaque || !surface.tracks && !surface.knockout ? cover : cover.copy();
        }
        opacity(op, col, veil, cover);
        if (outline != cover && op.op().style().alphaIsShape()) {
            outline.release();
            outline = cover;
        }
        if (!cover.nothing() || surface.knockout) {
            compositor.composite(surface, col, element, cover, outline, op.mode());
        }
        cover.release();
        if (outline != cover) {
            outline.release();
        }
        if (scratch != null) {
            giveAll(scratch);
        }
    }

    private void giveAll(int[][] cells) {
        for (int[] cell : cells) {
            if (cell != null) {
                pool.give(cell);
            }
        }
    }

    /** What the operation's path, clip and stencil cover. */
    private Cover shapeOf(PreparedOp op, int col, CoverBand shape, CoverBand clip) {
        Cover cover = new Cover(pool);
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
        return cover;
    }

    /** Takes soft mask and constant alpha into the cover. */
    private static void opacity(PreparedOp op, int col, Veil veil, Cover cover) {
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
    }

    /**
     * Evaluates a source over a cell.
     *
     * @param cover narrowed to what the source covers
     * @param scratch receives the arrays to be given back
     */
    private Element varied(Filling.Varied varied, int col, Cover cover, int[][] scratch) {
        int[] planes = varied.source().planes();
        int[][] given = new int[planes.length][];
        for (int k = 0; k < planes.length; k++) {
            given[k] = pool.take();
        }
        int[] own = pool.take();
        PixelSource.Extent extent = varied.source().cell(bandX + col * CELL_W, bandY, given, own);
        if (extent == PixelSource.Extent.SOME) {
            cover.adopt(own);
            own = pool.take();
        } else if (extent == PixelSource.Extent.NONE) {
            cover.times(0);
        }
        int tints = scratch.length - 1;
        int[][] byPlane = new int[tints][];
        Arrays.fill(own, 0);
        for (int k = 0; k < planes.length; k++) {
            if (planes[k] >= 0 && extent != PixelSource.Extent.NONE) {
                byPlane[planes[k]] = given[k];
                scratch[planes[k]] = given[k];
                if (planes[k] < varied.inks()) {
                    for (int i = 0; i < own.length; i++) {
                        own[i] |= given[k][i];
                    }
                }
            } else {
                pool.give(given[k]);
            }
        }
        scratch[tints] = own;
        return new Element(new int[tints], byPlane, varied.touched(), own, true);
    }

    private void group(PreparedOp op, Filling.Content content, CoverBand shape, int first, int last, Surface surface) {
        boolean plain = shape == null
                && op.stencil() == null
                && op.mask() == null
                && op.cover() == Fixed.COVER_ONE
                && op.mode() == BlendMode.NORMAL;
        if (plain && content.paintsThrough() && !surface.knockout) {
            paint(content.list(), surface);
            return;
        }
        Surface backdrop = surface.knockout ? surface.initial : surface;
        boolean isolated = content.isolated() || backdrop == null;
        boolean tracks = !isolated || content.knockout() || surface.tracks || surface.knockout;
        Surface own = new Surface(surface.tints, cols, pool, content.knockout(), isolated ? null : backdrop, tracks);
        if (!isolated) {
            own.copyFrom(backdrop, first, last);
        }
        paint(content.list(), own);
        lay(op, own, content.edge(), shape, first, last, surface);
    }

    /**
     * Lays a finished group over what is there.
     *
     * @param own the group; released
     * @param edge brings its colours to the space of what is there; null where they are of that space
     */
    private void lay(
            PreparedOp op, Surface own, GroupEdge edge, CoverBand shape, int first, int last, Surface surface) {
        Veil veil = veilOf(op.mask());
        // The children of a group of the artwork are clipped by what clips the group, the copies of a pattern's cell
        // are not.
        // Only now: what was painted in between may forget clips.
        CoverBand clip = op.op() instanceof Op.Group ? null : clips.of(op.clip());
        for (int col = first; col <= last; col++) {
            if (edge != null) {
                edge.convert(own, col);
            }
            Cover outline = shapeOf(op, col, shape, clip);
            if (!outline.nothing()) {
                Cover cover = outline.copy();
                opacity(op, col, veil, cover);
                compositor.group(surface, own, col, cover, outline, op.mode());
                cover.release();
            }
            outline.release();
        }
        own.release();
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
        Surface surface = new Surface(mask.tintPlanes(), cols, pool);
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

    private void rasterise(PreparedClip clip, CoverBand into) {
        into.fill(clip.edges(), clip.rule(), bandX, bandY, width);
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
