package inkground.app;

import inkground.appearance.Appearance;
import inkground.appearance.Grain;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.Underbase;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.colour.Srgb;
import inkground.garment.ClothLight;
import inkground.garment.Drape;
import inkground.garment.Form;
import inkground.garment.GarmentPicture;
import inkground.garment.GarmentRequest;
import inkground.garment.Placed;
import inkground.garment.Placement;
import inkground.garment.PlacementCheck;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.proof.ProofPng;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes a picture of the page where it is placed on a garment. */
public final class WornProofs {
    /** Usual resolution: half a millimetre of garment is a pixel and a half. */
    public static final double USUAL_DPI = 75;
    /** Neutral grey around the garment, of the lightness of a viewing booth; ISO 3664 asks for neutral (from memory). */
    public static final int SURROUND = 0xff767676;

    /** Shown around the garment. */
    private static final double MARGIN_MM = 45;

    private static final int ROWS = 512;

    private WornProofs() {}

    /**
     * What to write.
     *
     * @param page which
     * @param stack garment, inks and their order
     * @param placement where
     * @param form what the placement means; see {@link Form#of}
     * @param cloth whether the grain of the fabric and its folds are shown
     * @param dpi pixels per inch of garment, above 0
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param file where the picture goes
     * @param replace whether an existing file may be replaced
     */
    public record Order(
            PageJob page,
            Stack stack,
            Placement placement,
            Form form,
            boolean cloth,
            double dpi,
            boolean overprint,
            Set<Integer> layersOn,
            Path file,
            boolean replace) {
        /** Rejects a resolution that is not positive, and paper. */
        public Order {
            if (!(dpi > 0) || Double.isInfinite(dpi)) {
                throw new IllegalArgumentException("resolution " + dpi);
            }
            if (stack.substrate().kind() != Substrate.Kind.GARMENT) {
                throw new IllegalArgumentException("paper is not worn");
            }
            layersOn = Set.copyOf(layersOn);
        }
    }

    /**
     * What was written.
     *
     * @param caption the lines beneath the picture
     */
    public record Result(
            Path file, int widthPx, int heightPx, Placed placed, PlacementCheck check, List<String> caption) {}

    /**
     * Paints and writes the picture; nothing is left behind when it fails or is cancelled.
     *
     * @throws Refusal if the picture would be too large, or cannot be written
     */
    public static Result write(Order order, Cancel cancel, Progress progress) throws Refusal {
        GarmentRequest request = picture(order.form(), order.dpi());
        if ((long) request.width() * request.height() > Proofs.MOST_PIXELS) {
            throw new Refusal("The proof would have " + request.width() + " × " + request.height()
                    + " pixels; the limit is " + Proofs.MOST_PIXELS / 1_000_000 + " million. Use a lower resolution.");
        }
        Box trim = order.page().info().box(PageBox.TRIM);
        Optional<Box> inked = InkedBox.of(order.page(), order.overprint(), order.layersOn(), cancel, Progress.NONE);
        Placed placed = Placed.of(order.placement(), order.form(), edge(order.placement(), trim, inked));
        PlacementCheck check = PlacementCheck.of(order.form(), placed.toMm(inked.orElse(trim)));
        List<String> caption = caption(order, placed, check);
        BufferedImage[] picture = new BufferedImage[1];
        SafeFiles.file(order.file(), order.replace(), temporary -> {
            picture[0] = Caption.under(paint(order, request, placed, trim, cancel, progress), caption, SURROUND);
            progress.report("writing", -1);
            ProofPng.write(picture[0], order.dpi(), notes(order, caption), temporary);
            cancel.check();
        });
        return new Result(order.file(), picture[0].getWidth(), picture[0].getHeight(), placed, check, caption);
    }

    /** @return the pixels of a picture, without its caption */
    public static GarmentRequest picture(Form form, double dpi) {
        return GarmentRequest.around(form.boundsMm().grow(MARGIN_MM), dpi / 25.4);
    }

    /** @return the box that a placement measures; the trim where there is no ink */
    public static Box edge(Placement placement, Box trimPt, Optional<Box> inkedPt) {
        return placement.measured() == Placement.Measured.INK ? inkedPt.orElse(trimPt) : trimPt;
    }

