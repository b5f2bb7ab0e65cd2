package inkground.viewer.compare;

import inkground.app.Approval;
import inkground.app.Approvals;
import inkground.app.Proofs;
import inkground.viewer.desk.WriteDesk;
import inkground.viewer.state.ProofEngine.ApproveRequest;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.TargetField;
import inkground.viewer.ui.Ui;
import inkground.viewer.ui.WritingRow;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;

/** Asks who approved and where the record goes, says what it will hold, and shows it being written. */
public final class ApproveSheet extends Sheet {
    private static final double WORDS_PX = 560;

    private final ViewerState state;
    private final WriteDesk desk;
    private final TextField by = new TextField();
    private final TargetField target =
            new TargetField("approve", "Where to keep what was approved", "Approval record", "*" + Approvals.ENDING);
    private final Label summary = Ui.label("", "note");
    private final Label words = Ui.label("", "sheet-trouble");
    private final WritingRow progress;

    /** Closed. */
    public ApproveSheet(ViewerState state, WriteDesk desk) {
        super("approve-sheet", "Keep as approved", state.comparison.approveSheet);
        this.state = state;
        this.desk = desk;
        by.setId("approve-by");
        by.setPrefColumnCount(26);
        by.setPromptText("no one named");
        by.setAccessibleText("Who approved; may be left empty");
        Ui.tip(by, "Written into the record as you type it; may be left empty");
        summary.setId("approve-summary");
        summary.setWrapText(true);
        summary.setMaxWidth(WORDS_PX);
        words.setId("approve-trouble");
        words.setWrapText(true);
        words.setMaxWidth(WORDS_PX);
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        progress = new WritingRow("approve", state.activities);
        GridPane fields = new GridPane();
        fields.getStyleClass().add("fields");
        row(fields, "Approved by", by);
        row(fields, "File", target);
        getChildren().addAll(summary, fields, words, progress, buttons());
    }

    private HBox buttons() {
        Button write = new Button("Keep as approved");
        write.setId("approve-write");
        write.defaultButtonProperty().bind(visibleProperty());
        write.setOnAction(e -> write());
        write.disableProperty().bind(progress.visibleProperty());
        Button close = new Button("Close");
        close.setId("approve-close");
        close.setOnAction(e -> {
            progress.stop();
            state.trouble.set(null);
            state.comparison.approveSheet.set(false);
        });
        HBox buttons = new HBox(Ui.spring(), close, write);
        buttons.getStyleClass().add("row");
        return buttons;
    }

    @Override
    protected void opened() {
        state.trouble.set(null);
        summary.setText(summary());
        target.suggest(Approvals.beside(state.file.get().path().toAbsolutePath()));
        by.requestFocus();
    }

    private String summary() {
        OpenFile file = state.file.get();
        int shown = state.shownInks().size();
        int all = state.page.get().inks().size();
        return "Page " + state.page.get().info().number() + " of " + file.path().getFileName() + " on "
                + state.substrate.get().name() + ", " + (shown == all ? "all " + all : shown + " of " + all) + " inks"
                + (state.printing.underbaseLies() ? ", on a white underbase" : "")
                + ": one file with the artwork itself, how it is printed, and the proof as it is seen now, to compare with"
                + " later. " + Proofs.CAUTION;
    }

    private void write() {
        String name = by.getText().strip();
        if (name.length() > Approval.LONGEST_NAME) {
            state.trouble.set("Approved by: give at most " + Approval.LONGEST_NAME + " characters.");
        } else if (target.trouble().isPresent()) {
            state.trouble.set(target.trouble().get());
        } else {
            OpenFile file = state.file.get();
            ApproveRequest request = request(name);
            desk.write(
                    request.target(),
                    state.comparison.approveSheet,
                    "Kept as approved",
                    (page, cancel, progressing) -> file.approve(request, cancel, progressing));
        }
    }

    private ApproveRequest request(String name) {
        return new ApproveRequest(
                state.page.get().info().number(),
                state.substrate.get().id(),
                state.history.get(),
                hiddenInks(),
                Optional.ofNullable(state.overlays.process.get()).map(process -> process.name()),
                state.overprint.get(),
                state.layersOn,
                state.worn.seen(),
                name.isEmpty() ? Optional.empty() : Optional.of(name),
                target.path().get(),
                target.replaces());
    }

    private Set<String> hiddenInks() {
        Set<Integer> shown = state.shownInks();
        return IntStream.range(0, state.page.get().inks().size())
                .filter(plane -> !shown.contains(plane))
                .mapToObj(state::inkName)
                .collect(Collectors.toSet());
    }
}
