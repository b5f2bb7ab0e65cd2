package inkground.viewer.rack;

import inkground.app.OwnSubstrates;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import inkground.viewer.desk.RackDesk;
import inkground.viewer.rack.OwnColourPanels.Stated;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Makes, changes and removes the user's own papers and garments. */
public final class OwnSheet extends Sheet {
    private static final List<Texture.Kind> CLOTH =
            List.of(Texture.Kind.JERSEY, Texture.Kind.HEATHER, Texture.Kind.WOVEN, Texture.Kind.FLEECE);
    private static final List<Texture.Kind> SHEETS =
            List.of(Texture.Kind.UNCOATED, Texture.Kind.COATED, Texture.Kind.RECYCLED, Texture.Kind.KRAFT);
    private static final Stated FIRST = new Stated(new Lab(60, 0, 0), "Lab value as entered");

    private final ViewerState state;
    private final RackDesk desk;
    private final TextField name = new TextField();
    private final ToggleButton garment = new ToggleButton("Garment");
    private final ToggleButton paper = new ToggleButton("Paper");
    private final ChoiceBox<Texture.Kind> texture = new ChoiceBox<>();
    private final OwnColourPanels colours;
    private final StackPane sample = new StackPane();
    private final Label sampleWords = Ui.label("", "note");
    private final Label words = Ui.label("", "sheet-trouble");
    private final Button remove = new Button("Remove…");
    private final HBox sure = new HBox();
    private final Label sureWords = Ui.label("");
    private Optional<Stated> stated = Optional.of(FIRST);

    public OwnSheet(ViewerState state, RackDesk desk) {
        super("own-sheet", "", state.own.sheet);
        this.state = state;
        this.desk = desk;
        getStyleClass().add("own-sheet");
        colours = new OwnColourPanels(state, desk, next -> {
            stated = next;
            preview();
        });
        colours.getStyleClass().add("own-colours");
        sample.setMinSize(170, 130);
        sample.setMaxSize(170, 130);
        sampleWords.setId("own-sample-words");
        sampleWords.setWrapText(true);
        sampleWords.setMaxWidth(180);
        VBox seen = new VBox(sample, sampleWords);
        seen.getStyleClass().add("own-seen");
        seen.setMinWidth(180);
        words.setId("own-trouble");
        words.setWrapText(true);
        words.setMaxWidth(540);
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        words.visibleProperty().bind(state.trouble.isNotNull());
        words.managedProperty().bind(words.visibleProperty());
        HBox body = new HBox(colours, seen);
        body.getStyleClass().add("own-body");
        getChildren().addAll(fields(), body, words, sure(), buttons());
        setOnDragOver(this::dragOver);
        setOnDragDropped(this::dropped);
    }

