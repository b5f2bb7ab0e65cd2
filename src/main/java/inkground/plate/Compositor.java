package inkground.plate;

import inkground.artwork.BlendMode;
import java.util.Arrays;

/**
 * Composites an element onto a cell by ISO 32000-2 §11.3.6 and §11.4: any blend mode, knockout groups, shape apart from
 * opacity. With αs the element's shape times opacity, f its shape, (P, α) what is there and (P₀, α₀) what the element is
 * composited with, all premultiplied:
 *
 * <pre>
 * X  = (1 − α₀)·Cs + α₀·B(P₀ / α₀, Cs)
 * P' = P·(1 − f) + (f − αs)·P₀ + αs·X        in a knockout group, (P₀, α₀) being the group's initial backdrop
 * P' = P·(1 − αs) + αs·X                     elsewhere, with (P₀, α₀) = (P, α)
 * </pre>
 *
 * The common case, normal mode outside knockout groups, where X = Cs, needs no α₀ and is left to {@link Surface#mix}.
 */
final class Compositor {
    private static final float ONE = Fixed.TINT_ONE;
    private static final float COVER = Fixed.COVER_ONE;
    private static final int CELL = CoverBand.CELL;

    private final CellPool pool;

    Compositor(CellPool pool) {
        this.pool = pool;
    }

    /**
     * @param cover αs
     * @param shape f; used where the surface needs it; the same object as {@code cover} where the element is opaque
     */
    void composite(Surface surface, int col, Element element, Cover cover, Cover shape, BlendMode mode) {
        // an opaque element of normal mode replaces what is there, in a knockout group as elsewhere
        if (mode == BlendMode.NORMAL && (!surface.knockout || cover == shape)) {
            simple(surface, col, element, cover);
        } else {
            general(surface, col, element, cover, shape, mode);
        }
        ink(surface, col, element, cover);
        if (surface.tracks) {
            own(surface, col, cover, shape);
        }
    }

    private void simple(Surface surface, int col, Element e, Cover cover) {
        for (int p = 0; p < surface.tints; p++) {
            if (!e.touches(p)) {
                if (surface.knockout) { // overprint shows what the group started from, not its earlier elements
                    int[] initial = snapshot(surface.initial, p, col);
                    surface.mix(p, col, initial, cover.cells, cover.all);
                    pool.give(initial);
                }
            } else {
                if (e.varied() != null && e.varied()[p] != null) {
                    surface.mix(p, col, e.varied()[p], cover.cells, cover.all);
                } else {
                    surface.mix(p, col, e.flat()[p], cover.cells, cover.all);
                }
            }
        }
        surface.mix(surface.mark(), col, Fixed.TINT_ONE, cover.cells, cover.all);
    }

    private void ink(Surface surface, int col, Element e, Cover cover) {
        if (e.anyInk() == null) {
            if (e.inked()) {
                surface.mix(surface.inked(), col, Fixed.TINT_ONE, cover.cells, cover.all);
                surface.mix(surface.laid(), col, Fixed.TINT_ONE, cover.cells, cover.all);
            } else if (e.touchesAll(surface.tints)) { // overprinting nothing leaves the ink that is there
                surface.mix(surface.laid(), col, 0, cover.cells, cover.all);
            }
            return;
        }
        int[] gain = pool.take();
        int[] laid = pool.take();
        for (int i = 0; i < CELL; i++) {
            boolean any = e.anyInk()[i] != 0;
            gain[i] = any ? cover.at(i) : 0;
            laid[i] = any ? Fixed.TINT_ONE : 0;
        }
        surface.mix(surface.inked(), col, Fixed.TINT_ONE, gain, 0);
        if (e.touchesAll(surface.tints)) {
            surface.mix(surface.laid(), col, laid, cover.cells, cover.all);
        } else {
            surface.mix(surface.laid(), col, Fixed.TINT_ONE, gain, 0);
        }
        pool.give(gain);
        pool.give(laid);
    }

