package inkground.viewer;

import inkground.viewer.colours.CleanSheet;
import inkground.viewer.colours.ColoursPanel;
import inkground.viewer.colours.GroundBar;
import inkground.viewer.compare.ApproveSheet;
import inkground.viewer.compare.CompareView;
import inkground.viewer.desk.BackgroundWork;
import inkground.viewer.desk.ColourDesk;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.SizeDesk;
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
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.Question;
import inkground.viewer.state.Question.Answer;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.ProofSurface;
import inkground.viewer.surface.SurfaceFrame;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Later;
import inkground.viewer.ui.PanelSwitch;
import inkground.viewer.ui.Sheet;
import inkground.viewer.worn.ClothOverlay;
import inkground.viewer.worn.GarmentBench;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.collections.ListChangeListener;
import javafx.css.PseudoClass;
import javafx.event.Event;
import javafx.geometry.Pos;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.stage.Window;
import javafx.stage.WindowEvent;

/**
 * Puts the window together: the surface above the rack, and beside them the stack rising from the substrate. Owns nothing
 * that the views could not do without each other.
 */
final class ViewerWindow {
    private static final double COLUMN_W = 312;
    private static final double COLOURS_SHARE = 0.56;
    private static final PseudoClass FLAT = PseudoClass.getPseudoClass("flat");

    private final ViewerState state;
    private final ProofDesk desk;
    private final BackgroundWork work;
    private final ProofSurface surface;
    private final Later<GarmentBench> garment;
    private final Later<LineUpView> lineUp;
    private final Later<CompareView> compare;
    private final SubstrateRack rack;
    private final ColourDesk colourDesk;
    private final Later<ColoursPanel> colours;
    private final PanelSwitch panels = new PanelSwitch();
    private final StackView stack;
    private final SizeDesk sizeDesk;
    private final SizeBar sizeBar;
    private final FileDrop drop;
    private final FileAsker asker;
    private final BooleanBinding sheetOpen;
    private final Parts parts = new Parts();
    private final StackPane root;
    private final Scene scene;

    ViewerWindow(ViewerState state, ProofDesk desk) {
        this(state, desk, new SystemDialog());
    }

    /** @param asker asks which file to open */
    ViewerWindow(ViewerState state, ProofDesk desk, FileAsker asker) {
        this.state = state;
        this.desk = desk;
        work = desk.work();
        this.asker = asker;
        drop = new FileDrop(state, desk, this::open);
        stack = new StackView(state, work.scheduler("colours of the stack"));
        sheetOpen = state.exportSheet
                .or(state.keySheet)
                .or(state.own.sheet)
                .or(state.lineUp.sheet)
                .or(state.trueSize.sheet)
                .or(state.colours.cleanSheet)
                .or(state.comparison.approveSheet);
        surface = new ProofSurface(state, work.scheduler("rasterising"), work.ui());
        garment = new Later<>(() -> new GarmentBench(state, work.scheduler("garment"), work.ui()));
        lineUp = new Later<>(() -> new LineUpView(state, work.scheduler("laying the line-up"), work.ui()));
        compare = new Later<>(() -> new CompareView(
                state,
                work::scheduler,
                work.ui(),
                () -> askForFile("Choose the earlier revision, or an approval record", desk.comparison()::open),
                desk.comparison()::open));
        rack = new SubstrateRack(state);
        colourDesk = new ColourDesk(state, work);
        colours = new Later<>(() -> new ColoursPanel(state, colourDesk, desk.keeping()));
        sizeDesk = new SizeDesk(state);
        sizeBar = new SizeBar(state, sizeDesk);
        root = new StackPane(
                main(),
                veil(),
                Sheet.place(state.exportSheet, () -> new ExportSheet(state, desk.writing())),
                Sheet.place(state.colours.cleanSheet, () -> new CleanSheet(state, desk.writing())),
                Sheet.place(state.comparison.approveSheet, () -> new ApproveSheet(state, desk.writing())),
                Sheet.place(state.lineUp.sheet, () -> new ContactSheetForm(state, desk.writing())),
                Sheet.place(state.own.sheet, () -> new OwnSheet(state, desk.rack())),
                Sheet.place(state.keySheet, () -> new KeySheet(state)),
                Sheet.place(state.trueSize.sheet, () -> new CardSheet(state)));
        root.setId("window");
        scene = new Scene(root, 1280, 800);
        state.theme.addListener((Observable o) -> dress());
        dress();
        FocusMark.on(scene);
        scene.addEventFilter(KeyEvent.KEY_PRESSED, new WindowKeys(state, desk, this, parts)::pressed);
        scene.focusOwnerProperty().addListener((o, before, now) -> keepKeys(before));
        drop.on(scene);
    }