    private GridPane fields() {
        name.setId("own-name");
        name.setAccessibleText("Name");
        name.setPrefColumnCount(18);
        name.setPromptText("Forest green tee");
        Ui.tip(name, "What it is called in the rack, up to " + OwnSubstrates.LONGEST_NAME + " characters");
        ToggleGroup kind = new ToggleGroup();
        for (ToggleButton toggle : List.of(garment, paper)) {
            toggle.setToggleGroup(kind);
            toggle.setMinWidth(USE_PREF_SIZE);
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                textures();
                preview();
            });
        }
        garment.setId("own-garment");
        paper.setId("own-paper");
        Ui.tip(garment, "Cloth: an underbase can lie under the inks");
        Ui.tip(paper, "A sheet");
        HBox kinds = new HBox(garment, paper);
        kinds.getStyleClass().add("over");
        texture.setId("own-texture");
        texture.setAccessibleText("Surface");
        texture.setConverter(textureWords());
        texture.valueProperty().addListener((Observable o) -> preview());
        Ui.tip(texture, "What its surface looks like at rest");
        GridPane fields = new GridPane();
        fields.getStyleClass().add("fields");
        fields.addRow(0, Ui.label("Name"), name, kinds, texture);
        return fields;
    }

    private static StringConverter<Texture.Kind> textureWords() {
        return new StringConverter<>() {
            @Override
            public String toString(Texture.Kind kind) {
                return kind == null ? "" : kind.name().toLowerCase(Locale.ROOT);
            }

            @Override
            public Texture.Kind fromString(String text) {
                return Texture.Kind.valueOf(text.toUpperCase(Locale.ROOT));
            }
        };
    }

    private void textures() {
        List<Texture.Kind> kinds = garment.isSelected() ? CLOTH : SHEETS;
        if (!texture.getItems().equals(kinds)) {
            texture.getItems().setAll(kinds);
            texture.setValue(kinds.get(0));
        }
    }

    /** Asks in place before something is removed for good. */
    private HBox sure() {
        Button yes = new Button("Remove it");
        yes.setId("own-remove-sure");
        yes.setOnAction(e -> desk.remove(state.own.editing.get()));
        Button no = new Button("Keep it");
        no.setId("own-remove-not");
        no.setOnAction(e -> ask(false));
        sure.getStyleClass().addAll("row", "sure");
        sure.setAlignment(Pos.CENTER_LEFT);
        sureWords.setWrapText(true);
        sure.getChildren().addAll(sureWords, Ui.spring(), no, yes);
        Ui.shown(sure, false);
        return sure;
    }

    private void ask(boolean asked) {
        Ui.shown(sure, asked);
        remove.setDisable(asked);
        if (asked) {
            sureWords.setText("Remove " + state.own.editing.get().name() + " and its file for good?");
            sure.getChildren().get(2).requestFocus();
        }
    }

    private HBox buttons() {
        remove.setId("own-remove");
        Ui.tip(remove, "Take this substrate out of the rack; you are asked first");
        remove.setOnAction(e -> ask(true));
        Button keep = new Button("Keep");
        keep.setId("own-keep");
        keep.defaultButtonProperty().bind(visibleProperty());
        Ui.tip(keep, "Hang it in the rack and keep it as a file, also for --on of the command line");
        keep.setOnAction(e -> keep());
        Button close = new Button("Close");
        close.setId("own-close");
        close.setOnAction(e -> {
            state.trouble.set(null);
            state.own.close();
        });
        HBox buttons = new HBox(remove, Ui.spring(), close, keep);
        buttons.getStyleClass().add("row");
        return buttons;
    }

    @Override
    protected void opened() {
        state.trouble.set(null);
        SubstrateCard card = state.own.editing.get();
        title(card == null ? "An own paper or garment" : "Change " + card.name());
        name.setText(card == null ? "" : card.name());
        (card == null || card.garment() ? garment : paper).setSelected(true);
        textures();
        if (card != null) {
            texture.setValue(Texture.Kind.valueOf(card.texture().toUpperCase(Locale.ROOT)));
        }
        stated = Optional.of(card == null ? FIRST : new Stated(card.lab(), card.source()));
        colours.begin(stated.get().lab());
        Ui.shown(remove, card != null);
        ask(false);
        preview();
        name.requestFocus();
    }

    private void preview() {
        if (stated.isEmpty() || texture.getValue() == null) {
            sample.getChildren().clear();
            sampleWords.setText("No colour yet");
            return;
        }
        Lab lab = stated.get().lab();
        SubstrateCard card = new SubstrateCard(
                "sample",
                "",
                garment.isSelected(),
                lab,
                Srgb.labToArgb(lab),
                texture.getValue().name().toLowerCase(Locale.ROOT),
                "",
                List.of());
        sample.getChildren().setAll(new Swatch(card, 170, 130));
        double[] xyz = Cie.labToXyz(lab);
        String shown =
                Srgb.shows(xyz[0], xyz[1], xyz[2]) ? "" : ". This screen's colour space (sRGB) cannot show it exactly";
        sampleWords.setText(SubstrateText.lab(lab) + "\n" + stated.get().source() + shown);
    }

    private void keep() {
        String called = name.getText().strip();
        if (called.isEmpty() || called.length() > OwnSubstrates.LONGEST_NAME) {
            state.trouble.set("Name: give it one of 1 to " + OwnSubstrates.LONGEST_NAME + " characters.");
            name.requestFocus();
        } else if (stated.isEmpty()) {
            state.trouble.set(
                    "Colour: give L* from 0 to 100, a* and b* from −128 to 128, or a CSS colour such as #2f4858.");
        } else {
            Lab lab = held(stated.get().lab());
            OwnSubstrates.Draft draft = new OwnSubstrates.Draft(
                    called,
                    garment.isSelected() ? Substrate.Kind.GARMENT : Substrate.Kind.PAPER,
                    lab,
                    stated.get().source(),
                    texture.getValue());
            if (state.own.editing.get() == null) {
                desk.add(draft);
            } else {
                desk.replace(state.own.editing.get(), draft);
            }
        }
    }

    /** A bright measured colour may lie a little above the perfect white. Kept to a thousandth: finer is not measured. */
    private static Lab held(Lab lab) {
        return new Lab(rounded(lab.L(), 0, 100), rounded(lab.a(), -128, 128), rounded(lab.b(), -128, 128));
    }

    private static double rounded(double value, double least, double most) {
        return Math.rint(Math.max(least, Math.min(most, value)) * 1000) / 1000 + 0.0;
    }

    private void dragOver(DragEvent e) {
        if (e.getDragboard().hasFiles()) {
            e.acceptTransferModes(TransferMode.COPY);
        }
        e.consume();
    }

    private void dropped(DragEvent e) {
        e.getDragboard().getFiles().stream().findFirst().ifPresent(f -> colours.readPhotograph(f.toPath()));
        e.setDropCompleted(true);
        e.consume();
    }
}
