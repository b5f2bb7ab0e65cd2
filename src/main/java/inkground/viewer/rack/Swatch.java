package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import javafx.scene.image.Image;
import javafx.scene.layout.StackPane;
import javafx.scene.paint.ImagePattern;
import javafx.scene.paint.Paint;
import javafx.scene.shape.Polygon;

/** A piece of a substrate: cloth is cut with pinking shears, paper has one corner turned down. */
public final class Swatch extends StackPane {
    /** Pixels of the picture per logical pixel, so that it is sharp on fine screens. */
    private static final int FINE = 2;

    private static final double TOOTH = 4;

    /**
     * @param width logical pixels
     * @param height logical pixels
     */
    public Swatch(SubstrateCard card, double width, double height) {
        getStyleClass().add("swatch");
        Polygon cut = card.garment() ? pinked(width, height) : sheet(width, height);
        // A picture with a clip of this shape would be painted apart and blended in, at every step.
        Image art = SwatchArt.of(card, (int) width * FINE, (int) height * FINE);
        Paint cloth = new ImagePattern(art, 0, 0, width, height, false);
        // A shape listens to the picture that fills it, and the picture is shared and outlives the swatch.
        sceneProperty().addListener((o, before, now) -> cut.setFill(now == null ? null : cloth));
        cut.getStyleClass().add("swatch-edge");
        cut.setManaged(false);
        getChildren().add(cut);
        setMinSize(width, height);
        setPrefSize(width, height);
        setMaxSize(width, height);
        if (!card.garment()) {
            Polygon fold = new Polygon(width - 11, 0, width, 11, width - 11, 11);
            fold.getStyleClass().add("swatch-fold");
            fold.setManaged(false);
            getChildren().add(fold);
        }
    }

    private static Polygon pinked(double width, double height) {
        Polygon shape = new Polygon();
        int teeth = (int) Math.round(width / TOOTH / 2);
        double step = width / teeth;
        for (int i = 0; i < teeth; i++) {
            shape.getPoints().addAll(i * step, TOOTH, (i + 0.5) * step, 0.0);
        }
        shape.getPoints().addAll(width, TOOTH, width, height - TOOTH);
        for (int i = teeth - 1; i >= 0; i--) {
            shape.getPoints().addAll((i + 0.5) * step, height, i * step, height - TOOTH);
        }
        return shape;
    }

    private static Polygon sheet(double width, double height) {
        return new Polygon(0, 0, width - 11, 0, width, 11, width, height, 0, height);
    }
}
