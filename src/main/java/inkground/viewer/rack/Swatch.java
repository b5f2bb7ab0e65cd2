package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;
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
        ImageView picture = new ImageView(SwatchArt.of(card, (int) width * FINE, (int) height * FINE));
        picture.setFitWidth(width);
        picture.setFitHeight(height);
        Polygon cut = card.garment() ? pinked(width, height) : sheet(width, height);
        picture.setClip(cut);
        Polygon edge = card.garment() ? pinked(width, height) : sheet(width, height);
        edge.getStyleClass().add("swatch-edge");
        edge.setManaged(false);
        getChildren().addAll(picture, edge);
        setMinSize(width, height);
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
