package inkground.plate;

import inkground.artwork.Approximation;
import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.artwork.Transfer;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;

/** Brings a display list to one scale. One use, one thread. */
final class Preparation {
    final Matrix toDevice;
    final boolean overprint;
    final Set<Integer> layersOn;
    final ColourMapping mapping;
    final Cancel cancel;
    private final LuminosityMapping luminosity;
    private final ImageCache images;
    private final Set<Approximation> approximations;
    private final PreparedClips clips;
    private final Patterns patterns;

    /** Width of a pixel of the device at hand in pixels of what is painted: above 1 on the grid of a pattern's step. */
    private final double devicePx;

    private final Map<SoftMask, PreparedMask> masks = new IdentityHashMap<>();
    private final Map<InkingKey, Inking> inkings = new HashMap<>();
    private final Map<Transfer, TransferTables> transfers = new HashMap<>();

    /** Whether what is painted are the inks of the device, and not brought to another space afterwards. */
    private final boolean onDevice;

    /** Knockout groups that what is being prepared lies in. */
    private int knockouts;

    /** Groups around what is being prepared that are not opaque. */
    private int veils;

    /** Cells of patterns that what is being prepared lies in. */
    private int inCells;

    private record InkingKey(Colour colour, boolean overprint, int mode, Transfer transfer) {}

    Preparation(
            PlateRequest request,
            ColourMapping mapping,
            LuminosityMapping luminosity,
            ImageCache images,
            Cancel cancel,
            Set<Approximation> approximations) {
        this.toDevice = Matrix.scale(request.pxPerPt(), request.pxPerPt());
        this.devicePx = 1;
        this.onDevice = true;
        this.clips = new PreparedClips(toDevice);
        this.patterns = new Patterns(this, null);
        this.overprint = request.overprint();
        this.layersOn = request.layersOn();
        this.mapping = mapping;
        this.luminosity = luminosity;
        this.images = images;
        this.cancel = cancel;
        this.approximations = approximations;
    }

    private Preparation(Preparation outer, ColourMapping mapping, boolean overprint) {
        this(outer, outer.toDevice, outer.devicePx, mapping, overprint);
    }

    /** For another device: the grid of a pattern's step, {@code density} times finer. */
    Preparation(Preparation outer, Matrix toDevice, double density) {
        this(outer, toDevice, outer.devicePx * density, outer.mapping, outer.overprint);
    }

    private Preparation(Preparation outer, Matrix toDevice, double devicePx, ColourMapping mapping, boolean overprint) {
        this.toDevice = toDevice;
        this.devicePx = devicePx;
        this.onDevice = outer.onDevice && mapping instanceof InkMapping;
        this.clips = new PreparedClips(toDevice);
        this.patterns = new Patterns(this, outer.patterns);
        this.overprint = overprint;
        this.layersOn = outer.layersOn;
        this.mapping = mapping;
        this.luminosity = outer.luminosity;
        this.images = outer.images;
        this.cancel = outer.cancel;
        this.approximations = outer.approximations;
        this.knockouts = outer.knockouts;
        this.veils = outer.veils;
        this.inCells = outer.inCells;
    }

    PreparedList prepare(List<Op> ops) throws Refusal {
        return new PreparedList(prepared(ops));
    }

    private List<PreparedOp> prepared(List<Op> ops) throws Refusal {
        List<PreparedOp> out = new ArrayList<>(ops.size());
        for (Op op : ops) {
            cancel.check();
            if (op.origin().visibility().shows(layersOn)) {
                add(op, out);
            }
        }
        return out;
    }

    /** Prepares the operations of one cell of a pattern. */
    List<PreparedOp> cell(List<Op> ops) throws Refusal {
        inCells++;
        List<PreparedOp> out = prepared(ops);
        inCells--;
        return out;
    }

    /** @return whether what is being prepared lies in a knockout group */
    boolean inKnockout() {
        return knockouts > 0;
    }

