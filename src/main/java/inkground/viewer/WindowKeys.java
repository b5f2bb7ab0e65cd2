package inkground.viewer;

import inkground.viewer.desk.ProofDesk;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ViewerState;
import inkground.viewer.state.Worn;
import inkground.viewer.surface.ProofSurface;
import inkground.viewer.ui.Command;
import javafx.application.Platform;
import javafx.beans.property.BooleanProperty;
import javafx.scene.Node;
import javafx.scene.control.Control;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** What the keys do, wherever the focus is; a control that needs a key for itself keeps it. */
final class WindowKeys {
    private final ViewerState state;
    private final ProofDesk desk;
    private final ViewerWindow window;
    private final Parts parts;

    /** @param parts that the keys go to one after the other */
    WindowKeys(ViewerState state, ProofDesk desk, ViewerWindow window, Parts parts) {
        this.state = state;
        this.desk = desk;
        this.window = window;
        this.parts = parts;
    }

    /** Does what a pressed key stands for, before any control has seen it. */
    void pressed(KeyEvent e) {
        Node focus = window.scene().getFocusOwner();
        if (KeyTakers.navigates(focus, e)) {
            return;
        }
        boolean typing = KeyTakers.types(focus);
        boolean sheet = window.sheetOpen();
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
                .filter(c -> everywhere(c) || !sheet && (!typing || c.leavesFields()))
                .filter(c -> c != Command.MARK && c != Command.TAKE || !(focus instanceof Control))
                .ifPresent(command -> {
                    perform(command);
                    if (command != Command.ESCAPE || !(focus instanceof TextInputControl)) {
                        e.consume();
                    }
                });
    }

    private static boolean everywhere(Command command) {
        return command == Command.ESCAPE || command == Command.KEYS;
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
            case COLOURS -> window.colours();
            case OPEN -> window.askForFile();
            case KEEP -> desk.keeping().keepSession(() -> {});
            case RELOAD -> desk.files().reload();
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
            case NEXT_PAGE -> desk.files().turnPage(1);
            case PREVIOUS_PAGE -> desk.files().turnPage(-1);
            case NEXT_PART -> parts.step(1);
            case PREVIOUS_PART -> parts.step(-1);
            case SIZE -> window.askForSize();
            case CLOSE -> window.askToClose();
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
            window.lineUp().stepRow(-by);
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
            case MOVE_INK_UP -> ifChosen(ink, () -> state.printing.moveBy(ink, 1));
            case MOVE_INK_DOWN -> ifChosen(ink, () -> state.printing.moveBy(ink, -1));
            case OPACITY -> ifChosen(ink, window.stack()::focusOpacity);
            case UNDERBASE -> state.printing.toggleUnderbase();
            case UNDERBASE_DRAWER -> window.stack().focusUnderbase();
            case SEARCH -> window.rack().search();
            case FAVOURITE -> window.rack().favourite();
            case MARK -> window.rack().mark();
            case TAKE -> takeUp();
            case UNDO -> state.history.undo();
            case REDO -> state.history.redo();
            case OVERPRINT -> flip(state.overprint);
            case RULERS -> flip(state.rulers);
            case PIN -> pin();
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
            case LEGEND -> state.overlays.toggleLegend();
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

    private void takeUp() {
        if (linedUp()) {
            window.lineUp().take();
        }
    }

    /** Without a pointer over the page, the middle of what is seen is meant. */
    private void pin() {
        if (state.probe.get() == null && state.view.get() == BenchView.FLAT) {
            window.surface().probeMiddle();
            state.pinProbe();
            state.probe.set(null);
        } else {
            state.pinProbe();
        }
    }

    private void ifChosen(int ink, Runnable action) {
        if (ink >= 0) {
            action.run();
        } else {
            state.news.set("Choose an ink first, with Up and Down");
        }
    }

    /**
     * One step back: the sheet of keys, the search, the work, the message, the ink that stands alone; then the keys
     * go back to the view.
     */
    private void escape() {
        if (state.keySheet.get()) {
            state.keySheet.set(false);
        } else if (state.trueSize.sheet.get()) {
            state.trueSize.sheet.set(false);
        } else if (!window.sheetOpen() && window.rack().endSearch()) {
            window.focusView();
        } else if (!state.activities.isEmpty()) {
            desk.work().cancelAll();
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
        } else if (state.size.asked.get() != null) {
            window.keepSize();
            Platform.runLater(window::focusView);
        } else if (state.colours.picking.get()) {
            state.colours.picking.set(false);
        } else if (state.stack.plate.get()) {
            state.stack.plate.set(false);
        } else if (state.solo.get() >= 0) {
            state.solo.set(-1);
        } else {
            Platform.runLater(window::focusView); // a field puts back first what was there
        }
    }
}
