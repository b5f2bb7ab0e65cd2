package inkground.viewer.overlay;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine.MapEntry;
import inkground.viewer.state.ProofEngine.MapPlace;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Drawer;
import inkground.viewer.ui.NumberField;
import inkground.viewer.ui.Ui;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * Names the patterns of the map that is shown, says how large each part is within the trim, and holds the map's limit; of a plate,
 * says whose it is. Lies in the corner where the artwork is least.
 */
public final class MapLegend extends VBox {
    private static final double SAMPLE = 22;
    private static final int PLACES_SHOWN = 3;
    private static final double GAP_PX = 14;
    /** From the edges that have the rulers. */
    private static final double RULER_GAP_PX = 36;
    /** Corners in the order of liking. */
    private static final List<Pos> CORNERS = List.of(Pos.BOTTOM_RIGHT, Pos.BOTTOM_LEFT, Pos.TOP_RIGHT, Pos.TOP_LEFT);

    private final ViewerState state;
    private final ReadOnlyDoubleProperty above;
    private final Label title = Ui.label("", "title");
    private final GridPane table = new GridPane();
    private final GridPane limits = new GridPane();
    private final Label largest = Ui.label("", "quiet");
    private final VBox places = new VBox();
    private final HBox head = new HBox();
    private final VBox body = new VBox(table, limits, largest, places);
    private MapKind shown;
    private Pos corner = CORNERS.get(0);

    /**
     * Binds to the map of the state.
     *
     * @param above how much room questions and messages take above it, in logical pixels: where they leave too little, only the
     *     title is shown
     */
    public MapLegend(ViewerState state, ReadOnlyDoubleProperty above) {
        this.state = state;
        this.above = above;
        setId("map-legend");
        getStyleClass().addAll("card", "legend");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        table.getStyleClass().add("legend-table");
        limits.getStyleClass().add("legend-table");
        largest.setId("map-largest");
        body.getStyleClass().add("legend-body");
        fillHead();
        getChildren().addAll(head, body);
        state.overlays.legendFolded.addListener((Observable o) -> settle());
        for (Observable value : new Observable[] {
            state.overlays.map, state.overlays.report, state.page, state.view, state.stack.plate, state.chosenInk
        }) {
            value.addListener(o -> {
                fill();
                settle();
            });
        }
        for (Observable value :
                new Observable[] {state.camera, state.worn.inkedPt, state.page, above, widthProperty(), heightProperty()
                }) {
            value.addListener(o -> settle());
        }
        fill();
        settle();
    }

    private void fillHead() {
        ToggleButton handle = Drawer.handle("legend-handle", Command.LEGEND.tip());
        handle.setSelected(!state.overlays.legendFolded.get());
        handle.setOnAction(e -> state.overlays.legendFolded.set(!handle.isSelected()));
        state.overlays.legendFolded.addListener((o, before, now) -> handle.setSelected(!now));
        title.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(title, Priority.ALWAYS);
        head.getChildren().addAll(title, handle);
        head.getStyleClass().add("legend-head");
        head.setAlignment(Pos.CENTER_LEFT);
    }

    /** Moves only where less than half as much of the artwork is covered, so that it does not jump while the page is moved. */
    private void settle() {
        Ui.shown(body, !state.overlays.legendFolded.get() && fits());
        if (state.page.get() != null) {
            Box art = state.worn.inkedPt.get() != null
                    ? state.worn.inkedPt.get()
                    : state.page.get().info().box(PageBox.TRIM);
            Box seen = state.camera.get().toView(art);
            Pos best = CORNERS.stream()
                    .min(Comparator.comparingDouble(c -> covered(seen, c)))
                    .orElseThrow();
            corner = covered(seen, best) < covered(seen, corner) / 2 ? best : corner;
        }
        StackPane.setAlignment(this, corner);
        StackPane.setMargin(this, new Insets(RULER_GAP_PX, GAP_PX, GAP_PX, RULER_GAP_PX));
    }

    private boolean fits() {
        double room = state.camera.get().heightPx() - RULER_GAP_PX - GAP_PX;
        return above.get() == 0 || prefHeightOpen() <= room - above.get();
    }

    private double prefHeightOpen() {
        return snappedTopInset() + snappedBottomInset() + head.prefHeight(-1) + getSpacing() + body.prefHeight(-1);
    }

    /** Area of the artwork that it would cover in a corner, in square pixels. */
    private double covered(Box seen, Pos at) {
        Camera camera = state.camera.get();
        double x0 = at.getHpos() == HPos.RIGHT ? camera.widthPx() - GAP_PX - getWidth() : GAP_PX;
        double y0 = at.getVpos() == VPos.BOTTOM ? camera.heightPx() - GAP_PX - getHeight() : GAP_PX;
        Box both = seen.intersect(new Box(x0, y0, x0 + getWidth(), y0 + getHeight()));
        return both.isEmpty() ? 0 : both.width() * both.height();
    }

