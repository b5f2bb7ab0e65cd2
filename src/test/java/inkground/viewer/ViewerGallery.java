package inkground.viewer;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.viewer.overlay.MapLegend;
import inkground.viewer.overlay.OverlayStrip;
import inkground.viewer.rack.Swatch;
import inkground.viewer.stack.InkBand;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.MapEntry;
import inkground.viewer.state.ProofEngine.MapPlace;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.Question;
import inkground.viewer.state.Question.Answer;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.NumberField;
import inkground.viewer.ui.PanelSwitch;
import inkground.viewer.ui.Ui;
import java.util.List;
import javafx.application.Platform;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.css.PseudoClass;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.kordamp.ikonli.feather.Feather;

/**
 * Every control of the window in every state, on one screen: to see what a change of the style sheet does. Run {@link #main} to
 * look at it; Space changes the theme. {@link GalleryTest} keeps it whole.
 */
final class ViewerGallery {
    private static final PseudoClass HOVER = PseudoClass.getPseudoClass("hover");
    private static final PseudoClass FOCUS = FocusMark.KEYED;
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");

    private ViewerGallery() {}

    /** Shows the gallery in a window. */
    public static void main(String[] args) {
        Platform.startup(() -> {
            Stage stage = new Stage();
            Scene scene = new Scene(content(), 1280, 800);
            Theme[] theme = {Theme.LIGHT};
            dress(scene, theme[0]);
            scene.setOnKeyTyped(e -> {
                theme[0] = TopStrip.next(theme[0]);
                dress(scene, theme[0]);
            });
            stage.setScene(scene);
            stage.show();
        });
    }

    /** Gives a scene the style sheets of a theme. */
    static void dress(Scene scene, Theme theme) {
        scene.getStylesheets().setAll(theme.tokens(), Theme.rules());
    }

    /** @return all controls; made anew at each call */
    static FlowPane content() {
        FlowPane all = new FlowPane(14, 14);
        all.setId("gallery");
        all.setPadding(new Insets(14));
        all.getChildren()
                .addAll(
                        group("Buttons", button(""), button("hover"), button("focus"), button("off")),
                        group(
                                "Switches",
                                toggle(false, ""),
                                toggle(true, ""),
                                toggle(false, "focus"),
                                toggle(true, "off")),
                        group("Numbers", number("3.0"), number("much"), number("off")),
                        group("Text and choice", text(), choice(), check(false), check(true), link()),
                        group("Progress", new ProgressBar(-1), new ProgressBar(0), new ProgressBar(0.6)),
                        group("Panels", panels()),
                        group("Substrates", swatch(FakeEngine.PAPER, false), swatch(FakeEngine.NAVY, true)),
                        group("Inks", inks()),
                        group("Trouble", trouble()),
                        group("Question", question()),
                        group("Legend", legend()),
                        group("Status", status()),
                        group("Overlays", overlays()));
        return all;
    }

    private static VBox group(String title, Node... nodes) {
        VBox group = new VBox(6, Ui.label(title, "caption"));
        group.getChildren().addAll(nodes);
        return group;
    }

    private static Button button(String state) {
        Button button = Ui.button("gallery-button", "Open", Feather.FOLDER, Command.OPEN, () -> {});
        state(button, state);
        return button;
    }

    private static ToggleButton toggle(boolean on, String state) {
        ToggleButton toggle =
                Ui.toggle("gallery-toggle", "Trim", Feather.SCISSORS, Command.TRIM, new SimpleBooleanProperty(on));
        state(toggle, state);
        return toggle;
    }

    private static void state(Node node, String state) {
        node.pseudoClassStateChanged(HOVER, state.equals("hover"));
        node.pseudoClassStateChanged(FOCUS, state.equals("focus"));
        node.setDisable(state.equals("off"));
    }

    private static NumberField number(String text) {
        NumberField field = new NumberField(new SimpleDoubleProperty(3), 0, 50, 1);
        field.setAccessibleText("A number");
        field.setDisable(text.equals("off"));
        if (!text.equals("off")) {
            field.setText(text);
        }
        return field;
    }

    private static TextField text() {
        TextField field = new TextField("proof.png");
        field.setAccessibleText("A name");
        return field;
    }

    private static ChoiceBox<String> choice() {
        ChoiceBox<String> choice = new ChoiceBox<>();
        choice.getItems().add("Screen print, plastisol");
        choice.getSelectionModel().select(0);
        choice.setAccessibleText("A choice");
        return choice;
    }

