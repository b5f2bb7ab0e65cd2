package inkground.viewer;

import inkground.app.Approvals;
import inkground.app.ArtworkFiles;
import inkground.viewer.colours.CleanSheet;
import inkground.viewer.colours.ColoursPanel;
import inkground.viewer.colours.GroundBar;
import inkground.viewer.compare.ApproveSheet;
import inkground.viewer.compare.CompareView;
import inkground.viewer.desk.ColourDesk;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.lineup.ContactSheetForm;
import inkground.viewer.lineup.LineUpView;
import inkground.viewer.overlay.MapLegend;
import inkground.viewer.overlay.OverlayStrip;
import inkground.viewer.pages.PageStrip;
import inkground.viewer.pins.PinsPanel;
import inkground.viewer.rack.OwnSheet;
import inkground.viewer.rack.SubstrateRack;
import inkground.viewer.stack.StackView;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.Question;
import inkground.viewer.state.Question.Answer;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import inkground.viewer.state.Worn;
import inkground.viewer.surface.ProofSurface;
import inkground.viewer.surface.SurfaceFrame;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Later;
import inkground.viewer.ui.PanelSwitch;
import inkground.viewer.ui.Sheet;
import inkground.viewer.worn.ClothOverlay;
import inkground.viewer.worn.GarmentBench;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.property.BooleanProperty;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Control;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.stage.Screen;
import javafx.stage.Stage;

/**
 * Puts the window together: the surface above the rack, and beside them the stack rising from the substrate. Owns nothing
 * that the views could not do without each other.
 */
final class ViewerWindow {
    private static final double COLUMN_W = 312;
    private static final double COLOURS_SHARE = 0.56;

    private final ViewerState state;
    private final ProofDesk desk;
    private final ProofSurface surface;
    private final Later<GarmentBench> garment;
    private final Later<LineUpView> lineUp;
    private final Later<CompareView> compare;
    private final SubstrateRack rack;
    private final ColourDesk colourDesk;
    private final Later<ColoursPanel> colours;
    private final PanelSwitch panels = new PanelSwitch();
    private final StackPane root;
    private final Scene scene;

    ViewerWindow(ViewerState state, ProofDesk desk) {
        this.state = state;
        this.desk = desk;
        surface = new ProofSurface(state, desk.forView("rasterising"), desk.ui());
        garment = new Later<>(() -> new GarmentBench(state, desk.forView("garment"), desk.ui()));
        lineUp = new Later<>(() -> new LineUpView(state, desk.forView("laying the line-up"), desk.ui()));
        compare = new Later<>(() -> new CompareView(
                state,
                desk::forView,
                desk.ui(),
                () -> askForFile("Choose the earlier revision, or an approval record", desk.comparison()::open),
                desk.comparison()::open));
        rack = new SubstrateRack(state);
        colourDesk = new ColourDesk(state, desk);
        colours = new Later<>(() -> new ColoursPanel(state, colourDesk, desk));
        root = new StackPane(
                main(),
                veil(),
                Sheet.place(state.exportSheet, () -> new ExportSheet(state, desk)),
                Sheet.place(state.colours.cleanSheet, () -> new CleanSheet(state, desk)),
                Sheet.place(state.comparison.approveSheet, () -> new ApproveSheet(state, desk)),
                Sheet.place(state.lineUp.sheet, () -> new ContactSheetForm(state, desk)),
                Sheet.place(state.own.sheet, () -> new OwnSheet(state, desk.rack())),
                Sheet.place(state.keySheet, () -> new KeySheet(state)),
                Sheet.place(state.trueSize.sheet, () -> new CardSheet(state)));
        root.setId("window");
        scene = new Scene(root, 1280, 800);
        state.theme.addListener((Observable o) -> dress());
        dress();
        scene.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        scene.focusOwnerProperty().addListener((o, before, now) -> keepKeys(before));
        scene.setOnDragOver(this::dragOver);
        scene.setOnDragDropped(this::dropped);
    }

