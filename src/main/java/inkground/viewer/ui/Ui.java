package inkground.viewer.ui;

import java.util.Locale;
import javafx.beans.property.BooleanProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.stage.Window;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.javafx.FontIcon;

/** Small makings shared by the views. */
public final class Ui {
    /** Style class of controls that use the arrow keys themselves, which elsewhere step substrates and inks. */
    public static final String TAKES_ARROWS = "takes-arrows";

    private Ui() {}

    /**
     * Has a pane paint what changed in it, and no more. By itself it keeps all of its content as a picture, which is made anew
     * with every change.
     */
    public static void paintDirectly(ScrollPane pane) {
        pane.skinProperty().addListener((o, before, now) -> {
            Node viewport = pane.lookup(".viewport");
            if (viewport != null) {
                viewport.setCache(false);
            }
        });
    }

    /** @return a button with text (may be empty), icon and the tooltip of a command */
    public static Button button(String id, String text, Ikon icon, Command command, Runnable action) {
        Button button = new Button(text, new FontIcon(icon));
        dress(button, id, text, command);
        button.setOnAction(e -> action.run());
        return button;
    }

    /** @return a button that no key stands for, with text and one sentence */
    public static Button button(String id, String text, String sentence, Runnable action) {
        Button button = new Button(text);
        dress(button, id, text, sentence, sentence);
        button.setOnAction(e -> action.run());
        return button;
    }

    /** @return a button that no key stands for, with text (may be empty), icon and one sentence */
    public static Button button(String id, String text, Ikon icon, String sentence, Runnable action) {
        Button button = new Button(text, new FontIcon(icon));
        dress(button, id, text, sentence, sentence);
        button.setOnAction(e -> action.run());
        return button;
    }

    /** @return a switch bound to a property */
    public static ToggleButton toggle(String id, String text, Ikon icon, Command command, BooleanProperty property) {
        ToggleButton button = new ToggleButton(text, icon == null ? null : new FontIcon(icon));
        dress(button, id, text, command);
        button.selectedProperty().bindBidirectional(property);
        return button;
    }

    /** @return a switch that only asks for a change; its owner sets whether it is on */
    public static ToggleButton toggle(String id, String text, Command command, Runnable action) {
        ToggleButton button = new ToggleButton(text);
        dress(button, id, text, command);
        button.setOnAction(e -> {
            button.setSelected(!button.isSelected());
            action.run();
        });
        return button;
    }

    private static void dress(ButtonBase button, String id, String text, Command command) {
        dress(button, id, text, command.sentence(), command.tip());
    }

    private static void dress(ButtonBase button, String id, String text, String sentence, String tip) {
        button.setId(id);
        button.setFocusTraversable(true);
        button.setMnemonicParsing(false);
        button.setMinWidth(Region.USE_PREF_SIZE);
        tip(button, tip);
        button.setAccessibleText(text.isEmpty() ? sentence : text + ": " + sentence);
    }

    /** Gives a node a tooltip that comes soon and stays long enough to read, or changes its text. */
    public static void tip(Node node, String text) {
        Tip.on(node, text);
    }

    /** @return a label with style classes */
    public static Label label(String text, String... styles) {
        Label label = new Label(text);
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** @return an area in cm² with as many digits as make sense */
    public static String area(double cm2) {
        return String.format(Locale.ROOT, cm2 < 10 ? "%.2f" : cm2 < 100 ? "%.1f" : "%.0f", cm2);
    }

    /** @return what pushes its neighbours apart */
    public static Region spring() {
        Region spring = new Region();
        HBox.setHgrow(spring, Priority.ALWAYS);
        return spring;
    }

    /** @return device pixels per logical pixel where a node is shown; 1 before it is */
    public static double outputScale(Node node) {
        Window window = node.getScene() == null ? null : node.getScene().getWindow();
        double scale = window == null ? 1 : window.getOutputScaleX();
        return scale > 0 ? scale : 1;
    }

    /** Shows a node or takes it out of the layout. */
    public static void shown(javafx.scene.Node node, boolean shown) {
        node.setVisible(shown);
        node.setManaged(shown);
    }
}