    private VBox main() {
        PageStrip pages = new PageStrip(state, work.scheduler("small proofs of the pages"), desk.files()::turnTo);
        ClothOverlay grain = new ClothOverlay(state, work.scheduler("grain of the cloth"));
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
        VBox bars = new VBox(
                new TroubleBar(state, sheetOpen), new QuestionBar(state), sizeBar, new GroundBar(state, colourDesk));
        bars.setPickOnBounds(false);
        bars.setMaxHeight(Region.USE_PREF_SIZE);
        StackPane.setAlignment(bars, Pos.TOP_CENTER);
        MapLegend legend = new MapLegend(state, bars.heightProperty());
        StartScreen start = new StartScreen(state, desk.files(), this::askForFile);
        StackPane bench = new StackPane(flat, garment, lineUp, compare, start, legend, bars);
        bench.getStyleClass().add("bench");
        Runnable cover = () ->
                bench.pseudoClassStateChanged(FLAT, state.view.get() == BenchView.FLAT && state.page.get() != null);
        state.view.addListener((Observable o) -> cover.run());
        state.page.addListener((Observable o) -> cover.run());
        parts.add(bench, () -> {
            if (state.page.get() != null) {
                focusView();
            } else {
                Parts.firstStop(start).ifPresent(Node::requestFocus);
            }
        });
        parts.add(bars);
        parts.add(rack);
        bench.setMinSize(0, 0);
        StackPane.setAlignment(bars, Pos.TOP_CENTER);
        OverlayStrip overlays = new OverlayStrip(state);
        HBox light = new HBox(overlays, bench);
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
        TopStrip top = new TopStrip(state, desk.files(), this::askForFile);
        parts.add(panels);
        parts.add(stack);
        parts.add(top);
        parts.add(overlays);
        return new VBox(top, middle, new StatusLine(state));
    }

    /** Keys go to the view that is shown. */
    void focusView() {
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
        veil.visibleProperty().bind(sheetOpen);
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

    /** @return the rack */
    SubstrateRack rack() {
        return rack;
    }

    /** @return the stack */
    StackView stack() {
        return stack;
    }

    /** @return what takes dropped files */
    FileDrop drop() {
        return drop;
    }

    /** @return the line-up */
    LineUpView lineUp() {
        return lineUp.get();
    }

    /** Shows the window on a stage. */
    void show(Stage stage) {
        stage.setScene(scene);
        Rectangle2D screen = Screen.getPrimary().getVisualBounds();
        stage.setMinWidth(Math.min(1060, screen.getWidth()));
        stage.setMinHeight(Math.min(640, screen.getHeight()));
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
        unlessUnsaved("open", () -> desk.files().open(file));
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
                                () -> desk.keeping().keepSession(action)),
                        new Answer(
                                Character.toUpperCase(verb.charAt(0)) + verb.substring(1) + " without",
                                "Forgets order, colours and underbase that you chose",
                                action),
                        new Answer("Stay", "Changes nothing", () -> {}))));
    }

    /** Asks for artwork and opens it. */
    void askForFile() {
        askForFile("Open artwork", this::open);
    }

    private void askForFile(String title, Consumer<Path> then) {
        Optional<Path> near = state.recent.stream().findFirst().map(Path::getParent);
        asker.ask(title, scene.getWindow(), near).ifPresent(then);
    }

    /** Asks whether the window may close, and closes it, as its frame does. */
    void askToClose() {
        Window of = scene.getWindow();
        Event.fireEvent(of, new WindowEvent(of, WindowEvent.WINDOW_CLOSE_REQUEST));
    }

    /** Brings the colours to the front and gives them the keys; from there, goes back to the proof. */
    void colours() {
        if (panels.front().get() == colours) {
            panels.showFirst();
            surface.requestFocus();
        } else {
            panels.show(colours);
            colours.get().focusList();
        }
    }

    /** Asks how large the artwork is. */
    void askForSize() {
        sizeDesk.ask();
        Platform.runLater(sizeBar::focusWidth); // else the key that asked would be typed into it
    }

    /** Leaves the size of the artwork as it is, if that is asked. */
    void keepSize() {
        sizeDesk.keep();
    }

    /** @return whether a sheet lies over the window */
    boolean sheetOpen() {
        return sheetOpen.get();
    }
}
