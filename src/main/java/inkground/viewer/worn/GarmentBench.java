package inkground.viewer.worn;

import inkground.viewer.state.BenchView;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Ui;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The garment with its bar beneath; on paper a word that paper is not worn, and the way back to cloth. */
public final class GarmentBench extends VBox {
    private final ViewerState state;
    private final GarmentSurface surface;
    private final VBox paper = new VBox();
    private final Label paperWords = Ui.label("");
    private final Button offer = new Button();

    /**
     * @param scheduler of its own
     */
    public GarmentBench(ViewerState state, RenderScheduler scheduler, Executor ui) {
        this.state = state;
        surface = new GarmentSurface(state, scheduler, ui);
        paper.setId("paper-not-worn");
        paper.getStyleClass().add("card");
        paper.setAlignment(Pos.CENTER);
        paper.setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        offer.setId("offer-garment");
        offer.getStyleClass().add("offer");
        offer.setOnAction(e -> state.worn.offered().ifPresent(state.substrate::set));
        paper.getChildren().addAll(Ui.label("Paper is not worn", "title"), paperWords, offer);
        StackPane place = new StackPane(surface, paper);
        place.setMinSize(0, 0);
        VBox.setVgrow(place, Priority.ALWAYS);
        getChildren().addAll(place, new PlacementBar(state, surface::requestFocus));
        for (Observable value : new Observable[] {state.view, state.page, state.substrate, state.substrates}) {
            value.addListener(o -> follow());
        }
        follow();
    }

    private void follow() {
        boolean shown = state.view.get() == BenchView.GARMENT && state.page.get() != null;
        boolean wasShown = isVisible();
        Ui.shown(this, shown);
        SubstrateCard on = state.substrate.get();
        boolean onPaper = on != null && !on.garment();
        Ui.shown(paper, onPaper);
        surface.setVisible(!onPaper);
        if (onPaper) {
            Optional<SubstrateCard> garment = state.worn.offered();
            paperWords.setText(on.name() + " is a sheet: it has no collar to measure from.");
            Ui.shown(offer, garment.isPresent());
            garment.ifPresent(g -> {
                offer.setText("Lay it on: " + g.name());
                offer.setAccessibleText("Lay the artwork on " + g.name());
                Ui.tip(offer, "The garment that was chosen last");
            });
        }
        if (shown && !wasShown && !onPaper) {
            surface.requestFocus();
        }
    }

    /** @return the garment's surface */
    public GarmentSurface surface() {
        return surface;
    }
}
