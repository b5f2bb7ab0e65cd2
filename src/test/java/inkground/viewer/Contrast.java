package inkground.viewer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Text;

/** The contrast of words with what they stand on, WCAG 2.2, success criterion 1.4.3 and its definition of contrast ratio. */
final class Contrast {
    /** Least ratio for words of the usual size. */
    static final double LEAST = 4.5;

    private Contrast() {}

    /** @return the ratio, 1 to 21; empty for controls that are disabled, have no words, or stand on more than plain colours */
    static Optional<Double> of(Labeled labeled) {
        Optional<Text> words = labeled.lookupAll(".text").stream()
                .filter(node -> node instanceof Text text && !text.getText().isEmpty())
                .map(Text.class::cast)
                .findFirst();
        if (labeled.isDisabled() || words.isEmpty() || !(words.get().getFill() instanceof Color ink)) {
            return Optional.empty();
        }
        double opacity = 1;
        List<Color> layers = new ArrayList<>(); // the uppermost first
        boolean whole = false;
        for (Node node = words.get(); node != null && !whole; node = node.getParent()) {
            opacity *= node.getOpacity();
            if (node instanceof Region region && region.getBackground() != null) {
                if (!region.getBackground().getImages().isEmpty()) {
                    return Optional.empty();
                }
                List<BackgroundFill> fills = region.getBackground().getFills();
                for (int i = fills.size() - 1; i >= 0 && !whole; i--) {
                    if (!(fills.get(i).getFill() instanceof Color colour)) {
                        return Optional.empty();
                    }
                    layers.add(colour);
                    whole = colour.isOpaque();
                }
            }
        }
        if (!whole) {
            return Optional.empty();
        }
        Color ground = layers.get(layers.size() - 1);
        for (int i = layers.size() - 2; i >= 0; i--) {
            ground = over(layers.get(i), layers.get(i).getOpacity(), ground);
        }
        double one = luminance(over(ink, ink.getOpacity() * opacity, ground));
        double other = luminance(ground);
        return Optional.of((Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05));
    }

    private static Color over(Color top, double opacity, Color ground) {
        return ground.interpolate(Color.color(top.getRed(), top.getGreen(), top.getBlue()), opacity);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(double value) {
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }
}
