package inkground.viewer;

import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.viewer.ProofEngine.OpenPage;
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

/** Which file and page, what is drawn over the proof, and the way out: writing a proof. */
final class TopStrip extends HBox {
    private final ViewerState state;
    private final Label fileName = Ui.label("", "file-name");
    private final Label pageWords = Ui.label("", "quiet");
    private final MenuButton layers = new MenuButton("Layers", new FontIcon(Feather.COPY));
    private final HBox pages;

    /**
     * @param open asks for a file
     */
    TopStrip(ViewerState state, ProofDesk desk, Runnable open) {
        this.state = state;
        getStyleClass().add("top-strip");
        setAlignment(Pos.CENTER_LEFT);
        VBox names = new VBox(fileName, pageWords);
        names.setAlignment(Pos.CENTER_LEFT);
        names.setMinWidth(0);
        pages = new HBox(
                Ui.button("previous-page", "", Feather.ARROW_UP, Command.PREVIOUS_PAGE, () -> desk.turnPage(-1)),
                Ui.button("next-page", "", Feather.ARROW_DOWN, Command.NEXT_PAGE, () -> desk.turnPage(1)));
        pages.setMinWidth(USE_PREF_SIZE);
        pages.setAlignment(Pos.CENTER);
        layers.setId("layers");
        layers.setMinWidth(USE_PREF_SIZE);
        Ui.tip(layers, "Which layers of the file are printed");
        HBox over = over();
        Button proof =
                Ui.button("proof", "Write proof", Feather.FILE_PLUS, Command.EXPORT, () -> state.exportSheet.set(true));
        Button theme =
                Ui.button("theme", "", Feather.MOON, Command.THEME, () -> state.theme.set(next(state.theme.get())));
        Button keys = Ui.button("keys", "", Feather.HELP_CIRCLE, Command.KEYS, () -> state.keySheet.set(true));
        BooleanBinding noPage = state.page.isNull();
        over.disableProperty().bind(noPage);
        proof.disableProperty().bind(noPage);
        getChildren()
                .addAll(
                        Ui.button("open", "Open", Feather.FOLDER, Command.OPEN, open),
                        names,
                        pages,
                        Ui.spring(),
                        layers,
                        over,
                        Ui.spring(),
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

    private HBox over() {
        ToggleButton trim = Ui.toggle("trim", "Trim", Feather.SCISSORS, Command.TRIM, state.trim);
        ToggleButton bleed = Ui.toggle("bleed", "Bleed", Feather.MAXIMIZE_2, Command.BLEED, state.bleed);
        ToggleButton safe = Ui.toggle("safe", "Safe area", Feather.SHIELD, Command.SAFE, state.safe);
        ToggleButton bare = Ui.toggle("bare-map", "Bare map", Feather.GRID, Command.BARE_MAP, state.bareMap);
        HBox over = new HBox(trim, bleed, safe, bare);
        over.getStyleClass().add("over");
        over.setMinWidth(USE_PREF_SIZE);
        over.setAlignment(Pos.CENTER);
        return over;
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
