package inkground.app;

import inkground.appearance.Appearance;
import inkground.appearance.ArtworkEdges;
import inkground.appearance.AskedColours;
import inkground.appearance.PaintOptions;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.VanishScore;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.colour.Srgb;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.proof.ContactSheet;
import inkground.proof.ProofPng;
import inkground.substrate.Substrate;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** The same artwork on several substrates: scored, ranked and put on one contact sheet. */
public final class LineUp {
    /** Pixels on the longer side of each picture. */
    public static final int DEFAULT_PICTURE_PX = 480;
    /** Fewest and most pixels on the longer side of each picture. */
    public static final int MIN_PICTURE_PX = 64;
    /** Most pixels on the longer side of each picture. */
    public static final int MAX_PICTURE_PX = 1600;

    /** Cloth around the artwork, as a share of its longer side. */
    private static final double CLOTH = 0.07;

    private LineUp() {}

    /**
     * One place of the line-up.
     *
     * @param stack the artwork on a substrate
     * @param score how much of its edges vanishes there
     */
    public record Place(Stack stack, VanishScore score) {
        /** @return the substrate */
        public Substrate substrate() {
            return stack.substrate();
        }

        /** @return the score as words for the user */
        public String words() {
            if (score.edgesMm() == 0) {
                return "no edges to lose";
            }
            double percent = 100 * score.score();
            if (percent < 0.5) {
                return percent == 0 ? "all edges stay" : "under 1 % of edges vanish";
            }
            return String.format(Locale.ROOT, "%.0f %% of edges vanish", percent);
        }
    }

    /**
     * Scores a page on several stacks.
     *
     * @param stacks of the page's inks, on different substrates
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param byVanish whether the best comes first; otherwise the order stays
     */
    public static List<Place> score(
            PageJob page,
            List<Stack> stacks,
            boolean overprint,
            Set<Integer> layersOn,
            boolean byVanish,
            Cancel cancel,
            Progress progress)
            throws Refusal {
        PlateRequest region = PlateRequest.of(page.info().box(PageBox.TRIM), ArtworkEdges.DPI, overprint, layersOn);
        ArtworkEdges edges = ArtworkEdges.of(
                PlaneSource.of(page.plate()),
                region,
                new AskedColours(page.inkColours(), page.condition()),
                cancel,
                progress);
        List<Place> places = new ArrayList<>();
        for (Stack stack : stacks) {
            cancel.check();
            places.add(new Place(stack, VanishScore.of(edges, new StackModel(stack))));
        }
        if (byVanish) {
            places.sort(Comparator.comparingDouble(place -> place.score().score()));
        }
        return places;
    }

    /**
     * What to put on a sheet.
     *
     * @param page the artwork
     * @param name of the artwork, for the head line
     * @param places in order, 2 to {@value ContactSheet#MOST}
     * @param ranked whether they are in order of their score
     * @param overprint whether overprint is honoured
     * @param layersOn ids of the layers that are on
     * @param picturePx pixels on the longer side of each picture, {@value #MIN_PICTURE_PX} to {@value #MAX_PICTURE_PX}
     * @param file where the sheet goes
     * @param replace whether an existing file may be replaced
     */
    public record Order(
            PageJob page,
            String name,
            List<Place> places,
            boolean ranked,
            boolean overprint,
            Set<Integer> layersOn,
            int picturePx,
            Path file,
            boolean replace) {
        /** Checks the numbers and copies the collections. */
        public Order {
            places = List.copyOf(places);
            layersOn = Set.copyOf(layersOn);
            if (places.size() < 2 || places.size() > ContactSheet.MOST) {
                throw new IllegalArgumentException(places.size() + " substrates");
            }
            if (picturePx < MIN_PICTURE_PX || picturePx > MAX_PICTURE_PX) {
                throw new IllegalArgumentException("pictures of " + picturePx + " pixels");
            }
        }
    }