    private VBox main() {
        PageStrip pages = new PageStrip(state, desk.forView("small proofs of the pages"), desk::turnTo);
        ClothOverlay grain = new ClothOverlay(state, desk.forView("grain of the cloth"));
        SurfaceFrame flat = new SurfaceFrame(state, new StackPane(surface, grain), pages);
        flat.visibleProperty().bind(state.view.isEqualTo(BenchView.FLAT));
        // Of itself too: it leaves the camera alone while another view looks through it.
        surface.visibleProperty().bind(flat.visibleProperty());
        lineUp.visibleProperty().bind(state.view.isEqualTo(BenchView.LINE_UP));
        state.view.addListener((Observable o) -> {
            if (!(scene.getFocusOwner() instanceof TextInputControl)) {
                Platform.runLater(this::focusView); // once it is seen
            }
        });
        garment.visibleProperty().bind(state.view.isEqualTo(BenchView.GARMENT).and(state.page.isNotNull()));
        compare.visibleProperty().bind(state.view.isEqualTo(BenchView.COMPARE).and(state.page.isNotNull()));
        MapLegend legend = new MapLegend(state);
        VBox bars = new VBox(new TroubleBar(state), new QuestionBar(state), new GroundBar(state, colourDesk));
        bars.setPickOnBounds(false);
        StackPane bench = new StackPane(
                flat, garment, lineUp, compare, new StartScreen(state, desk, this::askForFile), legend, bars);
        bench.getStyleClass().add("bench");
        bench.setMinSize(0, 0);
        StackPane.setAlignment(bars, Pos.TOP_CENTER);
        HBox light = new HBox(new OverlayStrip(state), bench);
        light.setMinHeight(0);
        HBox.setHgrow(bench, Priority.ALWAYS);
        VBox.setVgrow(light, Priority.ALWAYS);
        VBox left = new VBox(light, rack);
        left.setMinWidth(0);
        HBox.setHgrow(left, Priority.ALWAYS);
        panels.add("panel-notes", "Notes", "What to bear in mind while looking", new NotesPanel(state));
        panels.add("panel-colours", "Colours", Command.COLOURS.tip(), colours);
        Later<PinsPanel> pins = new Later<>(() -> new PinsPanel(state));
        panels.add("panel-pins", "Pins", "Places that you watch while substrates and inks change", pins);
        state.pins.all.addListener((ListChangeListener<Pin>) c -> {
            if (state.pins.all.size() == 1 && c.next() && c.wasAdded()) {
                panels.show(pins);
            }
        });
        StackView stack = new StackView(state, desk.forView("colours of the stack"));
        VBox.setVgrow(panels, Priority.ALWAYS);
        VBox column = new VBox(panels, stack);
        // The list of colours and what is done with it need room; the stack scrolls.
        panels.minHeightProperty()
                .bind(Bindings.createDoubleBinding(
                        () -> panels.front().get() == colours ? column.getHeight() * COLOURS_SHARE : 96,
                        panels.front(),
                        column.heightProperty()));
        stack.setMinHeight(0);
        column.getStyleClass().add("column");
        column.setMinWidth(COLUMN_W);
        column.setMaxWidth(COLUMN_W);
        HBox middle = new HBox(left, column);
        VBox.setVgrow(middle, Priority.ALWAYS);
        middle.setMinHeight(0);
        return new VBox(new TopStrip(state, desk, this::askForFile), middle, new StatusLine(state));
    }

    /** Keys go to the view that is shown. */
    private void focusView() {
        switch (state.view.get()) {
            case LINE_UP -> lineUp.get().requestFocus();
            case GARMENT -> garment.get().surface().requestFocus();
            case COMPARE -> compare.get().requestFocus();
            default -> surface.requestFocus();
        }
    }

    /** What goes out of sight takes its focus along, which would fall to the next text field, and the keys with it. */
    private void keepKeys(Node before) {
        if (before != null && !seen(before) && !sheetOpen()) {
            Platform.runLater(this::focusView);
        }
    }

    private static boolean seen(Node node) {
        boolean shown = node.getScene() != null;
        for (Node n = node; n != null && shown; n = n.getParent()) {
            shown = n.isVisible();
        }
        return shown && !node.isDisabled();
    }

    /** Lies between the window and a sheet, and takes the clicks that miss the sheet. */
    private Pane veil() {
        Pane veil = new Pane();
        veil.getStyleClass().add("veil");
        veil.visibleProperty()
                .bind(state.exportSheet
                        .or(state.keySheet)
                        .or(state.own.sheet)
                        .or(state.lineUp.sheet)
                        .or(state.trueSize.sheet)
                        .or(state.colours.cleanSheet)
                        .or(state.comparison.approveSheet));
        veil.setOnMouseClicked(e -> state.keySheet.set(false));
        return veil;
    }

    private void dress() {
        scene.getStylesheets().setAll(state.theme.get().tokens(), Theme.rules());
    }

    /** @return the scene */
    Scene scene() {
        return scene;
    }

    /** @return the surface */
    ProofSurface surface() {
        return surface;
    }

