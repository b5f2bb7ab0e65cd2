package inkground.viewer;

import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.viewer.desk.FileDesk;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.beans.binding.BooleanBinding;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Which file and page, how it is laid out, the way back, and the way out: writing a proof. */
final class TopStrip extends HBox {
    private final ViewerState state;
    private final Label fileName = Ui.label("", "file-name");
    private final Label pageWords = Ui.label("", "quiet");
    private final MenuButton layers = new MenuButton("Layers", new FontIcon(Feather.COPY));
    private final HBox pages;

    /**
     * @param open asks for a file
     */
    TopStrip(ViewerState state, FileDesk files, Runnable open) {
        this.state = state;
        getStyleClass().add("top-strip");
        setAlignment(Pos.CENTER_LEFT);
        VBox names = new VBox(fileName, pageWords);
        names.setAlignment(Pos.CENTER_LEFT);
        names.setMinWidth(0);
        pages = new HBox(
                Ui.button("previous-page", "", Feather.ARROW_UP, Command.PREVIOUS_PAGE, () -> files.turnPage(-1)),
                Ui.button("next-page", "", Feather.ARROW_DOWN, Command.NEXT_PAGE, () -> files.turnPage(1)));
        pages.setMinWidth(USE_PREF_SIZE);
        pages.setAlignment(Pos.CENTER);
        layers.setId("layers");
        layers.setMinWidth(USE_PREF_SIZE);
        Ui.tip(layers, "Which layers of the file are printed");
        HBox views = views();
        Button proof =
                Ui.button("proof", "Write proof", Feather.FILE_PLUS, Command.EXPORT, () -> state.exportSheet.set(true));
        Button undo = Ui.button("undo", "", Feather.CORNER_UP_LEFT, Command.UNDO, state.history::undo);
        Button redo = Ui.button("redo", "", Feather.CORNER_UP_RIGHT, Command.REDO, state.history::redo);
        undo.disableProperty().bind(state.history.undoable().isEmpty());
        redo.disableProperty().bind(state.history.redoable().isEmpty());
        HBox back = new HBox(undo, redo);
        back.setMinWidth(USE_PREF_SIZE);
        back.setAlignment(Pos.CENTER);
        Button theme =
                Ui.button("theme", "", Feather.MOON, Command.THEME, () -> state.theme.set(next(state.theme.get())));
        Button keys = Ui.button("keys", "", Feather.HELP_CIRCLE, Command.KEYS, () -> state.keySheet.set(true));
        BooleanBinding noPage = state.page.isNull();
        views.disableProperty().bind(noPage);
        proof.disableProperty().bind(noPage);
        getChildren()
                .addAll(
                        Ui.button("open", "Open", Feather.FOLDER, Command.OPEN, open),
                        names,
                        pages,
                        Ui.spring(),
                        views,
                        layers,
                        Ui.spring(),
                        back,
                        theme,
                        keys,
                        proof);
        for (Observable value : new Observable[] {state.page, state.unit}) {
            value.addListener(o -> fill());
        }
        state.theme.addListener((Observable o) -> themeIcon(theme));
        themeIcon(theme);
        fill();
    }

    /** The ways of laying out the artwork. Each can have the focus, as in a group only the chosen one could. */
    private HBox views() {
        HBox views = new HBox();
        for (BenchView view : BenchView.values()) {
            ToggleButton toggle = new ToggleButton(view.label());
            toggle.setId("view-" + view.name().toLowerCase(Locale.ROOT).replace('_', '-'));
            toggle.setMinWidth(USE_PREF_SIZE);
            toggle.setAccessibleText(view.label() + ": " + view.sentence());
            Ui.tip(toggle, view.sentence() + "  [Ctrl+" + (view.ordinal() + 1) + "]");
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                state.view.set(view);
            });
            state.view.addListener((Observable o) -> toggle.setSelected(state.view.get() == view));
            toggle.setSelected(state.view.get() == view);
            views.getChildren().add(toggle);
        }
        views.getStyleClass().add("over");
        views.setMinWidth(USE_PREF_SIZE);
        views.setAlignment(Pos.CENTER);
        return views;
    }

    private void themeIcon(Button theme) {
        theme.setGraphic(new FontIcon(state.theme.get() == Theme.LIGHT ? Feather.MOON : Feather.SUN));
    }

    /** @return the other theme */
    static Theme next(Theme theme) {
        return theme == Theme.LIGHT ? Theme.DARK : Theme.LIGHT;
    }

    private void fill() {
        OpenPage page = state.page.get();
        Ui.shown(pages, page != null && state.file.get().pageCount() > 1);
        Ui.shown(layers, page != null && !page.layers().isEmpty());
        if (page == null) {
            fileName.setText("");
            pageWords.setText("");
            return;
        }
        fileName.setText(state.file.get().path().getFileName().toString());
        Ui.tip(fileName, state.file.get().path().toString());
        String size = state.unit.get().size(page.info().box(PageBox.TRIM));
        int count = state.file.get().pageCount();
        pageWords.setText(count == 1 ? size : "page " + page.info().number() + " of " + count + ", " + size);
        Ui.tip(pageWords, pageWords.getText());
        layers.getItems().setAll(page.layers().stream().map(this::item).toList());
    }

    private CheckMenuItem item(Layer layer) {
        CheckMenuItem item = new CheckMenuItem(layer.name());
        item.setMnemonicParsing(false);
        item.setSelected(state.layersOn.contains(layer.id()));
        item.setOnAction(e -> {
            if (item.isSelected()) {
                state.layersOn.add(layer.id());
            } else {
                state.layersOn.remove(layer.id());
            }
        });
        return item;
    }
}