    private void add(Op op, List<PreparedOp> out) throws Refusal {
        if (op instanceof Op.Fill fill) {
            // Type stays summed: on many pages it is most of what there is, and looking at it takes too long.
            Supplier<EdgeList> shape = fill.rule() == FillRule.NON_ZERO && fill.text() == null
                    ? new UnitedFill(fill.path(), toDevice)
                    : () -> EdgeList.of(fill.path(), toDevice);
            paint(op, fill.paint(), shape, fill.rule(), null, out);
        } else if (op instanceof Op.Stroke stroke) {
            paint(op, stroke.paint(), () -> Strokes.edges(stroke, toDevice, devicePx), FillRule.NON_ZERO, null, out);
        } else if (op instanceof Op.Image image) {
            image(image, out);
        } else if (op instanceof Op.Stencil stencil) {
            stencil(stencil, out);
        } else if (op instanceof Op.Shade shade) {
            paint(op, shade.shading(), null, FillRule.NON_ZERO, null, out);
        } else if (op instanceof Op.Group group) {
            group(group, out);
        }
    }

    void approximate(String feature, String shownAs, Op op) {
        approximations.add(new Approximation(feature, shownAs, op.origin()));
    }

    private void paint(
            Op op,
            Paint paint,
            Supplier<EdgeList> shape,
            FillRule rule,
            PreparedOp.Stencil stencil,
            List<PreparedOp> out)
            throws Refusal {
        if (paint instanceof Paint.Flat flat) {
            Inking inking = inking(flat.colour(), op.style());
            if (inking != Inking.NOTHING) {
                emit(op, op.bounds(), shape, rule, stencil, new Filling.Flat(inking), out);
            }
        } else if (paint instanceof Paint.Shading shading) {
            shading(op, shading, shape, rule, stencil, out);
        } else if (paint instanceof Paint.Tiling tiling) {
            Filling filling = patterns.filling(op, tiling);
            if (filling != null) {
                emit(op, op.bounds(), shape, rule, stencil, filling, out);
            }
        }
    }

    private Inking inking(Colour colour, Style style) {
        boolean honoured = overprint && style.overprint();
        TransferTables transfer = transfer(style);
        return inkings.computeIfAbsent(
                new InkingKey(colour, honoured, style.overprintMode(), transfer == null ? null : style.transfer()),
                k -> {
                    Inking inking = mapping.inking(colour, style, honoured);
                    return transfer == null || inking == Inking.NOTHING ? inking : transfer.of(inking);
                });
    }

    /** The transfer function of an object: §11.7.5.2 has it for objects that are opaque, and all around them; else null. */
    private TransferTables transfer(Style style) {
        boolean has = style.transfer() != null && style.opaque() && veils == 0 && onDevice;
        return has ? transfers.computeIfAbsent(style.transfer(), TransferTables::new) : null;
    }

    private Filling varied(PixelSource source, long touched, Style style, boolean coverIsOpacity) {
        TransferTables transfer = coverIsOpacity ? null : transfer(style);
        return new Filling.Varied(
                transfer == null ? source : transfer.of(source), touched, mapping.inkPlanes(), coverIsOpacity);
    }

    private void shading(
            Op op,
            Paint.Shading shading,
            Supplier<EdgeList> shape,
            FillRule rule,
            PreparedOp.Stencil stencil,
            List<PreparedOp> out)
            throws Refusal {
        if (mapping.paintsNothing(shading.space()) || !shading.toPage().invertible()) {
            return;
        }
        PreparedClip clip = clips.of(op.clip());
        if (shading.box() != null) {
            Outline box = Outline.rectangle(shading.box()).transform(shading.toPage());
            clip = new PreparedClip(clip, EdgeList.of(box, toDevice), FillRule.NON_ZERO, null, true);
        }
        PixelSource source;
        Box box = op.bounds();
        boolean pattern = !(op instanceof Op.Shade);
        if (ShadingSource.paints(shading.geometry())) {
            source = new ShadingSource(shading, toDevice, mapping, pattern);
        } else if (shading.geometry() instanceof Paint.OfPoint) {
            source = new PointShadingSource(shading, toDevice, mapping, pattern);
        } else {
            source = new MeshSource(shading, toDevice, mapping, pattern);
            if (!pattern || shading.background() == null) {
                box = box.intersect(shading.toPage().bounds(MeshSource.bounds((Paint.Triangles) shading.geometry())));
            }
        }
        noteMixedSurface(op, shading);
        long touched = mapping.touched(shading.space(), overprint && op.style().overprint());
        emit(op, box, shape, rule, stencil, varied(source, touched, op.style(), false), clip, out);
    }