    private static void own(Surface surface, int col, Cover cover, Cover shape) {
        if (surface.knockout && cover != shape) { // own' = own·(1 − f) + αs
            int[] own = surface.densify(surface.own(), col);
            for (int i = 0; i < CELL; i++) {
                int rest = Fixed.mix(own[i], 0, shape.at(i));
                own[i] = Math.min(Fixed.TINT_ONE, rest + Fixed.mix(0, Fixed.TINT_ONE, cover.at(i)));
            }
        } else {
            surface.mix(surface.own(), col, Fixed.TINT_ONE, cover.cells, cover.all);
        }
        surface.mix(surface.shape(), col, Fixed.TINT_ONE, shape.cells, shape.all);
    }

    private void general(Surface surface, int col, Element e, Cover cover, Cover shape, BlendMode mode) {
        Surface backdrop = surface.knockout ? surface.initial : surface;
        int[] alpha = snapshot(backdrop, surface.mark(), col);
        int[][] process = mode.separable() || surface.tints < 4 ? null : nonSeparable(backdrop, col, e, alpha, mode);
        for (int p = 0; p < surface.tints; p++) {
            int[] under = snapshot(backdrop, p, col);
            if (e.touches(p)) {
                int[] blended = process != null && p < 4 ? process[p] : null;
                tint(surface, col, p, e, under, alpha, blended, cover, shape, modeOf(mode, p, surface.tints));
            } else if (surface.knockout) {
                surface.mix(p, col, under, shape.cells, shape.all);
            }
            pool.give(under);
        }
        mark(surface, col, alpha, cover, shape);
        pool.give(alpha);
        if (process != null) {
            for (int[] plane : process) {
                pool.give(plane);
            }
        }
    }

    /** §11.7.4.2: spot inks take part only in modes that keep white white; in the others they are painted normally. */
    private static BlendMode modeOf(BlendMode mode, int plane, int tints) {
        boolean spot = tints >= 4 && plane >= 4;
        return spot && !mode.whitePreserving() || !mode.separable() ? BlendMode.NORMAL : mode;
    }

    private int[] snapshot(Surface from, int plane, int col) {
        int[] out = pool.take();
        if (from == null) {
            Arrays.fill(out, 0);
        } else if (from.dense(plane, col) == null) {
            Arrays.fill(out, from.uniform(plane, col));
        } else {
            System.arraycopy(from.dense(plane, col), 0, out, 0, CELL);
        }
        return out;
    }

    private static void tint(
            Surface surface,
            int col,
            int p,
            Element e,
            int[] under,
            int[] alpha,
            int[] blended,
            Cover cover,
            Cover shape,
            BlendMode mode) {
        int[] plane = surface.densify(p, col);
        int[] tints = e.varied() == null ? null : e.varied()[p];
        float flat = tints == null ? e.flat()[p] / ONE : 0;
        for (int i = 0; i < CELL; i++) {
            int asInt = cover.at(i);
            int fInt = surface.knockout ? shape.at(i) : asInt;
            if (fInt == 0) {
                continue;
            }
            float as = asInt / COVER;
            float f = fInt / COVER;
            float cs = tints == null ? flat : tints[i] / ONE;
            float x = cs;
            if (alpha[i] > 0) {
                float a0 = alpha[i] / ONE;
                float b = cs;
                if (blended != null) {
                    b = blended[i] / ONE;
                } else if (mode != BlendMode.NORMAL) {
                    b = Blending.separable(mode, Math.min(1, (float) under[i] / alpha[i]), cs);
                }
                x += a0 * (b - cs);
            }
            float result = plane[i] * (1 - f) + (f - as) * under[i] + as * x * ONE;
            plane[i] = rounded(result);
        }
    }

    private static int rounded(float tint) {
        return Math.max(0, Math.min(Fixed.TINT_ONE, (int) (tint + 0.5f)));
    }

