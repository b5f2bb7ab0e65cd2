package inkground.viewer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;

/** The parts of the window, to which one key gives the focus in turn; within a part, Tab goes on. */
final class Parts {
    /**
     * One part.
     *
     * @param root holds its controls
     * @param focus gives it the keys
     */
    private record Part(Node root, Runnable focus) {}

    private final List<Part> parts = new ArrayList<>();

    /** Adds a part after the others; its first control gets the keys. */
    void add(Node root) {
        add(root, () -> firstStop(root).ifPresent(Node::requestFocus));
    }

    /** Adds a part after the others that knows itself what gets the keys. */
    void add(Node root, Runnable focus) {
        parts.add(new Part(root, focus));
    }

    /** Gives the keys to the next part ({@code by} above 0) or the one before; parts without anything to focus are left out. */
    void step(int by) {
        int at = current();
        for (int i = 0; i < parts.size(); i++) {
            at = Math.floorMod(at + Integer.signum(by), parts.size());
            if (firstStop(parts.get(at).root()).isPresent()) {
                parts.get(at).focus().run();
                return;
            }
        }
    }

    /** @return index of the innermost part that has the focus; of the last one, where none has */
    private int current() {
        Node node = parts.get(0).root().getScene().getFocusOwner();
        while (node != null) {
            for (int i = 0; i < parts.size(); i++) {
                if (parts.get(i).root() == node) {
                    return i;
                }
            }
            node = node.getParent();
        }
        return parts.size() - 1;
    }

    /** @return the first node beneath that can have the focus now */
    static Optional<Node> firstStop(Node root) {
        if (!root.isVisible() || root.isDisabled()) {
            return Optional.empty();
        }
        if (root.isFocusTraversable()) {
            return Optional.of(root);
        }
        return root instanceof Parent parent
                ? parent.getChildrenUnmodifiable().stream()
                        .map(Parts::firstStop)
                        .flatMap(Optional::stream)
                        .findFirst()
                : Optional.empty();
    }
}
