package inkground.viewer.colours;

import inkground.app.ColourRules;
import inkground.app.ColourRules.Subject;
import inkground.app.ColourWords;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.ink.InkKind;
import inkground.viewer.desk.ColourDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Amount;
import inkground.viewer.ui.Ui;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Sets what the chosen colours are printed as; every change is seen on the proof at once. */
final class AssignEditor extends VBox {
    private final ViewerState state;
    private final ColourDesk desk;
    private final Label what = Ui.label("", "assign-what");
    private final Map<Targets, ToggleButton> choices = new EnumMap<>(Targets.class);
    private final ComboBox<String> ink = new ComboBox<>();
    private final Amount tint;
    private final VBox inkSettings = new VBox();
    private List<ColourRow.Entry> entries = List.of();
    private boolean following;

    AssignEditor(ViewerState state, ColourDesk desk) {
        this.state = state;
        this.desk = desk;
        setId("assign-editor");
        getStyleClass().addAll("drawer", "assign-editor");
        HBox row = new HBox();
        row.getStyleClass().add("assign-choices");
        for (Targets kind : Targets.values()) {
            ToggleButton choice = new ToggleButton(kind.label());
            choice.setId("assign-" + kind.name().toLowerCase(Locale.ROOT));
            choice.setAccessibleText(kind.label() + ": " + kind.sentence());
            choice.setMinWidth(USE_PREF_SIZE);
            Ui.tip(choice, kind.sentence());
            choice.setOnAction(e -> {
                choice.setSelected(true);
                choose(kind);
            });
            choices.put(kind, choice);
            row.getChildren().add(choice);
        }
        tint = new Amount(
                "assign-tint",
                "Tint",
                "How much of the ink stands for the colour; of an ink's own tints, what they are multiplied by",
                0.01,
                1,
                0.01,
                (value, gesture) -> print(new InkAt(inkName(), value), gesture));
        tint.unit(new Amount.Unit("%", 100, 0));
        name();
        inkSettings.getStyleClass().add("ink-settings");
        what.setWrapText(true);
        getChildren().addAll(what, row, inkSettings);
    }

    private void name() {
        ink.setId("assign-ink-name");
        ink.setEditable(true);
        ink.setMaxWidth(Double.MAX_VALUE);
        ink.setAccessibleText("Name of the ink");
        HBox.setHgrow(ink, Priority.ALWAYS);
        Ui.tip(ink, "An ink of the artwork, or a new name: the same name is the same ink everywhere");
        ink.valueProperty().addListener((o, before, now) -> {
            if (!following && now != null && !now.isBlank()) {
                print(new InkAt(now.strip(), current().map(InkAt::tint).orElse(1.0)), new Object());
            }
        });
        Label words = Ui.label("Ink", "amount-name");
        words.setLabelFor(ink);
        HBox row = new HBox(words, ink);
        row.getStyleClass().add("ink-choice");
        row.setAlignment(Pos.CENTER_LEFT);
        inkSettings.getChildren().addAll(row, tint);
    }

    /** Takes over which colours are chosen, and what they are printed as now. */
    void follow(List<ColourRow.Entry> chosen) {
        entries = chosen;
        following = true;
        boolean assignable = !entries.isEmpty()
                && entries.stream().map(ColourRow.Entry::subject).allMatch(Subject::assignable);
        choices.values().forEach(choice -> choice.setDisable(!assignable));
        what.setText(words(assignable));
        List<Targets> kinds = entries.stream()
                .map(entry -> Targets.of(target(entry)))
                .distinct()
                .toList();
        choices.forEach((kind, choice) -> choice.setSelected(kinds.equals(List.of(kind))));
        Optional<InkAt> at = current();
        Ui.shown(inkSettings, assignable && at.isPresent());
        if (state.page.get() != null) {
            ink.getItems()
                    .setAll(state.page.get().inks().stream()
                            .map(card -> card.ink())
                            .filter(one -> one.kind() == InkKind.SPOT || one.kind() == InkKind.PROCESS)
                            .map(one -> one.name())
                            .toList());
        }
        at.ifPresent(now -> {
            ink.setValue(now.name());
            tint.show(now.tint());
        });
        following = false;
    }

    private String words(boolean assignable) {
        if (entries.isEmpty()) {
            return "Choose a colour in the list, or pick it on the proof";
        } else if (!assignable) {
            return "A mixture of inks is assigned ink by ink: choose their own colours";
        } else if (entries.size() > 1) {
            return entries.size() + " colours are printed as";
        }
        ColourRow.Entry only = entries.get(0);
        return only.subject().source() instanceof InkNamed named
                ? "The ink " + named.name() + ", in all its tints, is printed as"
                : only.words() + " is printed as";
    }

    private Target target(ColourRow.Entry entry) {
        return ColourRules.ruleFor(entry.subject(), state.history.get().assignment())
                .map(Rule::to)
                .orElse(null);
    }

    /** The ink that all the chosen colours are printed as, if they are. */
    private Optional<InkAt> current() {
        List<Target> targets = entries.stream()
                .map(this::target)
                .map(to -> to == null ? new Process() : to)
                .distinct()
                .toList();
        return targets.size() == 1 && targets.get(0) instanceof InkAt at ? Optional.of(at) : Optional.empty();
    }

    private void choose(Targets kind) {
        switch (kind) {
            case STATED -> desk.assign(subjects(), Optional.empty(), "print " + brief() + " as stated", new Object());
            case INK -> {
                print(new InkAt(inkName(), 1), new Object());
                ink.requestFocus();
                ink.getEditor().selectAll();
            }
            case WHITE -> print(new WhiteInk(), new Object());
            case BARE -> print(new Bare(), new Object());
            case PROCESS -> print(new Process(), new Object());
        }
        follow(entries);
    }

    private void print(Target to, Object gesture) {
        desk.assign(subjects(), Optional.of(to), "print " + brief() + " as " + Targets.words(to), gesture);
    }

    private List<Subject> subjects() {
        return entries.stream().map(ColourRow.Entry::subject).toList();
    }

    private String brief() {
        return entries.size() == 1 ? entries.get(0).words() : entries.size() + " colours";
    }

    /** The ink in use, else the artwork's own, else a new name by the look of the colour. */
    private String inkName() {
        if (current().isPresent()) {
            return current().get().name();
        }
        Subject first = subjects().get(0);
        if (first.source() instanceof InkNamed named) {
            return named.name();
        }
        return ColourWords.of(first.lab());
    }
}
