package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.ui.Sheet;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;

/** What may be wrong with a screen: words cut off, clipped or without contrast, controls over one another, outside, or nameless. */
final class ScreenCheck {
    /** Faults met, each told once with where it was met first. */
    private final List<String> faults = new ArrayList<>();

    List<String> faults() {
        return faults;
    }

    /**
     * @return the parts of a screen in the order in which Tab meets them, but for the nameless cells of lists, whose number differs, and
     *     what is there only while work is done
     */
    static List<String> parts(Parent root) {
        return Nodes.shown(top(root)).stream()
                .filter(node -> node instanceof Control
                        && node.isFocusTraversable()
                        && (node.getId() != null || !clipped(node)))
                .filter(node -> !"stop".equals(node.getId()))
                .map(ScreenCheck::part)
                .toList();
    }

    /** Figures are not part of a name. */
    private static String part(Node node) {
        String words = node instanceof Labeled labeled && !labeled.getText().isEmpty()
                ? labeled.getText()
                : node.getAccessibleText();
        String name = node.getId() != null ? "#" + node.getId() : String.valueOf(words);
        return node.getClass().getSimpleName() + " " + name.replaceAll("[0-9]+", "0");
    }

    private static Node top(Parent root) {
        return Nodes.all(root).stream()
                .filter(node -> node instanceof Sheet && node.isVisible())
                .findFirst()
                .orElse(root);
    }

    /** Looks at a screen that is laid out, and keeps what is wrong with it. */
    void look(Parent root, String where) {
        Node top = top(root);
        List<Node> shown = Nodes.shown(top);
        List<Control> controls = shown.stream()
                .filter(node -> node instanceof Control && Nodes.reachable(node))
                .map(Control.class::cast)
                .toList();
        assertThat(shown).as(where).isNotEmpty();
        for (Node node : shown) {
            if (node instanceof Labeled labeled) {
                boolean explained = node instanceof Label && (labeled.getAccessibleHelp() != null || told(labeled));
                Nodes.cutOff(labeled)
                        .filter(drawn -> !explained)
                        .ifPresent(drawn -> fault(where, node, "is cut off: " + drawn));
                if (!clipped(node) && Nodes.clipped(labeled)) {
                    fault(where, node, "is clipped");
                }
                Contrast.of(labeled)
                        .filter(ratio -> ratio < Contrast.LEAST)
                        .ifPresent(ratio -> fault(where, node, String.format("has a contrast of %.1f", ratio)));
            }
            Bounds at = Nodes.seen(node);
            Bounds whole = root.getLayoutBounds();
            boolean inside = at.getMinX() > -1
                    && at.getMinY() > -1
                    && at.getMaxX() < whole.getWidth() + 1
                    && at.getMaxY() < whole.getHeight() + 1;
            if (!inside && (node instanceof Labeled || controls.contains(node)) && !clipped(node)) {
                fault(where, node, "reaches out of the window: " + at);
            }
        }
        for (Control control : controls) {
            if (!Nodes.named(control)) {
                fault(where, control, "has no name");
            }
            boolean words =
                    control instanceof ButtonBase button && !button.getText().isEmpty();
            if (control.getAccessibleHelp() == null && !words && !labelled(control, shown)) {
                fault(where, control, "has neither words nor tooltip");
            }
        }
        overlaps(where, controls);
    }

    /** @return whether what it lies in tells the same words in full, as the cells of rack and line-up do */
    private static boolean told(Labeled label) {
        String words = label.getText().replace('\n', ' ');
        for (Node n = label.getParent(); n != null; n = n.getParent()) {
            if (n.getAccessibleText() != null && n.getAccessibleText().contains(words)) {
                return true;
            }
        }
        return false;
    }

    /** @return whether it is in a list, whose cells are scrolled */
    private static boolean clipped(Node node) {
        for (Node n = node; n != null; n = n.getParent()) {
            if (n instanceof ScrollPane || n.getStyleClass().contains("list-view")) {
                return true;
            }
        }
        return false;
    }

    private static boolean labelled(Control control, List<Node> shown) {
        return control.getAccessibleText() != null
                || shown.stream().anyMatch(node -> node instanceof Label label && label.getLabelFor() == control);
    }

    private void overlaps(String where, List<Control> controls) {
        for (int i = 0; i < controls.size(); i++) {
            for (int j = i + 1; j < controls.size(); j++) {
                Control a = controls.get(i);
                Control b = controls.get(j);
                Bounds both = Nodes.common(Nodes.seen(a), Nodes.seen(b));
                if (both.getWidth() > 1 && both.getHeight() > 1 && !Nodes.all(a).contains(b)) {
                    fault(where, a, "lies over " + name(b));
                }
            }
        }
    }

    private void fault(String where, Node node, String what) {
        String fault = name(node) + " " + what;
        if (faults.stream().noneMatch(told -> told.endsWith(fault))) {
            faults.add(where + fault);
        }
    }

    private static String name(Node node) {
        String words = node instanceof Labeled labeled ? " '" + labeled.getText() + "'" : "";
        return node.getClass().getSimpleName() + " #" + node.getId() + words;
    }
}
