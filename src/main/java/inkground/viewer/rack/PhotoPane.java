package inkground.viewer.rack;

import inkground.app.Photograph;
import inkground.app.Photograph.Patch;
import java.util.function.Consumer;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Circle;

/** A photograph with a round patch on it, put there by click or arrow keys, whose colour is averaged. */
final class PhotoPane extends Region {
    /** Size in logical pixels. */
    static final double WIDTH = 330;

    static final double HEIGHT = 190;
    private static final double LEAST_RADIUS = 2;
    private static final double MOST_RADIUS = 80;

    private final Consumer<Patch> picked;
    private final ImageView view = new ImageView();
    private final Circle halo = new Circle();
    private final Circle ring = new Circle();
    private Photograph photograph;
    private double x;
    private double y;
    private double radius;

    /**
     * @param picked told the colour of the patch
     */
    PhotoPane(Consumer<Patch> picked) {
        this.picked = picked;
        setId("photo");
        getStyleClass().add("photo");
        setMinSize(WIDTH, HEIGHT);
        setMaxSize(WIDTH, HEIGHT);
        setPrefSize(WIDTH, HEIGHT);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(
                "Photograph: click the cloth, or move the patch with the arrow keys; + and − change its size");
        setCursor(Cursor.CROSSHAIR);
        view.setFitWidth(WIDTH);
        view.setFitHeight(HEIGHT);
        view.setPreserveRatio(true);
        view.setManaged(false);
        for (Circle circle : new Circle[] {halo, ring}) {
            circle.setManaged(false);
            circle.setMouseTransparent(true);
        }
        halo.getStyleClass().add("photo-halo");
        ring.getStyleClass().add("photo-ring");
        getChildren().addAll(view, halo, ring);
        setOnMousePressed(e -> pick(e.getX(), e.getY()));
        setOnMouseDragged(e -> pick(e.getX(), e.getY()));
        setOnScroll(e -> resizePatch(e.getDeltaY() > 0 ? 1.15 : 1 / 1.15));
        setOnKeyPressed(this::key);
    }

    /**
     * @param next to show, with the patch in its middle; null for none
     */
    void show(Photograph next) {
        photograph = next;
        halo.setVisible(next != null);
        ring.setVisible(next != null);
        view.setImage(next == null ? null : image(next));
        if (next != null) {
            radius = Math.max(LEAST_RADIUS, Math.min(next.widthPx(), next.heightPx()) / 24.0);
            view.relocate(left(), top());
            put(next.widthPx() / 2.0, next.heightPx() / 2.0);
        }
    }

    private static Image image(Photograph photograph) {
        WritableImage image = new WritableImage(photograph.widthPx(), photograph.heightPx());
        image.getPixelWriter()
                .setPixels(
                        0,
                        0,
                        photograph.widthPx(),
                        photograph.heightPx(),
                        PixelFormat.getIntArgbInstance(),
                        photograph.argb(),
                        0,
                        photograph.widthPx());
        return image;
    }

    private double scale() {
        return Math.min(WIDTH / photograph.widthPx(), HEIGHT / photograph.heightPx());
    }

    private double left() {
        return (WIDTH - photograph.widthPx() * scale()) / 2;
    }

    private double top() {
        return (HEIGHT - photograph.heightPx() * scale()) / 2;
    }

    private void pick(double viewX, double viewY) {
        requestFocus();
        if (photograph != null) {
            put((viewX - left()) / scale(), (viewY - top()) / scale());
        }
    }

    private void put(double toX, double toY) {
        x = Math.max(0, Math.min(photograph.widthPx() - 1, toX));
        y = Math.max(0, Math.min(photograph.heightPx() - 1, toY));
        for (Circle circle : new Circle[] {halo, ring}) {
            circle.setCenterX(left() + x * scale());
            circle.setCenterY(top() + y * scale());
            circle.setRadius(Math.max(3, radius * scale()));
        }
        picked.accept(photograph.patch(x, y, radius));
    }

    private void resizePatch(double factor) {
        if (photograph != null) {
            radius = Math.max(LEAST_RADIUS, Math.min(MOST_RADIUS, radius * factor));
            put(x, y);
        }
    }

    private void key(KeyEvent e) {
        if (photograph == null) {
            return;
        }
        double step = e.isShiftDown() ? 20 : 4;
        switch (e.getCode()) {
            case LEFT -> put(x - step, y);
            case RIGHT -> put(x + step, y);
            case UP -> put(x, y - step);
            case DOWN -> put(x, y + step);
            case PLUS, ADD, EQUALS -> resizePatch(1.25);
            case MINUS, SUBTRACT -> resizePatch(1 / 1.25);
            default -> {
                return;
            }
        }
        e.consume();
    }
}