    private void noteMixedSurface(Op op, Paint.Shading shading) {
        List<Colour> colours = SurfaceShading.is(shading) ? SurfaceShading.colours(shading) : List.of();
        long assigned = colours.stream().filter(mapping::assignedByLook).count();
        if (assigned > 0 && assigned < colours.size()) {
            approximations.add(new Approximation(
                    "an assigned or bare colour in a gradient mesh",
                    "as assigned where it is that very colour; what lies between it and others stays as stated",
                    op.origin()));
        }
    }

    private void image(Op.Image image, List<PreparedOp> out) throws Refusal {
        if (!image.unitToPage().invertible()
                || mapping.paintsNothing(image.image().space())) {
            return;
        }
        ImageCache.Entry decoded = images.get(image.image(), mapping, cancel);
        Matrix deviceToUnit = image.unitToPage().then(toDevice).inverse();
        PixelSource source = new ImageSampler(
                decoded.image(), decoded.mask(), deviceToUnit, image.image().interpolate());
        long touched = mapping.touched(
                image.image().space(), overprint && image.style().overprint());
        boolean opacity = image.image().maskIsOpacity() && !image.style().alphaIsShape();
        Filling filling = varied(source, touched, image.style(), opacity);
        emit(image, image.bounds().grow(1), imageShape(image.unitToPage()), FillRule.NON_ZERO, null, filling, out);
    }

    private void stencil(Op.Stencil stencil, List<PreparedOp> out) throws Refusal {
        if (!stencil.unitToPage().invertible()) {
            return;
        }
        InkImage mask = images.stencil(stencil.mask(), cancel);
        Matrix deviceToUnit = stencil.unitToPage().then(toDevice).inverse();
        boolean smooth = stencil.mask().interpolate();
        PreparedOp.Stencil cover = ImageSampler.stencil(mask, deviceToUnit, smooth);
        paint(stencil, stencil.paint(), imageShape(stencil.unitToPage()), FillRule.NON_ZERO, cover, out);
    }

    /**
     * The shape of an image on the device. One that stands square to the grid covers whole pixels, those whose centres it
     * holds, so that images cut into strips leave no seam; but at least one pixel, so that a thin one does not vanish.
     */
    private Supplier<EdgeList> imageShape(Matrix unitToPage) {
        Matrix m = unitToPage.then(toDevice);
        Box box = m.bounds(new Box(0, 0, 1, 1));
        boolean far = Math.max(Math.max(-box.x0(), -box.y0()), Math.max(box.x1(), box.y1())) > 1 << 20;
        if (!square(m) || far) {
            return () -> EdgeList.of(Outline.rectangle(new Box(0, 0, 1, 1)), m);
        }
        int x0 = (int) Math.round(box.x0());
        int y0 = (int) Math.round(box.y0());
        int thinnest = (int) Math.max(1, Math.min(1 << 20, devicePx));
        int x1 = Math.max(x0 + thinnest, (int) Math.round(box.x1()));
        int y1 = Math.max(y0 + thinnest, (int) Math.round(box.y1()));
        return () -> EdgeList.ofPixels(x0, y0, x1, y1);
    }

    /** @return whether what a matrix maps upright stands square to the grid of pixels */
    static boolean square(Matrix m) {
        return Math.abs(m.b()) + Math.abs(m.c()) < 1e-6 * m.meanScale()
                || Math.abs(m.a()) + Math.abs(m.d()) < 1e-6 * m.meanScale();
    }

    private void group(Op.Group group, List<PreparedOp> out) throws Refusal {
        // a non-isolated group blends in its parent's space: §11.7.2
        ColourMapping own = group.isolated() ? blendingSpace(group.space(), group.ops(), true) : null;
        Preparation inner = own == null ? this : new Preparation(this, own, overprint);
        int veil = group.style().opaque() ? 0 : 1;
        inner.knockouts += group.knockout() ? 1 : 0;
        inner.veils += veil;
        PreparedList content = inner.prepare(group.ops());
        inner.knockouts -= group.knockout() ? 1 : 0;
        inner.veils -= veil;
        if (content.size() > 0) {
            Filling filling = content(content, group.isolated(), group.knockout(), edge(own));
            emit(group, group.bounds(), null, FillRule.NON_ZERO, null, filling, out);
        }
    }