    private void fill() {
        MapKind kind = state.overlays.map.get();
        boolean plate = state.stack.plate.get() && state.chosenInk.get() >= 0;
        Ui.shown(this, (kind != null || plate) && state.page.get() != null && state.view.get() == BenchView.FLAT);
        Ui.shown(largest, false);
        table.getChildren().clear();
        places.getChildren().clear();
        if (kind == null) {
            shown = null;
            limits.getChildren().clear();
            if (plate) {
                title.setText("Plate: " + state.inkName(state.chosenInk.get()));
                table.add(Ui.label("Black where it prints solid, white where not at all", "quiet"), 0, 0);
            }
            return;
        }
        if (shown != kind) {
            shown = kind;
            limit(kind);
        }
        MapReport report = state.overlays.report.get();
        title.setText(report == null ? kind.label() : report.title());
        Ui.shown(largest, report != null && !report.largest().isEmpty());
        if (report == null) {
            table.add(Ui.label("Measuring …", "quiet"), 0, 0);
            return;
        }
        largest.setText("Largest here: " + report.largest());
        for (int row = 0; row < report.entries().size(); row++) {
            fill(report.entries().get(row), row);
        }
        fillPlaces(report.places());
    }

    private void fillPlaces(List<MapPlace> found) {
        for (int i = 0; i < Math.min(found.size(), PLACES_SHOWN); i++) {
            place(found.get(i), i);
        }
        if (found.size() > 1) {
            Label counter = Ui.label("", "quiet");
            counter.setId("map-place");
            counter.textProperty().bind(Bindings.createStringBinding(() -> counted(found), state.walk.at));
            places.getChildren().add(counter);
        }
    }

    private String counted(List<MapPlace> found) {
        int at = state.walk.at.get();
        String count =
                found.size() + " places, marked on the page; " + Command.NEXT_PLACE.keys() + " goes through them";
        return at < 0 || at >= found.size()
                ? count
                : "Place " + (at + 1) + " of " + found.size() + ": "
                        + found.get(at).words();
    }

    private void place(MapPlace place, int index) {
        Hyperlink link = new Hyperlink(place.words());
        link.setAccessibleText("Look at " + place.words());
        Ui.tip(link, "Brings this place into view");
        link.setOnAction(e -> state.walk.lookAt(index));
        places.getChildren().add(link);
    }

    private void fill(MapEntry entry, int row) {
        Label word = Ui.label(entry.word());
        Ui.tip(word, entry.explanation());
        Label area = Ui.label(Ui.area(entry.cm2()) + " cm²", "figure");
        Label share = Ui.label(String.format(Locale.ROOT, "%.1f %%", entry.share() * 100), "quiet");
        for (Label figure : new Label[] {area, share}) {
            figure.setMaxWidth(Double.MAX_VALUE);
            figure.setAlignment(Pos.CENTER_RIGHT);
        }
        GridPane.setHgrow(area, Priority.ALWAYS);
        table.addRow(row, sample(entry.sample()), word, area, share);
    }

    private void limit(MapKind kind) {
        limits.getChildren().clear();
        switch (kind.limit()) {
            case NONE -> {}
            case DIFFERENCE -> limit("let pass ΔE00 up to", state.overlays.limitDe00, 0, 50, 1, "");
            case TOTAL_INK -> limit("limit", state.overlays.totalInkPercent, 10, 800, 0, "%");
            case WIDTHS -> {
                limit("lines from", state.overlays.minLineMm, 0, 20, 2, "mm");
                limit("gaps from", state.overlays.minGapMm, 0, 20, 2, "mm");
            }
            case REGISTER -> limit("each ink off by", state.overlays.registerMm, 0, 5, 2, "mm");
        }
        Ui.shown(limits, !limits.getChildren().isEmpty());
    }

    private void limit(String words, DoubleProperty value, double min, double max, int digits, String unit) {
        NumberField field = new NumberField(value, min, max, digits);
        field.setId(limits.getChildren().isEmpty() ? "map-limit" : "map-limit-2");
        field.setAccessibleText("Limit of the map: " + words);
        limits.addRow(limits.getRowCount(), Ui.label(words, "quiet"), field, Ui.label(unit, "quiet"));
    }

    private static ImageView sample(int[] argb) {
        int edge = MapEntry.SAMPLE_PX;
        WritableImage image = new WritableImage(edge, edge);
        image.getPixelWriter().setPixels(0, 0, edge, edge, PixelFormat.getIntArgbInstance(), argb, 0, edge);
        ImageView view = new ImageView(image);
        view.setFitWidth(SAMPLE);
        view.setPreserveRatio(true);
        return view;
    }
}
