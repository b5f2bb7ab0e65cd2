package inkground.viewer.rack;

import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.paint.Color;

/** Reads an opaque colour as CSS writes it (CSS Color Module Level 4): #hex, a name, rgb() or hsl(). */
final class CssColour {
    private CssColour() {}

    /** @return its Lab, D50; empty for what is no such colour or is not opaque */
    static Optional<Lab> lab(String text) {
        String plain = text.strip().toLowerCase(Locale.ROOT);
        boolean hex = plain.matches("#([0-9a-f]{3}|[0-9a-f]{6})");
        if (!hex && !plain.matches("[a-z]+|(rgb|hsl)\\([0-9.,%\\s]+\\)")) {
            return Optional.empty();
        }
        try {
            Color colour = Color.web(plain);
            return colour.isOpaque()
                    ? Optional.of(Srgb.toLab(colour.getRed(), colour.getGreen(), colour.getBlue()))
                    : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // said in the sheet, where the text stands
        }
    }
}
