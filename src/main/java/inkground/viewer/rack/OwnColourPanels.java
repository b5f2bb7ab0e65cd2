package inkground.viewer.rack;

import inkground.app.ColourSamples.Sample;
import inkground.app.Photograph;
import inkground.app.Photograph.Patch;
import inkground.colour.Lab;
import inkground.viewer.desk.RackDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.PanelSwitch;
import inkground.viewer.ui.Ui;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.Observable;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;

/** Four ways to state a colour: by Lab, as CSS, from a measured file, from a photograph. */
final class OwnColourPanels extends PanelSwitch {
    /**
     * A colour and where it comes from.
     *
     * @param lab absolute, D50
     * @param source for the user
     */
    record Stated(Lab lab, String source) {}

    private final ViewerState state;
    private final RackDesk desk;
    private final Consumer<Optional<Stated>> changed;
    private final TextField[] lab = {new TextField(), new TextField(), new TextField()};
    private final TextField css = new TextField();
    private final ListView<Sample> samples = new ListView<>();
    private final Label spread = Ui.label("", "note");
    private final PhotoPane photo = new PhotoPane(this::patch);
    private final Node byLab;
    private final Node byFile;
    private final Node byPhoto;
    private Path file;
    private boolean filling;

    /**
     * @param changed told the colour as it is stated; empty while it is no colour
     */
    OwnColourPanels(ViewerState state, RackDesk desk, Consumer<Optional<Stated>> changed) {
        this.state = state;
        this.desk = desk;
        this.changed = changed;
        byLab = byLab();
        byFile = byFile();
        byPhoto = byPhoto();
        add("own-by-lab", "Lab", "State the colour as CIE L*a*b* for D50, as a measuring device shows it", byLab);
        add("own-by-css", "CSS", "State the colour as #hex or by its CSS name", byCss());
        add("own-by-file", "Measured", "Take the colour from a CxF or CGATS file of measurements", byFile);
        add("own-by-photo", "Photograph", "Pick the colour from a photograph: a hint, not a measurement", byPhoto);
        state.own.samples.addListener((ListChangeListener<Sample>) c -> {
            samples.getItems().setAll(state.own.samples);
            if (!state.own.samples.isEmpty()) {
                show(byFile);
                samples.getSelectionModel().select(0);
            }
        });
        state.own.photograph.addListener((Observable o) -> {
            Photograph next = state.own.photograph.get();
            if (next != null) {
                show(byPhoto);
            }
            photo.show(next);
        });
    }

    private VBox byLab() {
        HBox row = new HBox();
        row.getStyleClass().add("row");
        row.setAlignment(Pos.CENTER_LEFT);
        String[] names = {"L*", "a*", "b*"};
        String[] ids = {"own-l", "own-a", "own-b"};
        for (int i = 0; i < 3; i++) {
            lab[i].setId(ids[i]);
            lab[i].setPrefColumnCount(4);
            lab[i].setAccessibleText(names[i]);
            Ui.tip(lab[i], i == 0 ? "Lightness, 0 black to 100 white" : "From −128 to 128");
            lab[i].textProperty().addListener((Observable o) -> typedLab());
            row.getChildren().addAll(Ui.label(names[i]), lab[i]);
        }
        return panel(
                row, note("For D50 and the 2° observer, measured on the cloth or paper itself over a pile of it."));
    }

    private VBox byCss() {
        css.setId("own-css");
        css.setPromptText("#2f4858 or teal");
        css.setAccessibleText("CSS colour");
        Ui.tip(css, "#hex, a name, rgb() or hsl(), as CSS writes colours");
        css.textProperty().addListener((Observable o) -> {
            if (!filling) {
                changed.accept(CssColour.lab(css.getText())
                        .map(l -> new Stated(
                                l, "CSS colour " + css.getText().strip() + "; chosen on a screen, not measured")));
            }
        });
        return panel(css, note("A colour of the screen (sRGB). Suppliers' web colours are often far from the cloth."));
    }

