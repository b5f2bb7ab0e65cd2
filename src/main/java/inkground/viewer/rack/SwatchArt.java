package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/** Draws a bit of paper or cloth in its colour, with the texture its data names. Seeded: the same card looks the same. */
public final class SwatchArt {
    /** Pictures kept, of about 50 kB each: more than a screen shows at once. */
    private static final int KEPT = 160;

    private static final Map<Kept, Image> PICTURES = new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Kept, Image> eldest) {
            return size() > KEPT;
        }
    };

    private record Kept(String id, int argb, String texture, int widthPx, int heightPx) {}

    private SwatchArt() {}

    /**
     * Used on the window's thread; the pictures used last are kept.
     *
     * @param widthPx of the picture, in its own pixels
     * @param heightPx likewise
     * @return the picture; its mean colour is that of the card
     */
    public static Image of(SubstrateCard card, int widthPx, int heightPx) {
        return PICTURES.computeIfAbsent(
                new Kept(card.id(), card.argb(), card.texture(), widthPx, heightPx),
                key -> draw(card, widthPx, heightPx));
    }

    private static Image draw(SubstrateCard card, int widthPx, int heightPx) {
        Random random = new Random(card.id().hashCode());
        int[] argb = new int[widthPx * heightPx];
        for (int y = 0; y < heightPx; y++) {
            for (int x = 0; x < widthPx; x++) {
                argb[y * widthPx + x] = shade(card.argb(), grain(card.texture(), x, y, random));
            }
        }
        WritableImage image = new WritableImage(widthPx, heightPx);
        image.getPixelWriter().setPixels(0, 0, widthPx, heightPx, PixelFormat.getIntArgbInstance(), argb, 0, widthPx);
        return image;
    }

    /** @return how much lighter (above 0) or darker a pixel is, in sRGB steps; balanced about 0 */
    private static double grain(String texture, int x, int y, Random random) {
        double noise = random.nextDouble() - 0.5;
        return switch (texture) {
            case "jersey" -> knit(x, y) * 11 + noise * 6;
            case "heather" -> knit(x, y) * 8 + (random.nextInt(5) == 0 ? noise * 60 : noise * 8);
            case "woven" -> weave(x, y) * 12 + noise * 6;
            case "fleece" -> noise * 16;
            case "recycled" -> noise * 9 - (random.nextInt(60) == 0 ? 34 : 0);
            case "kraft" -> noise * 10 + (Math.floorMod(y * 7 + x / 9, 5) == 0 ? -4 : 1);
            case "coated" -> noise * 1.5;
            default -> noise * 7;
        };
    }

    /** Columns of slanted stitches, leaning one way and the other. */
    private static double knit(int x, int y) {
        int column = Math.floorMod(x, 8);
        int slant = column < 4 ? column : 7 - column;
        int along = Math.floorMod(y + slant, 6);
        double gap = column == 0 || column == 7 ? -0.6 : 0.2;
        return gap + (along < 3 ? 0.4 : -0.4);
    }

    /** Threads over and under. */
    private static double weave(int x, int y) {
        boolean over = (Math.floorDiv(x, 3) + Math.floorDiv(y, 3)) % 2 == 0;
        int across = Math.floorMod(over ? y : x, 3);
        return across == 1 ? 0.7 : -0.35;
    }

    private static int shade(int argb, double by) {
        int step = (int) Math.round(by);
        return 0xff000000
                | clamp((argb >> 16 & 255) + step) << 16
                | clamp((argb >> 8 & 255) + step) << 8
                | clamp((argb & 255) + step);
    }

    private static int clamp(int value) {
        return Math.max(0, Math.min(255, value));
    }
}