    private static BufferedImage paint(
            Order order, GarmentRequest request, Placed placed, Box trim, Cancel cancel, Progress progress)
            throws Refusal {
        BufferedImage picture = new BufferedImage(request.width(), request.height(), BufferedImage.TYPE_INT_RGB);
        int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
        StackModel model = new StackModel(printedSize(order.stack(), placed.scale()));
        Substrate substrate = order.stack().substrate();
        int ground = Srgb.labToArgb(substrate.lab());
        Drape drape = order.cloth() ? new Drape(order.form()) : null;
        Texture texture = order.cloth() ? substrate.texture() : Texture.NONE;
        for (int row = 0; row < request.height(); row += ROWS) {
            cancel.check();
            progress.report("painting", (double) row / request.height());
            GarmentRequest band = request.rows(row, Math.min(request.height(), row + ROWS));
            ClothLight cloth = new ClothLight(order.form(), band, drape);
            Grain grain = texture.strength() == 0
                    ? null
                    : new Grain(texture.kind(), 1 / band.pxPerMm(), band.x0(), band.y0(), band.width(), band.height());
            int[] out = new int[band.width() * band.height()];
            GarmentPicture.Print print = print(order, model, placed, band, trim, cancel);
            GarmentPicture.paint(cloth, grain, texture.strength(), ground, print, out);
            for (int i = 0; i < out.length; i++) {
                pixels[row * request.width() + i] = GarmentPicture.over(out[i], SURROUND);
            }
        }
        return picture;
    }

    private static GarmentPicture.Print print(
            Order order, StackModel model, Placed placed, GarmentRequest band, Box trim, Cancel cancel) throws Refusal {
        // An underbase with a choke looks at neighbours; beyond the region it takes ink for granted.
        Underbase base = model.stack().underbase();
        double chokeMm = base == null ? 0 : Math.abs(base.chokeMm()) * placed.scale();
        int margin = (int) Math.ceil(chokeMm * band.pxPerMm()) + 1;
        PlateRequest plate = placed.plate(band, trim, margin, order.overprint(), order.layersOn());
        if (plate == null) {
            return null;
        }
        InkPlanes planes = order.page().plate().render(plate, cancel, Progress.NONE);
        int[] argb = new int[plate.width() * plate.height()];
        Appearance.paint(planes, model, argb, 0, plate.width(), cancel);
        return new GarmentPicture.Print(
                argb,
                placed.pageXPx(band.pxPerMm()) + plate.x0(),
                placed.pageYPx(band.pxPerMm()) + plate.y0(),
                plate.width(),
                plate.height());
    }

    /** A choke is millimetres of the print: on a page that is printed larger it is less of the page. */
    private static Stack printedSize(Stack stack, double scale) {
        Underbase base = stack.underbase();
        return base == null
                ? stack
                : stack.over(new Underbase(
                        base.white(),
                        base.tint(),
                        base.hits(),
                        Underbase.chokeOnPage(base.chokeMm(), scale),
                        base.under(),
                        base.knockedOutUnder()));
    }

    private static List<String> caption(Order order, Placed placed, PlacementCheck check) {
        List<String> lines = new ArrayList<>();
        lines.add(order.form().words() + ", on " + order.stack().substrate().name());
        lines.add("Artwork " + placed.words(WornProofs::mm));
        List<String> troubles = check.troubles(WornProofs::mm);
        lines.add(
                troubles.isEmpty()
                        ? "Inside the print area '" + check.area().name() + "'."
                        : "It " + String.join("; ", troubles) + ".");
        lines.add(Proofs.CAUTION + " Cut and measures: " + order.form().cut().source() + ".");
        return lines;
    }

    private static String mm(double mm) {
        return String.format(Locale.ROOT, "%.1f mm", mm);
    }

    private static Map<String, String> notes(Order order, List<String> caption) {
        Map<String, String> notes = new LinkedHashMap<>();
        notes.put(
                "Title",
                "Proof on " + order.form().words() + ", "
                        + order.stack().substrate().name());
        notes.put("Description", caption.stream().limit(3).collect(Collectors.joining("\n")));
        notes.put("Comment", Proofs.CAUTION);
        notes.put("Software", "Inkground");
        return notes;
    }
}
