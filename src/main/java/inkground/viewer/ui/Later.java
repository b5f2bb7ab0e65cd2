package inkground.viewer.ui;

import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.layout.StackPane;

/**
 * A place for what is not looked at when the window opens: it is built when the place is first seen, so that nobody waits for
 * controls that they may never use. Hidden until it is told otherwise.
 *
 * @param <N> what is built
 */
public final class Later<N extends Node> extends StackPane {
    private final Supplier<N> make;
    private final Consumer<N> placed;
    private N node;

    /** @param make builds it; it finds the state as it is then */
    public Later(Supplier<N> make) {
        this(make, made -> {});
    }

    /**
     * @param make builds it; it finds the state as it is then
     * @param placed told once when it lies in the scene
     */
    Later(Supplier<N> make, Consumer<N> placed) {
        this.make = make;
        this.placed = placed;
        setPickOnBounds(false);
        setMinSize(0, 0);
        setVisible(false);
        visibleProperty().addListener((o, before, now) -> {
            if (now) {
                get();
            }
        });
    }

    /** @return what lies here, built now if it was not */
    public N get() {
        if (node == null) {
            node = make.get();
            getChildren().add(node);
            placed.accept(node);
        }
        return node;
    }
}
