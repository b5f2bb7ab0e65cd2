package inkground.viewer;

import inkground.app.WornProofs;
import inkground.artwork.PageBox;
import inkground.garment.GarmentRequest;
import inkground.plate.PlateRequest;
import inkground.viewer.desk.WriteDesk;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ProofEngine.ExportRequest;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.TargetField;
import inkground.viewer.ui.Ui;
import inkground.viewer.ui.WritingRow;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.collections.FXCollections;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.util.StringConverter;

/** Asks how a proof is to be written, and shows it being written. */
final class ExportSheet extends Sheet {
    /** Finest proof: beyond this a page outgrows any use. */
    private static final double MOST_DPI = 1200;

    private static final String FLAT_DPI = "150";
    private static final double WORDS_PX = 560;

    private final ViewerState state;
    private final WriteDesk desk;
    private final ChoiceBox<PageBox> box = new ChoiceBox<>(
            FXCollections.observableArrayList(PageBox.TRIM, PageBox.BLEED, PageBox.CROP, PageBox.MEDIA, PageBox.ART));
    private final TextField dpi = new TextField(FLAT_DPI);
    private final TargetField target = new TargetField("export", "Where to write the proof");
    private final Label size = Ui.label("", "quiet");
    private final Label summary = Ui.label("", "note");
    private final Label words = Ui.label("", "sheet-trouble");
    private final WritingRow progress;

    ExportSheet(ViewerState state, WriteDesk desk) {
        super("export-sheet", "Write a proof", state.exportSheet);
        this.state = state;
        this.desk = desk;
        box.setId("export-box");
        dpi.setId("export-dpi");
        words.setId("export-trouble");
        box.setValue(PageBox.TRIM);
        summary.setWrapText(true);
        summary.setMaxWidth(WORDS_PX);
        words.setWrapText(true);
        progress = new WritingRow("export", state.activities);
        getChildren().addAll(summary, fields(), words, progress, buttons());
        listen();
    }

    private GridPane fields() {
        GridPane fields = new GridPane();
        fields.getStyleClass().add("fields");
        dpi.setPrefColumnCount(5);
        HBox resolution = new HBox(dpi, Ui.label("pixels per inch"), size);
        resolution.getStyleClass().add("row");
        resolution.setAlignment(Pos.CENTER_LEFT);
        row(fields, "Part of the page", box);
        row(fields, "Resolution", resolution);
        row(fields, "File", target);
        box.setAccessibleText("Part of the page");
        dpi.setAccessibleText("Resolution in pixels per inch");
        Ui.tip(dpi, "72 for a mail, 150 for a screen, 300 to look closely");
        Ui.tip(box, "Trim shows the finished product");
        return fields;
    }

    private HBox buttons() {
        Button write = new Button("Write proof");
        write.setId("export-write");
        write.defaultButtonProperty().bind(visibleProperty());
        write.setOnAction(e -> write());
        write.disableProperty().bind(progress.visibleProperty());
        Button close = new Button("Close");
        close.setId("export-close");
        close.setOnAction(e -> close());
        HBox buttons = new HBox(Ui.spring(), close, write);
        buttons.getStyleClass().add("row");
        return buttons;
    }

    private void listen() {
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        for (Observable value : List.of(box.valueProperty(), dpi.textProperty(), state.substrate)) {
            value.addListener(o -> follow());
        }
    }

    @Override
    protected void opened() {
        state.trouble.set(null);
        boolean onGarment = state.worn.seen().isPresent();
        box.setDisable(onGarment); // a garment is shown whole, with what is printed on it
        String usual = Integer.toString((int) WornProofs.USUAL_DPI);
        if (dpi.getText().equals(onGarment ? FLAT_DPI : usual)) {
            dpi.setText(onGarment ? usual : FLAT_DPI);
        }
        // Set anew so that the sizes are those of this page.
        box.setConverter(boxWords());
        follow();
        target.suggest(suggestion());
    }

    private Path suggestion() {
        String name = state.file.get().path().getFileName().toString().replaceFirst("(?i)\\.pdf$", "");
        int page = state.page.get().info().number();
        String paged = state.file.get().pageCount() > 1 ? name + "-" + page : name;
        return state.file
                .get()
                .path()
                .toAbsolutePath()
                .resolveSibling(paged + "-on-" + state.substrate.get().id()
                        + state.worn.seen().map(w -> "-" + w.form().cut().id()).orElse("") + ".png");
    }

    private void follow() {
        if (!state.exportSheet.get() || state.page.get() == null) {
            return;
        }
        Optional<Double> resolution = resolution();
        size.setText(resolution.map(this::pixels).orElse("a number from 1 to " + (int) MOST_DPI));
        summary.setText(summary());
    }

    private String summary() {
        int shown = state.shownInks().size();
        int all = state.page.get().inks().size();
        String inks = shown == all ? "all " + all + " inks" : shown + " of " + all + " inks";
        String base = state.printing.underbaseLies() ? ", on a white underbase" : "";
        if (state.worn.seen().isPresent()) {
            LengthUnit unit = state.unit.get();
            return state.worn.seen().get().form().words() + ", on "
                    + state.substrate.get().name() + ": "
                    + state.worn.placed().orElseThrow().words(unit::textOfMm) + "; " + inks + base
                    + ". The figures are written beneath. " + NotesPanel.NOT_A_CONTRACT_PROOF + ".";
        }
        return "On " + state.substrate.get().name() + ", " + inks + base + ". " + NotesPanel.NOT_A_CONTRACT_PROOF + ".";
    }

    private String pixels(double resolution) {
        if (state.worn.seen().isPresent()) {
            GarmentRequest r = WornProofs.picture(state.worn.seen().get().form(), resolution);
            return r.width() + " × " + r.height() + " px and the caption";
        }
        PlateRequest r = PlateRequest.of(state.page.get().info().box(box.getValue()), resolution, true, Set.of());
        return r.width() + " × " + r.height() + " px";
    }

    private Optional<Double> resolution() {
        try {
            double value = Double.parseDouble(dpi.getText().strip().replace(',', '.'));
            return value >= 1 && value <= MOST_DPI ? Optional.of(value) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private void write() {
        if (resolution().isEmpty()) {
            state.trouble.set("Resolution: give a number from 1 to " + (int) MOST_DPI + " pixels per inch.");
        } else if (target.trouble().isPresent()) {
            state.trouble.set(target.trouble().get());
        } else {
            ExportRequest request = new ExportRequest(
                    state.look(),
                    box.getValue(),
                    resolution().get(),
                    state.overprint.get(),
                    state.layersOn,
                    target.path().get(),
                    target.replaces(),
                    state.worn.seen());
            desk.write(
                    request.target(),
                    state.exportSheet,
                    "Proof written",
                    (page, cancel, progress) -> page.export(request, cancel, progress));
        }
    }

    private void close() {
        progress.stop();
        state.trouble.set(null);
        state.exportSheet.set(false);
    }

    private StringConverter<PageBox> boxWords() {
        return new StringConverter<>() {
            @Override
            public String toString(PageBox which) {
                if (which == null || state.page.get() == null) {
                    return "";
                }
                return which.word() + " box, "
                        + state.unit.get().size(state.page.get().info().box(which));
            }

            @Override
            public PageBox fromString(String text) {
                return box.getItems().stream()
                        .filter(which -> toString(which).equals(text))
                        .findFirst()
                        .orElse(PageBox.TRIM);
            }
        };
    }
}
