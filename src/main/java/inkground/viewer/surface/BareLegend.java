package inkground.viewer.surface;

import inkground.viewer.stack.InkBand;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine.CoverFigure;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Names the patterns of the bare map and says how large each kind is within the trim. */
public final class BareLegend extends VBox {
    private final ViewerState state;
    private final GridPane table = new GridPane();

    public BareLegend(ViewerState state) {
        this.state = state;
        setId("bare-legend");
        getStyleClass().addAll("card", "legend");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        table.getStyleClass().add("legend-table");
        getChildren().addAll(Ui.label("Bare map: where ink arrives", "title"), table);
        for (Observable value : new Observable[] {state.overlays.map, state.figures, state.page}) {
            value.addListener(o -> fill());
        }
        fill();
    }

    private void fill() {
        Ui.shown(this, state.overlays.map.get() == MapKind.BARE && state.page.get() != null);
        table.getChildren().clear();
        if (state.figures.get() == null) {
            table.add(Ui.label("Areas not measured yet", "quiet"), 0, 0);
            return;
        }
        int row = 0;
        for (CoverFigure cover : state.figures.get().covers()) {
            Label area = Ui.label(InkBand.area(cover.cm2()) + " cm²", "figure");
            area.setMaxWidth(Double.MAX_VALUE);
            area.setAlignment(Pos.CENTER_RIGHT);
            GridPane.setHgrow(area, Priority.ALWAYS);
            table.addRow(row++, sample(cover.sample()), Ui.label(cover.word()), area);
        }
    }

    private static ImageView sample(int[] argb) {
        int edge = CoverFigure.SAMPLE_PX;
        WritableImage image = new WritableImage(edge, edge);
        image.getPixelWriter().setPixels(0, 0, edge, edge, PixelFormat.getIntArgbInstance(), argb, 0, edge);
        ImageView view = new ImageView(image);
        view.setFitWidth(22);
        view.setPreserveRatio(true);
        view.setSmooth(true);
        return view;
    }
}
