package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.Vanish;
import inkground.viewer.ui.Ui;
import javafx.scene.control.Label;
import javafx.scene.control.SkinBase;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/** A {@link VanishBar} as a track, filled as far as edges are lost, with the share beside it. */
final class VanishBarSkin extends SkinBase<VanishBar> {
    private final Region lost = new Region();
    private final Label figure = Ui.label("", "vanish-figure");

    VanishBarSkin(VanishBar bar) {
        super(bar);
        consumeMouseEvents(false); // a click here chooses the substrate, as anywhere in its cell
        Pane track = new Pane(lost);
        track.getStyleClass().add("vanish-track");
        track.setMinWidth(bar.widthPx());
        track.setMaxWidth(bar.widthPx());
        lost.getStyleClass().add("vanish-lost");
        lost.setManaged(false);
        figure.setMinWidth(Region.USE_PREF_SIZE);
        HBox row = new HBox(track, figure);
        row.getStyleClass().add("vanish-row");
        getChildren().add(row);
        registerChangeListener(bar.known(), o -> show());
        registerChangeListener(bar.words(), o -> show());
        show();
    }

    private void show() {
        VanishBar bar = getSkinnable();
        Vanish known = bar.known().get();
        if (known != null) {
            figure.setText(bar.words().get() + VanishBar.percent(known));
            lost.resizeRelocate(0.5, 0.5, Math.round((bar.widthPx() - 1) * known.share()), 4);
            Ui.tip(bar, VanishBar.sentence(known));
        }
    }
}
