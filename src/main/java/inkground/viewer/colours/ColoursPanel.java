package inkground.viewer.colours;

import inkground.app.AssignmentFile;
import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.artwork.ColourAssignment.Bare;
import inkground.viewer.desk.ColourDesk;
import inkground.viewer.desk.KeepDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Every colour of the artwork and what it is printed as: choose in the list or on the proof, then say what it is printed as. */
public final class ColoursPanel extends VBox {
    private final ViewerState state;
    private final ColourDesk desk;
    private final ListView<ColourRow> list = new ListView<>();
    private final AssignEditor editor;
    private final Label empty = Ui.label("", "quiet");
    private final Button take = new Button("Take stock");
    private final Button clean;
    private final ToggleButton pick = new ToggleButton("Pick");

    /**
     * @param keeping takes the rules of other jobs
     */
    public ColoursPanel(ViewerState state, ColourDesk desk, KeepDesk keeping) {
        this.state = state;
        this.desk = desk;
        setId("colours");
        getStyleClass().add("colours-panel");
        setMinSize(0, 0);
        editor = new AssignEditor(state, desk);
        dress(pick, "pick-colour", Feather.CROSSHAIR, "Pick on the proof: a click there chooses the colour here");
        pick.selectedProperty().bindBidirectional(state.colours.picking);
        Button all = new Button("All to inks");
        dress(
                all,
                "assign-all",
                Feather.DROPLET,
                "Assign all flat colours to inks: near-duplicates become one ink; what you decided stays");
        all.setOnAction(e -> desk.assignAll());
        all.disableProperty().bind(state.colours.inventory.isNull());
        Button rules = new Button();
        dress(rules, "take-rules", Feather.DOWNLOAD, "Print the colours by the rules kept beside another artwork");
        rules.setOnAction(e -> askForRules(keeping));
        clean = new Button("Clean file…");
        dress(
                clean,
                "clean-file",
                Feather.FILE_MINUS,
                "Write a PDF in which the bare colours print nothing and what they hid stays hidden");
        clean.setOnAction(e -> state.colours.cleanSheet.set(true));
        HBox tools = new HBox(pick, all, Ui.spring(), rules, clean);
        tools.getStyleClass().add("colours-tools");
        tools.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(tools, listed(), editor);
        listen();
        fill();
    }

    private static void dress(ButtonBase button, String id, Ikon icon, String sentence) {
        button.setId(id);
        button.setGraphic(new FontIcon(icon));
        button.setMinWidth(USE_PREF_SIZE);
        button.setAccessibleText(button.getText().isEmpty() ? sentence : button.getText() + ": " + sentence);
        Ui.tip(button, sentence);
    }

    private StackPane listed() {
        list.setId("colour-list");
        list.getStyleClass().add("colour-list");
        list.setMinHeight(0);
        list.setPrefHeight(120);
        list.setAccessibleText("Colours of the artwork");
        list.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        list.setCellFactory(view -> new ColourCell(state, this::choose));
        empty.setWrapText(true);
        empty.setId("colours-empty");
        take.setId("take-stock");
        take.setOnAction(e -> desk.takeStock());
        VBox instead = new VBox(empty, take);
        instead.setAlignment(Pos.CENTER);
        instead.getStyleClass().add("colours-empty");
        instead.visibleProperty().bind(state.colours.inventory.isNull());
        list.visibleProperty().bind(state.colours.inventory.isNotNull());
        StackPane place = new StackPane(list, instead);
        place.setMinHeight(0);
        VBox.setVgrow(place, Priority.ALWAYS);
        return place;
    }

    private void listen() {
        state.colours.inventory.addListener((Observable o) -> fill());
        state.colours.taking.addListener((Observable o) -> await());
        state.page.addListener((Observable o) -> await());
        state.history.now().addListener((Observable o) -> follow());
        state.colours.picked.addListener((Observable o) -> choosePicked());
        list.getSelectionModel().getSelectedItems().addListener((ListChangeListener<ColourRow>) c -> edit());
    }

    private void fill() {
        ColourInventory colours = state.colours.inventory.get();
        list.getItems().setAll(colours == null ? List.of() : ColourRow.of(colours));
        await();
        follow();
    }

    private void await() {
        boolean taking = state.colours.taking.get();
        empty.setText(
                state.page.get() == null
                        ? "Open artwork to see its colours"
                        : taking
                                ? "Taking stock of the colours; Esc stops it"
                                : "The colours are taken stock of once the inks are measured");
        Ui.shown(take, state.page.get() != null && !taking);
    }

    private void follow() {
        list.refresh();
        clean.setDisable(
                state.history.get().assignment().rules().stream().noneMatch(rule -> rule.to() instanceof Bare));
        edit();
    }

    private void edit() {
        editor.follow(list.getSelectionModel().getSelectedItems().stream()
                .filter(ColourRow.Entry.class::isInstance)
                .map(ColourRow.Entry.class::cast)
                .toList());
    }

    private void choose(List<ColourRow.Entry> entries) {
        list.getSelectionModel().clearSelection();
        entries.forEach(list.getSelectionModel()::select);
    }

    private void choosePicked() {
        ColourUse use = state.colours.picked.get();
        list.getItems().stream()
                .filter(row -> row instanceof ColourRow.Entry entry && use != null && use.equals(entry.use()))
                .findFirst()
                .ifPresent(row -> {
                    list.getSelectionModel().clearSelection();
                    list.getSelectionModel().select(row);
                    list.scrollTo(row);
                });
    }

    /** Gives the keys to the list. */
    public void focusList() {
        if (list.getSelectionModel().isEmpty() && !list.getItems().isEmpty()) {
            list.getSelectionModel().selectFirst();
        }
        list.requestFocus();
    }

    private void askForRules(KeepDesk keeping) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Take the colour rules of another job");
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter("Kept beside artwork", "*" + AssignmentFile.ENDING),
                        new FileChooser.ExtensionFilter("All files", "*.*"));
        Optional.ofNullable(chooser.showOpenDialog(getScene().getWindow()))
                .ifPresent(file -> keeping.takeRules(file.toPath()));
    }
}