    /**
     * Paints and writes a sheet; nothing is left behind when it fails or is cancelled.
     *
     * @throws Refusal if the artwork cannot be painted or the file cannot be written
     */
    public static Proofs.Result write(Order order, Cancel cancel, Progress progress) throws Refusal {
        BufferedImage[] sheet = new BufferedImage[1];
        SafeFiles.file(order.file(), order.replace(), temporary -> {
            sheet[0] = paint(order, cancel, progress);
            progress.report("writing", -1);
            ProofPng.write(sheet[0], dpi(order), notes(order), temporary);
            cancel.check();
        });
        return new Proofs.Result(order.file(), sheet[0].getWidth(), sheet[0].getHeight());
    }

    private static boolean onGarment(Place place) {
        return place.substrate().kind() == Substrate.Kind.GARMENT;
    }

    private static double dpi(Order order) {
        Box trim = order.page().info().box(PageBox.TRIM);
        return order.picturePx() / (1 + 2 * CLOTH) / Math.max(trim.width(), trim.height()) * 72;
    }

    private static BufferedImage paint(Order order, Cancel cancel, Progress progress) throws Refusal {
        PlateRequest request =
                PlateRequest.of(order.page().info().box(PageBox.TRIM), dpi(order), order.overprint(), order.layersOn());
        boolean garments = order.places().stream().anyMatch(LineUp::onGarment);
        int cloth = garments ? (int) Math.round(CLOTH * Math.max(request.width(), request.height())) : 0;
        ContactSheet sheet =
                new ContactSheet(order.places().size(), request.width() + 2 * cloth, request.height() + 2 * cloth);
        BufferedImage picture = sheet.sheet(order.name(), subtitle(order), captions(order), Proofs.CAUTION);
        int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
        InkPlanes planes = order.page().plate().render(request, cancel, progress);
        for (int i = 0; i < order.places().size(); i++) {
            progress.report("painting", (double) i / order.places().size());
            Stack stack = order.places().get(i).stack();
            Rectangle at = sheet.place(i);
            if (onGarment(order.places().get(i))) { // a sheet of paper ends at its trim
                fill(
                        pixels,
                        picture.getWidth(),
                        at,
                        Srgb.labToArgb(stack.substrate().lab()));
                sheet.frame(picture, i);
            }
            int offset = (at.y + cloth) * picture.getWidth() + at.x + cloth;
            Appearance.paint(
                    planes, new StackModel(stack), PaintOptions.FLAT, pixels, offset, picture.getWidth(), cancel);
        }
        return picture;
    }

    private static void fill(int[] pixels, int stride, Rectangle at, int argb) {
        for (int y = at.y; y < at.y + at.height; y++) {
            java.util.Arrays.fill(pixels, y * stride + at.x, y * stride + at.x + at.width, argb);
        }
    }

    private static String subtitle(Order order) {
        return "Line-up on " + order.places().size() + " substrates"
                + (order.ranked() ? ", those that keep most of the artwork's edges first" : "");
    }

    private static List<ContactSheet.Caption> captions(Order order) {
        List<ContactSheet.Caption> captions = new ArrayList<>();
        for (Place place : order.places()) {
            String rank = order.ranked() ? captions.size() + 1 + "  " : "";
            captions.add(new ContactSheet.Caption(rank + place.substrate().name(), place.words()));
        }
        return captions;
    }

    private static Map<String, String> notes(Order order) {
        Map<String, String> notes = new LinkedHashMap<>();
        notes.put("Title", "Line-up of " + order.name());
        StringBuilder list = new StringBuilder();
        order.places().forEach(place -> list.append(place.substrate().name())
                .append(": ")
                .append(place.words())
                .append('\n'));
        notes.put("Description", list.toString().stripTrailing());
        notes.put("Comment", Proofs.CAUTION);
        notes.put("Software", "Inkground");
        return notes;
    }
}
