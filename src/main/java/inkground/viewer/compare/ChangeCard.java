package inkground.viewer.compare;

import inkground.app.PageComparison;
import inkground.app.PageComparison.Change;
import inkground.app.PageComparison.InkChange;
import inkground.app.PageComparison.PlaceMm;
import inkground.geometry.Box;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.NumberField;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What changed between two revisions, in figures: area, inks, and the places, which can be gone to. */
final class ChangeCard extends VBox {
    private static final int PLACES_SHOWN = 6;

    private final ViewerState state;
    private final TwoPages pages;
    private final Label whole = Ui.label("", "figure");
    private final GridPane inks = new GridPane();
    private final VBox arrangement = new VBox();
    private final VBox places = new VBox();

    ChangeCard(ViewerState state, TwoPages pages) {
        this.state = state;
        this.pages = pages;
        setId("changes");
        getStyleClass().addAll("card", "legend");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        whole.setId("changes-whole");
        whole.setWrapText(true);
        whole.setMaxWidth(300);
        arrangement.setId("changes-arrangement");
        inks.getStyleClass().add("legend-table");
        NumberField limit = new NumberField(state.comparison.limitDe00, 0, 50, 1);
        limit.setId("changes-limit");
        limit.setAccessibleText("Colour difference that is let pass");
        HBox row = new HBox(Ui.label("let pass ΔE00 up to", "quiet"), limit);
        row.getStyleClass().add("row");
        row.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(Ui.label("What changed", "title"), whole, arrangement, inks, places, row);
        for (Observable value :
                new Observable[] {state.comparison.report, state.comparison.page, state.unit, state.substrate}) {
            value.addListener(o -> fill());
        }
        fill();
    }

    private void fill() {
        Ui.shown(this, state.comparison.page.get() != null);
        PageComparison report = state.comparison.report.get();
        inks.getChildren().clear();
        places.getChildren().clear();
        arrangement.getChildren().clear();
        if (report == null) {
            whole.setText("Comparing …");
            return;
        }
        whole.setText(words(report));
        report.arrangement().forEach(line -> {
            Label label = Ui.label(line, "note");
            label.setWrapText(true);
            label.setMaxWidth(300);
            arrangement.getChildren().add(label);
        });
        List<InkChange> changed = report.inks().stream()
                .filter(ink -> ink.change() != Change.UNCHANGED)
                .toList();
        for (int row = 0; row < changed.size(); row++) {
            InkChange ink = changed.get(row);
            inks.addRow(
                    row,
                    Ui.label(ink.ink().name(), "ink-name"),
                    Ui.label(ink.change().word(), "quiet"),
                    Ui.label(Ui.area(ink.beforeCm2()) + " → " + Ui.area(ink.afterCm2()) + " cm²", "figure"));
        }
        report.places().stream().limit(PLACES_SHOWN).forEach(this::place);
        int more = report.places().size() - PLACES_SHOWN;
        if (more > 0) {
            places.getChildren().add(Ui.label("and " + more + " smaller places", "quiet"));
        }
    }

    private static String words(PageComparison report) {
        if (!report.changed()) {
            return "Nothing: colours, inks, size and arrangement are the same.";
        }
        String size = report.before().differsFrom(report.after())
                ? String.format(
                        Locale.ROOT,
                        "Trim %.1f × %.1f mm before, %.1f × %.1f mm now. ",
                        report.before().widthMm(),
                        report.before().heightMm(),
                        report.after().widthMm(),
                        report.after().heightMm())
                : "";
        return size
                + String.format(
                        Locale.ROOT,
                        "%s cm² in another colour (%.1f %%), by ΔE00 %.1f at most.",
                        Ui.area(report.changedCm2()),
                        report.changedShare() * 100,
                        report.largestDe00());
    }

    private void place(PlaceMm place) {
        LengthUnit unit = state.unit.get();
        Hyperlink link = new Hyperlink("at " + length(unit, place.x0()) + ", " + length(unit, place.y0()) + "; "
                + length(unit, place.x1() - place.x0()) + " × " + length(unit, place.y1() - place.y0()));
        link.setAccessibleText("Look at the change " + link.getText());
        Ui.tip(link, "Brings this place into view; measured from the top left corner of the trim");
        link.setOnAction(e -> pages.lookAt(place.x0(), place.y0(), place.x1(), place.y1()));
        places.getChildren().add(link);
    }

    private static String length(LengthUnit unit, double mm) {
        return unit.text(mm / Box.MM_PER_PT);
    }
}
