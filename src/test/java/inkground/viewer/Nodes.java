package inkground.viewer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.BoundingBox;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.text.Text;

/** What tests ask of the nodes of a scene. */
final class Nodes {
    private Nodes() {}

    /** @return a node and all beneath it, in the order in which Tab meets them */
    static List<Node> all(Node root) {
        List<Node> out = new ArrayList<>(List.of(root));
        if (root instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> out.addAll(all(child)));
        }
        return out;
    }

    /** @return those that are seen: visible as all around them are, and larger than nothing */
    static List<Node> shown(Node root) {
        return all(root).stream()
                .filter(node ->
                        visible(node) && seen(node).getWidth() > 0 && seen(node).getHeight() > 0)
                .toList();
    }

    private static boolean visible(Node node) {
        for (Node n = node; n != null; n = n.getParent()) {
            if (!n.isVisible()) {
                return false;
            }
        }
        return true;
    }

    /** @return whether Tab stops at it */
    static boolean reachable(Node node) {
        boolean enabled = true;
        for (Node n = node; n != null; n = n.getParent()) {
            enabled &= n.isVisible() && !n.isDisabled();
        }
        return enabled && node.isFocusTraversable() && !(node instanceof ScrollBar);
    }

    /** @return where it is seen in the scene: without what is scrolled out of sight */
    static Bounds seen(Node node) {
        Bounds bounds = node.localToScene(node.getLayoutBounds());
        for (Node n = node.getParent(); n != null; n = n.getParent()) {
            if (n instanceof ScrollPane scroll) {
                bounds = common(bounds, scroll.localToScene(scroll.getLayoutBounds()));
            }
        }
        return bounds;
    }

    /** @return what two boxes have in common; empty boxes have no width or height */
    static Bounds common(Bounds a, Bounds b) {
        double x0 = Math.max(a.getMinX(), b.getMinX());
        double y0 = Math.max(a.getMinY(), b.getMinY());
        return new BoundingBox(
                x0,
                y0,
                Math.max(0, Math.min(a.getMaxX(), b.getMaxX()) - x0),
                Math.max(0, Math.min(a.getMaxY(), b.getMaxY()) - y0));
    }

    /** @return whether a screen reader has words for a control */
    static boolean named(Control control) {
        return control.getAccessibleText() != null
                || control instanceof Labeled labeled && !labeled.getText().isEmpty()
                || control instanceof javafx.scene.control.ProgressBar;
    }

    /** @return the words as they are drawn, where they are not all there */
    static Optional<String> cutOff(Labeled labeled) {
        return labeled.getText() == null || labeled.getText().isEmpty()
                ? Optional.empty()
                : labeled.lookupAll(".text").stream()
                        .filter(Text.class::isInstance)
                        .map(text -> ((Text) text).getText())
                        .findFirst()
                        .filter(drawn -> !drawn.equals(labeled.getText()));
    }

    /** @return whether words reach out of the clip of what they lie in, by more than a pixel */
    static boolean clipped(Labeled labeled) {
        return labeled.lookupAll(".text").stream()
                .filter(node -> node instanceof Text text && !text.getText().isEmpty())
                .anyMatch(Nodes::clipped);
    }

    private static boolean clipped(Node words) {
        Bounds at = words.localToScene(words.getLayoutBounds());
        for (Node n = words; n != null; n = n.getParent()) {
            if (n.getClip() != null) {
                Bounds left = common(at, n.localToScene(n.getClip().getBoundsInParent()));
                if (left.getWidth() < at.getWidth() - 1 || left.getHeight() < at.getHeight() - 1) {
                    return true;
                }
            }
        }
        return false;
    }
}