    /**
     * The whole page, in the blending space of its page group where something in it is transparent. Many programs state an RGB
     * page group on every page; taking that at its word would turn black type into four inks where nothing blends.
     */
    PreparedList page(DisplayList list) throws Refusal {
        ColourMapping own = blendingSpace(list.groupSpace(), list.ops(), false);
        if (own == null) {
            return prepare(list.ops());
        }
        PreparedList content = new Preparation(this, own, overprint).prepare(list.ops());
        Op.Group whole = new Op.Group(
                List.of(),
                list.page().box(PageBox.MEDIA),
                true,
                false,
                list.groupSpace(),
                Style.PLAIN,
                null,
                new Origin("page", 0, Visibility.ALWAYS));
        List<PreparedOp> out = new ArrayList<>();
        Filling filling = new Filling.Content(content, true, false, false, edge(own));
        emit(whole, whole.bounds(), null, FillRule.NON_ZERO, null, filling, out);
        return new PreparedList(out);
    }

    /**
     * The mapping for an isolated group of this space, or null where painting in the tints at hand gives the same.
     *
     * @param converts whether colours become those of the group also where nothing in it is transparent
     */
    private ColourMapping blendingSpace(ColourSpace space, List<Op> ops, boolean converts) {
        if (space == null || mapping instanceof LuminosityMapping) {
            return null;
        }
        GroupMapping.Kind kind = GroupMapping.kindOf(space);
        GroupMapping around = mapping instanceof GroupMapping group ? group : null;
        if (kind == (around == null ? null : around.kind())) {
            return null;
        }
        InkMapping inks = around == null ? (InkMapping) mapping : around.inks();
        if (!Transparency.in(ops) && !(converts && new ForeignColours(kind, inks).in(ops))) {
            return null;
        }
        return kind == null ? inks : new GroupMapping(inks, space);
    }

    private GroupEdge edge(ColourMapping inside) {
        return inside == null ? null : new GroupEdge(inside, mapping);
    }

    /**
     * Painting the children of a group straight onto its backdrop is the same as making the group and laying it over, unless
     * the group is knocking out, or it is isolated and a child looks at what lies beneath: by blending or by overprint.
     */
    Filling.Content content(PreparedList list, boolean isolated, boolean knockout, GroupEdge edge) {
        long all = mapping.touched(Colour.BLACK.space(), false);
        boolean through = !knockout
                && edge == null
                && (!isolated || Arrays.stream(list.all()).noneMatch(op -> looksBeneath(op, all)));
        return new Filling.Content(list, isolated, knockout, through, edge);
    }

    static boolean looksBeneath(PreparedOp op, long all) {
        if (op.mode() != BlendMode.NORMAL) {
            return true;
        }
        if (op.filling() instanceof Filling.Flat flat) {
            return flat.inking().touched() != all;
        } else if (op.filling() instanceof Filling.Varied varied) {
            return varied.touched() != all;
        } else if (op.filling() instanceof Filling.Steps) {
            return false;
        }
        Filling.Content content = (Filling.Content) op.filling();
        return !content.isolated() && Arrays.stream(content.list().all()).anyMatch(child -> looksBeneath(child, all));
    }

    private void emit(
            Op op,
            Box box,
            Supplier<EdgeList> shape,
            FillRule rule,
            PreparedOp.Stencil stencil,
            Filling filling,
            List<PreparedOp> out)
            throws Refusal {
        emit(op, box, shape, rule, stencil, filling, clips.of(op), out);
    }

