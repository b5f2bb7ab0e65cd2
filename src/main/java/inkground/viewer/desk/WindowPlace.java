package inkground.viewer.desk;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;

/**
 * Where the window stands, in the logical pixels of the screens.
 *
 * @param bounds of the window when it does not fill its screen
 * @param filling whether it fills its screen
 */
public record WindowPlace(Rectangle2D bounds, boolean filling) {
    /** Size of a window that nobody has sized yet. */
    private static final int FIRST_WIDTH = 1280;

    private static final int FIRST_HEIGHT = 800;

    /**
     * @param kept where the window stood last
     * @param screens parts of the screens that a window may take, the first screen first; at least one
     * @return where to show it: as it was kept where a screen is still there for it, else in the middle of the first screen;
     *     never larger than its screen, and wholly on it
     */
    public static WindowPlace on(Optional<WindowPlace> kept, List<Rectangle2D> screens) {
        Rectangle2D first = screens.get(0);
        Rectangle2D wanted = kept.map(WindowPlace::bounds)
                .filter(place -> screens.stream().anyMatch(place::intersects))
                .orElseGet(() -> new Rectangle2D(
                        first.getMinX() + Math.max(0, (first.getWidth() - FIRST_WIDTH) / 2),
                        first.getMinY() + Math.max(0, (first.getHeight() - FIRST_HEIGHT) / 2),
                        FIRST_WIDTH,
                        FIRST_HEIGHT));
        Rectangle2D screen = screens.stream()
                .max(Comparator.comparingDouble(s -> shared(s, wanted)))
                .orElseThrow();
        double width = Math.min(wanted.getWidth(), screen.getWidth());
        double height = Math.min(wanted.getHeight(), screen.getHeight());
        return new WindowPlace(
                new Rectangle2D(
                        Math.max(screen.getMinX(), Math.min(wanted.getMinX(), screen.getMaxX() - width)),
                        Math.max(screen.getMinY(), Math.min(wanted.getMinY(), screen.getMaxY() - height)),
                        width,
                        height),
                kept.map(WindowPlace::filling).orElse(false));
    }

    private static double shared(Rectangle2D a, Rectangle2D b) {
        double width = Math.min(a.getMaxX(), b.getMaxX()) - Math.max(a.getMinX(), b.getMinX());
        double height = Math.min(a.getMaxY(), b.getMaxY()) - Math.max(a.getMinY(), b.getMinY());
        return Math.max(0, width) * Math.max(0, height);
    }

    /** @return as one line, for {@link #of} */
    String text() {
        return bounds.getMinX() + " " + bounds.getMinY() + " " + bounds.getWidth() + " " + bounds.getHeight() + " "
                + filling;
    }

    /** @return what {@link #text} wrote; empty for anything else */
    static Optional<WindowPlace> of(String text) {
        String[] parts = text.split(" ");
        if (parts.length != 5) {
            return Optional.empty();
        }
        try {
            double[] at = new double[4];
            for (int i = 0; i < 4; i++) {
                at[i] = Double.parseDouble(parts[i]);
                if (!Double.isFinite(at[i])) {
                    return Optional.empty();
                }
            }
            return at[2] < 1 || at[3] < 1
                    ? Optional.empty()
                    : Optional.of(new WindowPlace(
                            new Rectangle2D(at[0], at[1], at[2], at[3]), Boolean.parseBoolean(parts[4])));
        } catch (NumberFormatException e) {
            return Optional.empty(); // written by hand, or by another version
        }
    }
}