    private static CheckBox check(boolean on) {
        CheckBox check = new CheckBox("Replace an existing file");
        check.setSelected(on);
        return check;
    }

    private static Hyperlink link() {
        return new Hyperlink("line of 0.07 mm in Signal Red");
    }

    private static PanelSwitch panels() {
        PanelSwitch panels = new PanelSwitch();
        panels.add("gallery-notes", "Notes", "What to bear in mind", Ui.label("Approximate", "note"));
        panels.add("gallery-colours", "Colours", "What the page paints", Ui.label("Signal Red"));
        return panels;
    }

    private static Swatch swatch(SubstrateCard card, boolean chosen) {
        Swatch swatch = new Swatch(card, 66, 50);
        swatch.pseudoClassStateChanged(CHOSEN, chosen);
        return swatch;
    }

    private static ViewerState opened() {
        ViewerState state = new ViewerState();
        FakeEngine engine = new FakeEngine();
        state.substrates.setAll(engine.substrates());
        state.substrate.set(FakeEngine.NAVY);
        try {
            java.nio.file.Path file = java.nio.file.Files.createTempFile("gallery", ".pdf");
            java.nio.file.Files.writeString(file, "%PDF-fake");
            var open = engine.open(file, new Cancel(), Progress.NONE);
            java.nio.file.Files.delete(file);
            state.show(open, open.page(1, inkground.artwork.ColourAssignment.NONE, new Cancel(), Progress.NONE));
        } catch (inkground.base.Refusal | java.io.IOException e) {
            throw new IllegalStateException(e);
        }
        return state;
    }

    private static VBox inks() {
        ViewerState state = opened();
        state.toggleHidden(1);
        state.chosenInk.set(0);
        VBox bands = new VBox();
        for (int plane = 0; plane < state.page.get().inks().size(); plane++) {
            InkCard card = state.page.get().inks().get(plane);
            InkBand band = new InkBand(card, plane, state);
            band.colour(0xff000000 | FakeEngine.INK_RGB[plane]);
            band.follow(state);
            bands.getChildren().add(band);
        }
        bands.setPrefWidth(300);
        return bands;
    }

    private static TroubleBar trouble() {
        ViewerState state = new ViewerState();
        TroubleBar bar = new TroubleBar(state, new SimpleBooleanProperty(false));
        state.trouble.set("letter.txt is not a PDF. Choose a file that a drawing program wrote as PDF.");
        bar.setPrefWidth(560);
        return bar;
    }

    private static QuestionBar question() {
        ViewerState state = new ViewerState();
        QuestionBar bar = new QuestionBar(state);
        state.question.set(new Question(
                "What you decided is not kept yet.",
                List.of(
                        new Answer("Keep and close", "Writes it beside the artwork first", () -> {}),
                        new Answer("Stay", "Changes nothing", () -> {}))));
        bar.setPrefWidth(560);
        return bar;
    }

    private static MapLegend legend() {
        ViewerState state = opened();
        int[] sample = new int[MapEntry.SAMPLE_PX * MapEntry.SAMPLE_PX];
        java.util.Arrays.fill(sample, 0xff909090);
        MapLegend legend = new MapLegend(state, new SimpleDoubleProperty());
        state.overlays.map.set(MapKind.THIN);
        state.overlays.report.set(new MapReport(
                "Thin features",
                List.of(
                        new MapEntry("wide enough", "Every line and gap holds.", 1198, 0.998, sample),
                        new MapEntry("line below 0.40 mm", "May not hold.", 1.84, 0.002, sample)),
                "0.07 mm",
                List.of(new MapPlace("line of 0.07 mm in Signal Red", FakeEngine.TRIM))));
        return legend;
    }

    private static StatusLine status() {
        ViewerState state = opened();
        StatusLine line = new StatusLine(state);
        state.news.set("Proof written: regatta.png");
        state.activities.add(new Activity(Runnable::run, "Rasterising", false));
        line.setPrefWidth(760);
        return line;
    }

    private static OverlayStrip overlays() {
        ViewerState state = opened();
        OverlayStrip strip = new OverlayStrip(state);
        state.overlays.map.set(MapKind.BARE);
        strip.setPrefHeight(460);
        return strip;
    }
}