    /** @return the bench with the garment */
    GarmentBench garment() {
        return garment.get();
    }

    /** @return the line-up */
    LineUpView lineUp() {
        return lineUp.get();
    }

    /** Shows the window on a stage. */
    void show(Stage stage) {
        stage.setScene(scene);
        stage.setMinWidth(1060);
        stage.setMinHeight(640);
        stage.titleProperty()
                .bind(Bindings.createStringBinding(
                        () -> state.file.get() == null
                                ? "Inkground"
                                : state.file.get().path().getFileName()
                                        + (state.unsaved.get() ? " (not kept)" : "")
                                        + " · Inkground",
                        state.file,
                        state.unsaved));
        stage.setOnCloseRequest(e -> {
            if (state.unsaved.get()) {
                e.consume();
                unlessUnsaved("close", stage::close);
            }
        });
        for (Observable value :
                List.of(stage.xProperty(), stage.yProperty(), stage.widthProperty(), stage.outputScaleXProperty())) {
            value.addListener(o -> tellScreen(stage));
        }
        stage.show();
        tellScreen(stage);
        surface.requestFocus();
    }

    /** Screens have no names; size and scale tell those apart whose pixels may differ in size. */
    private void tellScreen(Stage stage) {
        Screen.getScreensForRectangle(stage.getX() + stage.getWidth() / 2, stage.getY() + stage.getHeight() / 2, 1, 1)
                .stream()
                .findFirst()
                .ifPresent(screen -> state.trueSize.screen.set(String.format(
                        Locale.ROOT,
                        "%.0fx%.0f at %.2f",
                        screen.getBounds().getWidth() * screen.getOutputScaleX(),
                        screen.getBounds().getHeight() * screen.getOutputScaleY(),
                        screen.getOutputScaleX())));
    }

    /** Stops all work of the window. */
    void close() {
        desk.close();
    }

    /** Opens a file, once what was decided about the present one is kept or given up. */
    private void open(Path file) {
        unlessUnsaved("open", () -> desk.open(file));
    }

    private void unlessUnsaved(String verb, Runnable action) {
        if (!state.unsaved.get()) {
            action.run();
            return;
        }
        state.question.set(new Question(
                "What you decided about " + state.file.get().path().getFileName() + " is not kept yet.",
                List.of(
                        new Answer(
                                "Keep and " + verb,
                                "Writes it into a small file beside the artwork first",
                                () -> desk.keepSession(action)),
                        new Answer(
                                Character.toUpperCase(verb.charAt(0)) + verb.substring(1) + " without",
                                "Forgets order, colours and underbase that you chose",
                                action),
                        new Answer("Stay", "Changes nothing", () -> {}))));
    }

    private void askForFile() {
        askForFile("Open artwork", this::open);
    }

