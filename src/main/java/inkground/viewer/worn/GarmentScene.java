package inkground.viewer.worn;

import inkground.appearance.Grain;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.garment.ClothLight;
import inkground.garment.Drape;
import inkground.garment.Form;
import inkground.garment.GarmentPicture;
import inkground.garment.GarmentRequest;
import inkground.garment.Placed;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Texture;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.task.Activity;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Makes pictures of the garment, keeping what the next one may use again: a new substrate only colours, a moved artwork only lays
 * its colours elsewhere. Its results are immutable; it is used by one piece of work at a time.
 */
final class GarmentScene {
    private static final int DRAPES = 6;
    /** Of the garment around what is seen; more than any choke. */
    private static final double PLATE_MARGIN_MM = 6;

    /**
     * All that decides a picture.
     *
     * @param region pixels of the garment
     * @param cloth whether grain and folds are shown
     */
    record Wanted(
            OpenPage page,
            Placed placed,
            GarmentRequest region,
            Look look,
            boolean cloth,
            boolean overprint,
            Set<Integer> layersOn) {
        Wanted {
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * A finished picture.
     *
     * @param argb premultiplied, row by row
     * @param planes of the artwork; null where none is seen
     */
    record Picture(Wanted wanted, int[] argb, InkPlanes planes, Painter painter) {}

    private record Kept<K, V>(K key, V value) {}

    private record LightKey(Form form, GarmentRequest region, boolean cloth) {}

    private record GrainKey(Texture.Kind kind, GarmentRequest region) {}

    private record PlanesKey(OpenPage page, PlateRequest request) {}

    private record PainterKey(OpenPage page, Look look) {}

    private record PrintKey(InkPlanes planes, Painter painter) {}

    private final Map<Form, Drape> drapes = new LinkedHashMap<>(8, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Form, Drape> eldest) {
            return size() > DRAPES;
        }
    };
    private final AtomicReference<Kept<LightKey, ClothLight>> light = new AtomicReference<>();
    private final AtomicReference<Kept<GrainKey, Grain>> grain = new AtomicReference<>();
    private final AtomicReference<Kept<PlanesKey, InkPlanes>> planes = new AtomicReference<>();
    private final AtomicReference<Kept<PainterKey, Painter>> painter = new AtomicReference<>();
    private final AtomicReference<Kept<PrintKey, int[]>> print = new AtomicReference<>();

    /** Makes what may be missing. */
    private interface Making<V> {
        V make() throws Refusal;
    }

    private static <K, V> V kept(AtomicReference<Kept<K, V>> slot, K key, Making<V> making) throws Refusal {
        Kept<K, V> last = slot.get();
        if (last == null || !last.key().equals(key)) {
            slot.set(null); // let go of the old before the new takes its memory
            last = new Kept<>(key, making.make());
            slot.set(last);
        }
        return last.value();
    }

    /** Lets go of everything that hangs on a page. */
    void forgetPage() {
        planes.set(null);
        painter.set(null);
        print.set(null);
    }

    /** Makes a picture; off the window's thread. */
    Picture picture(Wanted wanted, Cancel cancel, Activity reports) throws Refusal {
        GarmentRequest region = wanted.region();
        Placed placed = wanted.placed();
        ClothLight cloth = kept(
                light,
                new LightKey(placed.form(), region, wanted.cloth()),
                () -> new ClothLight(placed.form(), region, wanted.cloth() ? drape(placed.form()) : null));
        cancel.check();
        Painter colours = kept(painter, new PainterKey(wanted.page(), wanted.look()), () -> wanted.page()
                .painter(wanted.look()));
        Texture texture = wanted.cloth() ? colours.texture() : Texture.NONE;
        Grain fabric = texture.strength() == 0 ? null : grain(texture.kind(), region);
        cancel.check();
        PlateRequest plate = plate(wanted);
        InkPlanes inks = plate == null ? null : inks(wanted.page(), plate, cancel, reports);
        GarmentPicture.Print laid = inks == null ? null : print(inks, colours, placed, region, cancel);
        int[] out = new int[region.width() * region.height()];
        int ground = colours.colour(new int[wanted.page().inks().size()]);
        GarmentPicture.paint(cloth, fabric, texture.strength(), ground, laid, out);
        cancel.check();
        return new Picture(wanted, out, inks, colours);
    }

    private Drape drape(Form form) {
        return drapes.computeIfAbsent(form, Drape::new);
    }

    private Grain grain(Texture.Kind kind, GarmentRequest r) throws Refusal {
        Grain made = kept(
                grain,
                new GrainKey(kind, r),
                () -> new Grain(kind, 1 / r.pxPerMm(), r.x0(), r.y0(), r.width(), r.height()));
        return made.even() ? null : made;
    }

    /** The artwork whole where that is little, so that it can be moved without rasterising; else what is seen of it. */
    private static PlateRequest plate(Wanted wanted) {
        GarmentRequest region = wanted.region();
        Box trim = wanted.page().info().box(PageBox.TRIM);
        double scale = wanted.placed().pxPerPt(region.pxPerMm());
        PlateRequest whole = PlateRequest.of(trim, scale * 72, wanted.overprint(), wanted.layersOn());
        long seen = (long) region.width() * region.height();
        if ((long) whole.width() * whole.height() <= Math.max(1 << 20, seen)) {
            return whole;
        }
        int margin = (int) Math.ceil(PLATE_MARGIN_MM * region.pxPerMm());
        return wanted.placed().plate(region, trim, margin, wanted.overprint(), wanted.layersOn());
    }

    private InkPlanes inks(OpenPage page, PlateRequest plate, Cancel cancel, Activity reports) throws Refusal {
        return kept(planes, new PlanesKey(page, plate), () -> page.render(plate, cancel, reports));
    }

    private GarmentPicture.Print print(
            InkPlanes inks, Painter colours, Placed placed, GarmentRequest region, Cancel cancel) throws Refusal {
        int[] argb = kept(print, new PrintKey(inks, colours), () -> {
            int[] out = new int[inks.width() * inks.height()];
            colours.paint(inks, out, 0, inks.width(), cancel);
            return out;
        });
        return new GarmentPicture.Print(
                argb,
                placed.pageXPx(region.pxPerMm()) + inks.request().x0(),
                placed.pageYPx(region.pxPerMm()) + inks.request().y0(),
                inks.width(),
                inks.height());
    }
}