    private void emit(
            Op op,
            Box box,
            Supplier<EdgeList> shape,
            FillRule rule,
            PreparedOp.Stencil stencil,
            Filling filling,
            PreparedClip clip,
            List<PreparedOp> out)
            throws Refusal {
        int cover = Fixed.cover(op.style().alpha());
        // A path of no area still has a box; one pixel of margin keeps what touches it.
        Box device = toDevice.bounds(box).grow(1);
        if (op.clip() != null) {
            device = device.intersect(toDevice.bounds(op.clip().bounds()).grow(1));
        }
        // what is not seen at all still has a shape, which knocks out: §11.4.6
        if (cover == 0 && knockouts == 0 || device.isEmpty()) {
            return;
        }
        int left = bounded(Math.floor(device.x0()));
        int top = bounded(Math.floor(device.y0()));
        int right = bounded(Math.ceil(device.x1()));
        int bottom = bounded(Math.ceil(device.y1()));
        if (right <= left || bottom <= top) {
            return;
        }
        boolean tall = bottom - top > 2 * InkPlanes.CELL_H;
        // a shape that stays inside its clip by itself would only be thinned where they share an edge
        boolean path = op instanceof Op.Fill || op instanceof Op.Stroke;
        boolean inside = path && clip != null && clip.box() != null && Rectangles.holds(clip.box(), box);
        PreparedClip around = inside ? clip.parent() : clip;
        Supplier<EdgeList> cut = shape;
        // the product of two coverages would leave a seam where a cell's edge is also that of what fills it
        while (inCells > 0 && shape != null && around != null && around.convex()) {
            cut = within(cut, around.edges());
            around = around.parent();
        }
        Supplier<EdgeList> kept = cut == null || !tall ? cut : new Once(cut);
        PreparedOp made = new PreparedOp(
                op,
                left,
                top,
                right,
                bottom,
                kept,
                rule,
                stencil,
                filling,
                cover,
                around,
                mask(op.style().softMask()),
                List.of(),
                null);
        int last = out.size() - 1;
        PreparedOp both = last < 0 ? null : out.get(last).join(made);
        if (both == null) {
            out.add(made);
        } else {
            out.set(last, both);
        }
    }

    private static Supplier<EdgeList> within(Supplier<EdgeList> shape, EdgeList convex) {
        return () -> shape.get().within(convex);
    }

    private static int bounded(double v) {
        return (int) Math.max(-(1 << 20), Math.min(1 << 20, v));
    }

    private PreparedMask mask(SoftMask mask) throws Refusal {
        if (mask == null) {
            return null;
        }
        PreparedMask made = masks.get(mask);
        if (made == null) {
            made = make(mask);
            masks.put(mask, made);
        }
        return made;
    }

    /** A mask's group is painted by itself, with colours turned into darkness; overprint and its own mask do not apply. */
    private PreparedMask make(SoftMask mask) throws Refusal {
        Preparation own = new Preparation(this, mask.luminosity() ? luminosity : mapping, false);
        PreparedList content = own.prepare(mask.group().ops());
        int[] transfer = new int[256];
        float[] value = new float[1];
        for (int i = 0; i < 256; i++) {
            value[0] = i / 255f;
            if (mask.transfer() != null) {
                float[] out = new float[mask.transfer().outputs()];
                mask.transfer().apply(new float[] {i / 255f}, out);
                value[0] = out[0];
            }
            transfer[i] = Fixed.cover(value[0]);
        }
        int darkness = Fixed.TINT_ONE;
        if (mask.backdrop() != null) {
            Colour backdrop = mask.backdrop();
            darkness = Fixed.tint(1 - luminosity.luminosity(backdrop.space(), backdrop.components()));
        }
        return new PreparedMask(content, mask.luminosity(), own.mapping.tintPlanes(), darkness, transfer);
    }

    /** Edges of a path to be filled by the non-zero rule; remembers that nothing in it overlaps, as in most. */
    private static final class UnitedFill implements Supplier<EdgeList> {
        private final Outline path;
        private final Matrix toDevice;
        private boolean simple; // set by any thread to what every other would find

        UnitedFill(Outline path, Matrix toDevice) {
            this.path = path;
            this.toDevice = toDevice;
        }

        @Override
        public EdgeList get() {
            EdgeList edges = EdgeList.of(path, toDevice);
            if (simple) {
                return edges;
            }
            EdgeList united = edges.unitedWhereOverlapping();
            simple = united == edges;
            return united;
        }
    }

    /** Makes its edges at the first call and keeps them: for shapes that many bands need. */
    private static final class Once implements Supplier<EdgeList> {
        private Supplier<EdgeList> maker;
        private EdgeList edges;

        Once(Supplier<EdgeList> maker) {
            this.maker = maker;
        }

        @Override
        public synchronized EdgeList get() {
            if (edges == null) {
                edges = maker.get();
                maker = null;
            }
            return edges;
        }
    }
}
