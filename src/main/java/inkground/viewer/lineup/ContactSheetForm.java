package inkground.viewer.lineup;

import inkground.app.LineUp;
import inkground.app.Proofs;
import inkground.viewer.desk.WriteDesk;
import inkground.viewer.state.ProofEngine.SheetRequest;
import inkground.viewer.state.Rack;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.TargetField;
import inkground.viewer.ui.Ui;
import inkground.viewer.ui.WritingRow;
import java.nio.file.Path;
import java.util.OptionalInt;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;

/** Asks how the line-up is to be written as one picture, and shows it being written. */
public final class ContactSheetForm extends Sheet {
    private final ViewerState state;
    private final WriteDesk desk;
    private final TextField size = new TextField(Integer.toString(LineUp.DEFAULT_PICTURE_PX));
    private final TargetField target = new TargetField("sheet", "Where to write the contact sheet");
    private final Label summary = Ui.label("", "note");
    private final WritingRow progress;

    public ContactSheetForm(ViewerState state, WriteDesk desk) {
        super("contact-sheet", "Write a contact sheet", state.lineUp.sheet);
        this.state = state;
        this.desk = desk;
        progress = new WritingRow("sheet", state.activities);
        summary.setWrapText(true);
        summary.setMaxWidth(480);
        Label words = Ui.label("", "sheet-trouble");
        words.setId("sheet-trouble");
        words.setWrapText(true);
        words.setMaxWidth(480);
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        getChildren().addAll(summary, fields(), words, progress, buttons());
    }

    private GridPane fields() {
        GridPane fields = new GridPane();
        fields.getStyleClass().add("fields");
        size.setId("sheet-size");
        size.setPrefColumnCount(5);
        size.setAccessibleText("Longer side of each picture in pixels");
        Ui.tip(size, "The longer side of each picture: " + LineUp.MIN_PICTURE_PX + " to " + LineUp.MAX_PICTURE_PX);
        HBox pixels = new HBox(size, Ui.label("pixels, the longer side of each picture"));
        pixels.getStyleClass().add("row");
        pixels.setAlignment(Pos.CENTER_LEFT);
        row(fields, "Size", pixels);
        row(fields, "File", target);
        return fields;
    }

    private HBox buttons() {
        Button write = new Button("Write contact sheet");
        write.setId("sheet-write");
        write.defaultButtonProperty().bind(visibleProperty());
        write.setOnAction(e -> write());
        write.disableProperty().bind(progress.visibleProperty());
        Button close = new Button("Close");
        close.setId("sheet-close");
        close.setOnAction(e -> {
            progress.stop();
            state.trouble.set(null);
            state.lineUp.sheet.set(false);
        });
        HBox buttons = new HBox(Ui.spring(), close, write);
        buttons.getStyleClass().add("row");
        return buttons;
    }

    private boolean ranked() {
        return state.lineUp.order.get() == Rack.Order.VANISH;
    }

    @Override
    protected void opened() {
        state.trouble.set(null);
        int count = state.lineUp.cards().size();
        summary.setText(count + " substrates, " + (ranked() ? "ranked by vanish score" : "in the order of the rack")
                + (state.overprint.get() ? ", overprint honoured. " : ", without overprint. ") + Proofs.CAUTION);
        target.suggest(state.file.get().path().toAbsolutePath().resolveSibling(name() + "-line-up.png"));
    }

    private String name() {
        String name = state.file.get().path().getFileName().toString();
        int dot = name.lastIndexOf('.');
        String stem = dot > 0 ? name.substring(0, dot) : name;
        return state.file.get().pageCount() > 1
                ? stem + "-" + state.page.get().info().number()
                : stem;
    }

    private OptionalInt picturePx() {
        try {
            int px = Integer.parseInt(size.getText().strip());
            return px >= LineUp.MIN_PICTURE_PX && px <= LineUp.MAX_PICTURE_PX
                    ? OptionalInt.of(px)
                    : OptionalInt.empty();
        } catch (NumberFormatException e) {
            return OptionalInt.empty();
        }
    }

    private void write() {
        if (picturePx().isEmpty()) {
            state.trouble.set("Size: give a whole number from " + LineUp.MIN_PICTURE_PX + " to " + LineUp.MAX_PICTURE_PX
                    + " pixels.");
        } else if (target.trouble().isPresent()) {
            state.trouble.set(target.trouble().get());
        } else {
            Path path = target.path().get();
            SheetRequest request = new SheetRequest(
                    state.lineUp.cards().stream()
                            .map(card -> state.lookOn(card).solids(state.shownInks()))
                            .toList(),
                    ranked(),
                    name(),
                    state.overprint.get(),
                    state.layersOn,
                    picturePx().getAsInt(),
                    path,
                    target.replaces());
            desk.write(
                    path,
                    state.lineUp.sheet,
                    "Contact sheet written",
                    (page, cancel, progress) -> page.writeSheet(request, cancel, progress));
        }
    }
}
