package inkground.viewer.overlay;

import inkground.viewer.state.MapChoice;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.geometry.Pos;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The switches of all that can be drawn over the proof: lines first, then the maps, of which one is shown at a time. */
public final class OverlayStrip extends ScrollPane {
    /** Time that the inks rest in one phase of their play: long enough to look, and to paint the next. */
    private static final Duration PLAY_STEP = Duration.millis(700);

    private final ViewerState state;
    private final VBox switches = new VBox();

    /** Binds to the overlays of the state. */
    public OverlayStrip(ViewerState state) {
        this.state = state;
        setId("overlays");
        getStyleClass().add("overlay-strip");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setVbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        Ui.paintDirectly(this);
        setMinWidth(USE_PREF_SIZE);
        switches.getStyleClass().add("overlay-switches");
        switches.disableProperty().bind(state.page.isNull());
        setContent(switches);
        Timeline play = new Timeline(new KeyFrame(
                PLAY_STEP, e -> state.overlays.phase.set((state.overlays.phase.get() + 1) % MapChoice.PHASES)));
        play.setCycleCount(Timeline.INDEFINITE);
        state.overlays.map.addListener((Observable o) -> {
            if (state.overlays.map.get() == MapKind.REGISTER) {
                play.play();
            } else {
                play.stop();
            }
        });
        caption("Lines");
        line("rulers", "Rulers", Feather.ALIGN_LEFT, Command.RULERS, state.rulers);
        line("trim", "Trim", Feather.SCISSORS, Command.TRIM, state.overlays.trim);
        line("bleed", "Bleed", Feather.MAXIMIZE_2, Command.BLEED, state.overlays.bleed);
        line("safe", "Safe area", Feather.SHIELD, Command.SAFE, state.overlays.safe);
        line("print-area-line", "Print area", Feather.SQUARE, Command.PRINT_AREA, state.worn.area);
        line("places", "Places", Feather.MAP_PIN, Command.PLACES, state.overlays.places);
        caption("Maps");
        map("bare-map", Feather.GRID, Command.BARE_MAP, MapKind.BARE);
        map("vanish-map", Feather.CLOUD, Command.VANISH_MAP, MapKind.VANISH);
        map("reach-map", Feather.DROPLET, Command.REACH_MAP, MapKind.REACH);
        map("shift-map", Feather.SHUFFLE, Command.SHIFT_MAP, MapKind.SHIFT);
        map("screen-map", Feather.MONITOR, Command.SCREEN_MAP, MapKind.SCREEN);
        map("total-ink-map", Feather.BAR_CHART_2, Command.TOTAL_INK_MAP, MapKind.TOTAL_INK);
        map("thin-map", Feather.MINUS, Command.THIN_MAP, MapKind.THIN);
        map("register-map", Feather.MOVE, Command.REGISTER_MAP, MapKind.REGISTER);
        map("overprint-map", Feather.LAYERS, Command.OVERPRINT_MAP, MapKind.OVERPRINT);
    }

    private void caption(String words) {
        switches.getChildren().add(Ui.label(words, "caption"));
    }

    private void line(String id, String text, Ikon icon, Command command, BooleanProperty shown) {
        place(Ui.toggle(id, text, icon, command, shown));
    }

    private void map(String id, Ikon icon, Command command, MapKind kind) {
        ToggleButton toggle = Ui.toggle(id, kind.label(), command, () -> state.overlays.toggle(kind));
        toggle.setGraphic(new FontIcon(icon));
        state.overlays.map.addListener((Observable o) -> toggle.setSelected(state.overlays.map.get() == kind));
        toggle.setSelected(state.overlays.map.get() == kind);
        place(toggle);
    }

    private void place(ToggleButton toggle) {
        toggle.setAlignment(Pos.CENTER_LEFT);
        toggle.setMaxWidth(Double.MAX_VALUE);
        switches.getChildren().add(toggle);
    }
}