    private static void mark(Surface surface, int col, int[] alpha, Cover cover, Cover shape) {
        if (!surface.knockout) {
            surface.mix(surface.mark(), col, Fixed.TINT_ONE, cover.cells, cover.all);
            return;
        }
        int[] plane = surface.densify(surface.mark(), col);
        for (int i = 0; i < CELL; i++) {
            float as = cover.at(i) / COVER;
            float f = shape.at(i) / COVER;
            float result = plane[i] * (1 - f) + (f - as) * alpha[i] + as * ONE;
            plane[i] = rounded(result);
        }
    }

    /** The blended process tints of a cell: B(Cb, Cs) for planes 0 to 3. */
    private int[][] nonSeparable(Surface backdrop, int col, Element e, int[] alpha, BlendMode mode) {
        int[][] under = new int[4][];
        for (int p = 0; p < 4; p++) {
            under[p] = snapshot(backdrop, p, col);
        }
        float[] b = new float[4];
        float[] s = new float[4];
        for (int i = 0; i < CELL; i++) {
            for (int p = 0; p < 4; p++) {
                b[p] = alpha[i] == 0 ? 0 : Math.min(1, (float) under[p][i] / alpha[i]);
                s[p] = e.tint(p, i) / ONE;
            }
            Blending.nonSeparable(mode, b, s, s);
            for (int p = 0; p < 4; p++) {
                under[p][i] = rounded(s[p] * ONE);
            }
        }
        return under;
    }

    /**
     * Composites a finished group.
     *
     * @param cover constant alpha, masks and clip of the group as a whole
     * @param shape clip of the group as a whole
     */
    void group(Surface surface, Surface group, int col, Cover cover, Cover shape, BlendMode mode) {
        boolean isolated = group.initial == null;
        if (mode == BlendMode.NORMAL && !surface.knockout) {
            if (isolated) {
                surface.over(group, col, cover.cells, cover.all);
            } else {
                surface.mixTo(group, col, cover.cells, cover.all);
            }
            if (surface.tracks) {
                Cover alpha = product(snapshot(group, isolated ? group.mark() : group.own(), col), cover);
                Cover outline = product(snapshot(group, group.shape(), col), shape);
                own(surface, col, alpha, outline);
                alpha.release();
                outline.release();
            }
            return;
        }
        int[] own = snapshot(group, isolated ? group.mark() : group.own(), col);
        int[][] tints = new int[surface.tints][];
        for (int p = 0; p < surface.tints; p++) {
            tints[p] = snapshot(group, p, col);
            int[] under = isolated ? null : snapshot(group.initial, p, col);
            for (int i = 0; i < CELL; i++) {
                tints[p][i] = colour(tints[p][i], under == null ? 0 : under[i], own[i]);
            }
            if (under != null) {
                pool.give(under);
            }
        }
        int[] ink = snapshot(group, group.inked(), col);
        Cover groupShape = product(snapshot(group, group.shape(), col), shape);
        Cover alpha = product(own, cover);
        Element element = new Element(null, tints, -1L, ink, true);
        composite(surface, col, element, alpha, groupShape, mode);
        alpha.release();
        groupShape.release();
        pool.give(ink);
        for (int[] plane : tints) {
            pool.give(plane);
        }
    }

    /** C = (P − P₀·(1 − αg)) / αg: what the group itself contributes, its backdrop removed (§11.4.8). */
    private static int colour(int premultiplied, int initial, int own) {
        if (own == 0) {
            return 0;
        }
        float a = own / ONE;
        float c = (premultiplied - initial * (1 - a)) / a;
        return rounded(c);
    }

    /** Tints as cover, times {@code factor}; the array is taken over. */
    private Cover product(int[] tints, Cover factor) {
        for (int i = 0; i < CELL; i++) {
            tints[i] = Fixed.coverOfTint(tints[i]);
        }
        Cover out = new Cover(pool);
        out.adopt(tints);
        if (factor.cells == null) {
            out.times(factor.all);
        } else {
            out.times(factor.cells);
        }
        return out;
    }
}
