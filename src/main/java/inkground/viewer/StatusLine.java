package inkground.viewer;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.rack.SubstrateText;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.List;
import javafx.animation.PauseTransition;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.util.Duration;
import org.kordamp.ikonli.feather.Feather;

/** Where the pointer is and what lies there; long work with its cancel button; zoom and unit. */
final class StatusLine extends HBox {
    /** Work shorter than this is not worth a bar. */
    private static final Duration PATIENCE = Duration.millis(500);

    private final ViewerState state;
    private final Label place = Ui.label("", "place");
    private final Label ink = Ui.label("", "inks-here");
    private final Label news = Ui.label("", "quiet");
    private final HBox work = new HBox();
    private final Label workWords = Ui.label("");
    private final ProgressBar bar = new ProgressBar();
    private final Button zoom = new Button();
    private Activity shown;

    StatusLine(ViewerState state) {
        this.state = state;
        getStyleClass().add("status-line");
        setAlignment(Pos.CENTER_LEFT);
        place.setId("place");
        place.setMinWidth(168);
        ink.setId("inks-here");
        ink.setMinWidth(0);
        HBox.setHgrow(ink, Priority.ALWAYS);
        ink.setMaxWidth(Double.MAX_VALUE);
        news.setMinWidth(0);
        work();
        Button unit = Ui.button("unit", "mm", Feather.CODE, Command.UNIT, () -> state.unit.set(next(state.unit.get())));
        unit.setGraphic(null);
        unit.textProperty().bind(state.unit.map(LengthUnit::word));
        zoom.setId("zoom");
        zoom.setMinWidth(USE_PREF_SIZE);
        zoom.setAlignment(Pos.CENTER);
        zoom.setOnAction(e -> state.trueSize.sheet.set(true));
        zoom.textProperty()
                .bind(Bindings.createStringBinding(
                        () -> state.trueSize.words(state.camera.get().zoom()),
                        state.camera,
                        state.trueSize.measuredPxPerMm));
        Ui.tip(zoom, "How large the page is shown against the real thing; click to measure this screen with a card");
        HBox view = new HBox(
                Ui.button("zoom-out", "", Feather.MINUS, Command.ZOOM_OUT, () -> state.zoom(1 / 1.25)),
                zoom,
                Ui.button("zoom-in", "", Feather.PLUS, Command.ZOOM_IN, () -> state.zoom(1.25)),
                Ui.button("fit", "Fit", Feather.MAXIMIZE, Command.FIT, state::fitPage));
        view.setAlignment(Pos.CENTER);
        view.disableProperty().bind(state.page.isNull());
        view.setMinWidth(USE_PREF_SIZE);
        getChildren().addAll(place, ink, news, work, view, unit);
        listen();
    }

    private void work() {
        work.setId("work");
        work.getStyleClass().add("work");
        work.setAlignment(Pos.CENTER_LEFT);
        work.setMinWidth(USE_PREF_SIZE);
        bar.setPrefWidth(120);
        Button stop = Ui.button("stop", "Stop", Feather.X, Command.ESCAPE, () -> {
            if (shown != null) {
                shown.cancel();
            }
        });
        work.getChildren().addAll(workWords, bar, stop);
        Ui.shown(work, false);
    }

    private void listen() {
        for (Observable value : List.of(state.probe, state.unit, state.page)) {
            value.addListener(o -> pointer());
        }
        PauseTransition forget = new PauseTransition(Duration.seconds(12));
        forget.setOnFinished(e -> state.news.set(null));
        state.news.addListener((Observable o) -> {
            news.setText(state.news.get() == null ? "" : state.news.get());
            Ui.shown(news, state.news.get() != null);
            forget.playFromStart();
        });
        Ui.shown(news, false);
        state.activities.addListener((Observable o) -> activities());
    }

    private void activities() {
        if (shown != null && !state.activities.contains(shown)) {
            shown = null;
            workWords.textProperty().unbind();
            bar.progressProperty().unbind();
            Ui.shown(work, false);
        }
        if (shown == null && !state.activities.isEmpty()) {
            Activity next = state.activities.get(0);
            PauseTransition wait = new PauseTransition(PATIENCE);
            wait.setOnFinished(e -> show(next));
            wait.play();
        }
    }

    private void show(Activity activity) {
        if (shown == null && state.activities.contains(activity)) {
            shown = activity;
            workWords.textProperty().bind(activity.what());
            bar.progressProperty().bind(activity.fraction());
            Ui.shown(work, true);
        }
    }

    private void pointer() {
        Probe probe = state.probe.get();
        if (probe == null || state.page.get() == null) {
            place.setText("");
            ink.setText("");
            return;
        }
        Box trim = state.page.get().info().box(PageBox.TRIM);
        LengthUnit unit = state.unit.get();
        place.setText("x " + unit.number(probe.xPt() - trim.x0()).replace('-', '−') + "  y "
                + unit.text(probe.yPt() - trim.y0()).replace('-', '−'));
        ink.setText(probe.tints().isEmpty() ? "" : inksAt(probe));
    }

    private String inksAt(Probe probe) {
        StringBuilder words = new StringBuilder(probe.cover());
        List<InkCard> inks = state.page.get().inks();
        for (int plane = 0; plane < inks.size(); plane++) {
            if (probe.percent(plane) > 0) {
                words.append("   ").append(inks.get(plane).ink().name());
                words.append(' ').append(probe.percent(plane));
            }
        }
        if (probe.totalPercent() > 0) {
            words.append("   total ").append(probe.totalPercent()).append(" %");
        }
        if (probe.lab() != null) {
            words.append("   ").append(SubstrateText.lab(probe.lab()));
            words.append("   ").append(SubstrateText.shift(probe));
        }
        return words.toString();
    }

    private static LengthUnit next(LengthUnit unit) {
        return unit == LengthUnit.MM ? LengthUnit.INCH : LengthUnit.MM;
    }
}