    private void askForFile(String title, Consumer<Path> then) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter("Artwork", patterns()),
                        new FileChooser.ExtensionFilter("Approval record", "*" + Approvals.ENDING),
                        new FileChooser.ExtensionFilter("All files", "*.*"));
        state.recent.stream()
                .findFirst()
                .map(Path::getParent)
                .map(Path::toFile)
                .filter(File::isDirectory)
                .ifPresent(chooser::setInitialDirectory);
        Optional.ofNullable(chooser.showOpenDialog(scene.getWindow())).ifPresent(f -> then.accept(f.toPath()));
    }

    /** Both ways of writing an ending: some systems tell them apart. */
    private static List<String> patterns() {
        return ArtworkFiles.ENDINGS.stream()
                .flatMap(ending -> Stream.of("*." + ending, "*." + ending.toUpperCase(Locale.ROOT)))
                .toList();
    }

    private void dragOver(DragEvent e) {
        if (e.getDragboard().hasFiles()) {
            e.acceptTransferModes(TransferMode.COPY);
        }
        e.consume();
    }

    private void dropped(DragEvent e) {
        List<File> files = e.getDragboard().getFiles();
        openDropped(files);
        e.setDropCompleted(!files.isEmpty());
        e.consume();
    }

    /**
     * Opens the first artwork among files that were dropped, or compares with an approval record; without either the first file, so
     * that the user is told about it.
     */
    void openDropped(List<File> files) {
        if (files.isEmpty()) {
            return;
        }
        Path file = firstArtwork(files).toPath();
        if (Approvals.isRecord(file)) {
            desk.comparison().open(file);
        } else {
            open(file);
        }
    }

    private static File firstArtwork(List<File> files) {
        return files.stream().filter(ViewerWindow::isArtwork).findFirst().orElse(files.get(0));
    }

    private static boolean isArtwork(File file) {
        String name = file.getName().toLowerCase(Locale.ROOT);
        return ArtworkFiles.ENDINGS.stream().anyMatch(ending -> name.endsWith("." + ending));
    }

    private void key(KeyEvent e) {
        if (KeyTakers.navigates(scene.getFocusOwner(), e)) {
            return;
        }
        boolean typing = KeyTakers.types(scene.getFocusOwner());
        boolean sheet = sheetOpen();
        if (!sheet && !typing && nudge(e)) {
            e.consume();
            return;
        }
        if (!sheet && chooseView(e)) {
            return;
        }
        if (!sheet && !typing && e.isShiftDown() && e.getCode().isArrowKey()) {
            panByKey(e);
            return;
        }
        Command.of(e)
                .filter(c -> c == Command.ESCAPE || c == Command.KEYS || !sheet && !typing)
                .filter(c -> c != Command.MARK && c != Command.TAKE || !(scene.getFocusOwner() instanceof Control))
                .ifPresent(command -> {
                    perform(command);
                    e.consume();
                });
    }

    /** Ctrl and an arrow move the artwork on the garment. */
    private boolean nudge(KeyEvent e) {
        if (state.view.get() != BenchView.GARMENT
                || !e.isShortcutDown()
                || !e.getCode().isArrowKey()) {
            return false;
        }
        double step = e.isShiftDown() ? Worn.LONG_NUDGE_MM : Worn.NUDGE_MM;
        switch (e.getCode()) {
            case LEFT, KP_LEFT -> state.worn.nudge(-step, 0);
            case RIGHT, KP_RIGHT -> state.worn.nudge(step, 0);
            case UP, KP_UP -> state.worn.nudge(0, -step);
            default -> state.worn.nudge(0, step);
        }
        return true;
    }

    /** @return whether the key chose a view: the menu key with a number */
    private boolean chooseView(KeyEvent e) {
        int number = e.getCode().ordinal() - KeyCode.DIGIT1.ordinal();
        if (!e.isShortcutDown() || number < 0 || number >= BenchView.values().length) {
            return false;
        }
        state.view.set(BenchView.values()[number]);
        e.consume();
        return true;
    }

    private void panByKey(KeyEvent e) {
        double step = ProofSurface.ARROW_PX;
        switch (e.getCode()) {
            case LEFT -> state.pan(step, 0);
            case RIGHT -> state.pan(-step, 0);
            case UP -> state.pan(0, step);
            default -> state.pan(0, -step);
        }
        e.consume();
    }

    private void perform(Command command) {
        switch (command) {
            case COLOURS -> colours();
            case OPEN -> askForFile();
            case KEEP -> desk.keepSession(() -> {});
            case RELOAD -> desk.reload();
            case APPROVE -> state.comparison.approveSheet.set(state.look() != null);
            case EXPORT -> state.exportSheet.set(state.page.get() != null);
            case NEXT_SUBSTRATE -> step(1);
            case PREVIOUS_SUBSTRATE -> step(-1);
            case INK_ABOVE -> climb(1);
            case INK_BELOW -> climb(-1);
            case ZOOM_IN -> state.zoom(1.25);
            case ZOOM_OUT -> state.zoom(1 / 1.25);
            case FIT -> state.fitPage();
            case TRUE_SIZE -> state.showTrueSize();
            case TURN -> state.turn(1);
            case TURN_BACK -> state.turn(-1);
            case NEXT_PAGE -> desk.turnPage(1);
            case PREVIOUS_PAGE -> desk.turnPage(-1);
            case ESCAPE -> escape();
            default -> flip(command);
        }
    }

    private boolean linedUp() {
        return state.view.get() == BenchView.LINE_UP;
    }

    private void step(int by) {
        if (linedUp()) {
            state.stepLineUp(by);
        } else {
            state.stepSubstrate(by);
        }
    }

    private void climb(int by) {
        if (linedUp()) {
            lineUp.get().stepRow(-by);
        } else {
            state.stepInk(by);
        }
    }

    private void flip(Command command) {
        int ink = state.chosenInk.get();
        switch (command) {
            case HIDE_INK -> ifChosen(ink, () -> state.toggleHidden(ink));
            case SOLO_INK -> ifChosen(ink, () -> state.toggleSolo(ink));
            case PLATE -> ifChosen(ink, state::togglePlate);
            case MOVE_INK_UP -> ifChosen(ink, () -> state.moveInkBy(ink, 1));
            case MOVE_INK_DOWN -> ifChosen(ink, () -> state.moveInkBy(ink, -1));
            case UNDERBASE -> state.toggleUnderbase();
            case SEARCH -> rack.search();
            case FAVOURITE -> rack.favourite();
            case MARK -> rack.mark();
            case TAKE -> lineUp.get().take();
            case UNDO -> state.history.undo();
            case REDO -> state.history.redo();
            case OVERPRINT -> flip(state.overprint);
            case RULERS -> flip(state.rulers);
            case PIN -> state.pinProbe();
            case UNPIN_ALL -> state.pins.clear();
            case TRIM -> flip(state.overlays.trim);
            case BLEED -> flip(state.overlays.bleed);
            case SAFE -> flip(state.overlays.safe);
            case PRINT_AREA -> flip(state.worn.area);
            case CLOTH -> flip(state.view.get() == BenchView.GARMENT ? state.worn.cloth : state.overlays.cloth);
            case THIN_MAP -> state.overlays.toggle(MapKind.THIN);
            case REGISTER_MAP -> state.overlays.toggle(MapKind.REGISTER);
            case PLACES -> flip(state.overlays.places);
            case NEXT_PLACE -> state.walk.step(1);
            case PREVIOUS_PLACE -> state.walk.step(-1);
            case OVERPRINT_MAP -> state.overlays.toggle(MapKind.OVERPRINT);
            case COMPARE_WAY -> state.comparison.nextWay();
            case VANISH_MAP -> state.overlays.toggle(MapKind.VANISH);
            case REACH_MAP -> state.overlays.toggle(MapKind.REACH);
            case SHIFT_MAP -> state.overlays.toggle(MapKind.SHIFT);
            case SCREEN_MAP -> state.overlays.toggle(MapKind.SCREEN);
            case TOTAL_INK_MAP -> state.overlays.toggle(MapKind.TOTAL_INK);
            case BARE_MAP -> state.overlays.toggle(MapKind.BARE);
            case UNIT -> state.unit.set(state.unit.get() == LengthUnit.MM ? LengthUnit.INCH : LengthUnit.MM);
            case THEME -> state.theme.set(TopStrip.next(state.theme.get()));
            case KEYS -> state.keySheet.set(!state.keySheet.get());
            default -> throw new IllegalStateException("no key does " + command);
        }
    }

    private static void flip(BooleanProperty property) {
        property.set(!property.get());
    }

    /** Brings the colours to the front and gives them the keys; from there, goes back to the proof. */
    private void colours() {
        if (panels.front().get() == colours) {
            panels.showFirst();
            surface.requestFocus();
        } else {
            panels.show(colours);
            colours.get().focusList();
        }
    }

    private void ifChosen(int ink, Runnable action) {
        if (ink >= 0) {
            action.run();
        } else {
            state.news.set("Choose an ink first, with Up and Down");
        }
    }

    private boolean sheetOpen() {
        return state.exportSheet.get()
                || state.keySheet.get()
                || state.own.sheet.get()
                || state.lineUp.sheet.get()
                || state.trueSize.sheet.get()
                || state.colours.cleanSheet.get()
                || state.comparison.approveSheet.get();
    }

    /** One step back: the sheet of keys, the search, the work, the message, the ink that stands alone. */
    private void escape() {
        if (state.keySheet.get()) {
            state.keySheet.set(false);
        } else if (state.trueSize.sheet.get()) {
            state.trueSize.sheet.set(false);
        } else if (!sheetOpen() && rack.endSearch()) {
            (linedUp() ? lineUp.get() : surface).requestFocus();
        } else if (!state.activities.isEmpty()) {
            desk.cancelAll();
        } else if (state.exportSheet.get() || state.colours.cleanSheet.get() || state.comparison.approveSheet.get()) {
            state.trouble.set(null);
            state.comparison.approveSheet.set(false);
            state.exportSheet.set(false);
            state.colours.cleanSheet.set(false);
        } else if (state.question.get() != null) {
            state.question.set(null);
        } else if (state.lineUp.sheet.get()) {
            state.trouble.set(null);
            state.lineUp.sheet.set(false);
        } else if (state.own.sheet.get()) {
            state.trouble.set(null);
            state.own.close();
        } else if (state.trouble.get() != null) {
            state.trouble.set(null);
        } else if (state.colours.picking.get()) {
            state.colours.picking.set(false);
        } else if (state.stack.plate.get()) {
            state.stack.plate.set(false);
        } else {
            state.solo.set(-1);
        }
    }
}