    private VBox byFile() {
        Button choose = new Button("Choose…");
        choose.setId("own-choose-file");
        choose.setOnAction(e -> choose("Measured colours", List.of("*.cxf", "*.xml", "*.txt", "*.ti3", "*.cgats"))
                .ifPresent(this::read));
        samples.setId("own-samples");
        samples.setPrefSize(PhotoPane.WIDTH, 130);
        samples.setAccessibleText("Colours of the file");
        samples.setPlaceholder(Ui.label("CxF 3, or CGATS text with SAMPLE_NAME", "quiet"));
        samples.setCellFactory(list -> new ListCell<>() {
            @Override
            protected void updateItem(Sample sample, boolean empty) {
                super.updateItem(sample, empty);
                setText(empty || sample == null ? null : sample.name() + "   " + SubstrateText.lab(sample.lab()));
            }
        });
        samples.getSelectionModel().selectedItemProperty().addListener((o, before, sample) -> {
            if (sample != null) {
                changed.accept(Optional.of(new Stated(
                        sample.lab(), sample.from() + " of " + sample.name() + (file == null ? "" : " in " + name()))));
            }
        });
        return panel(choose, samples);
    }

    /** Reads a file of measured colours. */
    void read(Path path) {
        file = path;
        desk.readSamples(path);
    }

    /** Reads a photograph. */
    void readPhotograph(Path path) {
        file = path;
        desk.readPhotograph(path);
    }

    private VBox byPhoto() {
        Button choose = new Button("Choose…");
        choose.setId("own-choose-photo");
        choose.setOnAction(e -> choose("Photographs", List.of("*.jpg", "*.jpeg", "*.png", "*.tif", "*.tiff", "*.webp"))
                .ifPresent(this::readPhotograph));
        spread.setId("own-spread");
        HBox row = new HBox(choose, spread);
        row.getStyleClass().add("row");
        row.setAlignment(Pos.CENTER_LEFT);
        return panel(row, photo, note(Photograph.CAUTION));
    }

    private void patch(Patch patch) {
        spread.setText(String.format(Locale.ROOT, "patch even within ΔE00 %.1f", patch.spreadDe00()));
        changed.accept(Optional.of(new Stated(
                patch.lab(),
                "picked from a photograph" + (file == null ? "" : " (" + name() + ")") + "; a hint, not measured")));
    }

    private String name() {
        return String.valueOf(file.getFileName());
    }

    private static Label note(String words) {
        Label note = Ui.label(words, "note");
        note.setWrapText(true);
        note.setMaxWidth(PhotoPane.WIDTH);
        return note;
    }

    private static VBox panel(Node... parts) {
        VBox panel = new VBox(parts);
        panel.getStyleClass().add("own-panel");
        panel.setMinHeight(0);
        VBox.setVgrow(panel, Priority.ALWAYS);
        return panel;
    }

    private Optional<Path> choose(String what, List<String> patterns) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(what);
        List<String> both = patterns.stream()
                .flatMap(p -> java.util.stream.Stream.of(p, p.toUpperCase(Locale.ROOT)))
                .toList();
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(what, both),
                        new FileChooser.ExtensionFilter("All files", "*.*"));
        return Optional.ofNullable(chooser.showOpenDialog(getScene().getWindow()))
                .map(File::toPath);
    }

    private void typedLab() {
        if (filling) {
            return;
        }
        double[] v = new double[3];
        try {
            for (int i = 0; i < 3; i++) {
                v[i] = Double.parseDouble(
                        lab[i].getText().strip().replace(',', '.').replace('−', '-'));
            }
        } catch (NumberFormatException e) {
            changed.accept(Optional.empty());
            return;
        }
        boolean fits = v[0] >= 0 && v[0] <= 100 && Math.abs(v[1]) <= 128 && Math.abs(v[2]) <= 128;
        changed.accept(
                fits ? Optional.of(new Stated(new Lab(v[0], v[1], v[2]), "Lab value as entered")) : Optional.empty());
    }

    /** Begins anew, with Lab shown and a colour filled in. */
    void begin(Lab from) {
        file = null;
        filling = true;
        double[] v = {from.L(), from.a(), from.b()};
        for (int i = 0; i < 3; i++) {
            lab[i].setText(v[i] == Math.rint(v[i]) ? Long.toString((long) v[i]) : Double.toString(v[i]));
        }
        css.setText("");
        filling = false;
        show(byLab);
    }
}
