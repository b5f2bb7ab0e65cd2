package inkground.viewer.ui;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/** All that a key does: its keys, and one sentence for the tooltip and the sheet of keys. */
public enum Command {
    OPEN("Ctrl+O", "Open artwork", true, KeyCode.O),
    EXPORT("Ctrl+E", "Write a proof of this page as a PNG", true, KeyCode.E),
    APPROVE(
            "Ctrl+K",
            "Keep this page as approved: artwork, substrate, arrangement and proof in one record",
            true,
            KeyCode.K),
    NEXT_SUBSTRATE("Right", "Lay the artwork on the next substrate", false, KeyCode.RIGHT),
    PREVIOUS_SUBSTRATE("Left", "Lay the artwork on the substrate before", false, KeyCode.LEFT),
    SEARCH("Ctrl+F", "Find a substrate or an ink by name, kind, texture or colour", true, KeyCode.F),
    FAVOURITE("Ctrl+B", "Keep the chosen substrate among the favourites, or no longer", true, KeyCode.B),
    MARK("Space", "Mark the chosen substrate for the line-up, or take the mark away", false, KeyCode.SPACE),
    TAKE("Enter", "In the line-up: take the chosen substrate to the surface", false, KeyCode.ENTER),
    INK_ABOVE("Up", "Choose the ink above in the stack", false, KeyCode.UP),
    INK_BELOW("Down", "Choose the ink below in the stack", false, KeyCode.DOWN),
    HIDE_INK("H", "Hide the chosen ink, or show it again", false, KeyCode.H),
    SOLO_INK("S", "Show the chosen ink alone, or all again", false, KeyCode.S),
    PLATE("J", "Show the chosen ink as the printer sees it: its plate, black on white", false, KeyCode.J),
    MOVE_INK_UP("Alt+Up", "Print the chosen ink later, over the one above it", KeyCombination.ALT_DOWN, KeyCode.UP),
    MOVE_INK_DOWN(
            "Alt+Down", "Print the chosen ink earlier, under the one below it", KeyCombination.ALT_DOWN, KeyCode.DOWN),
    COLOURS("Ctrl+L", "Assign the colours of the artwork to inks", true, KeyCode.L),
    OPACITY("Q", "Set the opacity of the chosen ink in its drawer", false, KeyCode.Q),
    UNDERBASE("U", "Lay a white underbase between cloth and inks", false, KeyCode.U),
    UNDERBASE_DRAWER("Shift+U", "Set tint, hits, choke and place of the underbase", KeyCode.U),
    OVERPRINT("O", "Honour overprint; off shows what a device that ignores it prints", false, KeyCode.O),
    KEEP("Ctrl+S", "Keep what was decided beside the artwork: order, colours, underbase, substrate", true, KeyCode.S),
    RELOAD("F5", "Read the file again; it is also read again when another program changes it", false, KeyCode.F5),
    UNDO("Ctrl+Z", "Take back the last change to inks, order or colours", true, KeyCode.Z),
    REDO("Ctrl+Y", "Do again what was taken back", true, KeyCode.Y),
    TRIM("T", "Show the line where the product is cut", false, KeyCode.T),
    BLEED("B", "Show how far the artwork must reach beyond the cut", false, KeyCode.B),
    SAFE("A", "Show the safe area: keep type and logos inside it", false, KeyCode.A),
    BARE_MAP("M", "Map where no ink arrives, and why", false, KeyCode.M),
    PRINT_AREA("K", "Show the print areas of the garment", false, KeyCode.K),
    CLOTH("G", "Show the grain of the fabric and, on the garment, its folds", false, KeyCode.G),
    VANISH_MAP("V", "Map which edges of the artwork lose their contrast on this substrate", false, KeyCode.V),
    REACH_MAP("N", "Map where no mixture of the inks gives the colour that the artwork asks for", false, KeyCode.N),
    SHIFT_MAP("E", "Map where the substrate changes the colour that the artwork asks for", false, KeyCode.E),
    SCREEN_MAP("Shift+N", "Map where this screen cannot show the colour that is printed", KeyCode.N),
    TOTAL_INK_MAP("L", "Map where more ink lies than the way of printing takes", false, KeyCode.L),
    OVERPRINT_MAP("X", "Map where a device that ignores overprint prints another colour", false, KeyCode.X),
    THIN_MAP("W", "Map lines and gaps narrower than the way of printing holds", false, KeyCode.W),
    REGISTER_MAP("Y", "Let each ink lie off by the register tolerance, one way after another", false, KeyCode.Y),
    PLACES("F", "Mark the places that a map names", false, KeyCode.F),
    NEXT_PLACE("F3", "Look at the next place that the map found", false, KeyCode.F3),
    PREVIOUS_PLACE("Shift+F3", "Look at the place before", KeyCode.F3),
    LEGEND("Shift+M", "Fold the legend of the map to its title, so that it hides less of the proof", KeyCode.M),
    COMPARE_WAY("C", "In the comparison: side by side, wipe, or changes", false, KeyCode.C),
    ZOOM_IN("+", "Look closer", false, KeyCode.PLUS, KeyCode.ADD, KeyCode.EQUALS),
    ZOOM_OUT("−", "Look from farther away", false, KeyCode.MINUS, KeyCode.SUBTRACT),
    FIT("0", "Fit the page to the window", false, KeyCode.DIGIT0, KeyCode.NUMPAD0),
    TRUE_SIZE("1", "Show the page as large as it is", false, KeyCode.DIGIT1, KeyCode.NUMPAD1),
    TURN_BACK(",", "Turn the view a quarter anticlockwise; the artwork stays as it is", false, KeyCode.COMMA),
    TURN(".", "Turn the view a quarter clockwise; the artwork stays as it is", false, KeyCode.PERIOD),
    RULERS("R", "Show rulers that measure from the corner of the trim", false, KeyCode.R),
    PIN(
            "P",
            "Pin the place under the pointer, else the middle of the view, to watch it while substrates change",
            false,
            KeyCode.P),
    UNPIN_ALL("Shift+P", "Take all pins away", KeyCode.P),
    NEXT_PAGE("Page Down", "Turn to the next page", false, KeyCode.PAGE_DOWN),
    PREVIOUS_PAGE("Page Up", "Turn to the page before", false, KeyCode.PAGE_UP),
    SIZE("Z", "Say how wide a picture or an SVG is; the answer can be taken back", false, KeyCode.Z),
    UNIT("I", "Measure in millimetres or inches", false, KeyCode.I),
    THEME("D", "Light or dark window; the grey around the proof stays the same", false, KeyCode.D),
    NEXT_PART("F6", "Give the keys to the next part of the window; Tab goes on within it", false, KeyCode.F6),
    PREVIOUS_PART("Shift+F6", "Give the keys to the part of the window before", KeyCode.F6),
    CLOSE("Ctrl+Q", "Close the window; what is not kept is asked about first", true, KeyCode.Q),
    KEYS("F1", "Show all keys", false, KeyCode.F1),
    ESCAPE("Esc", "Stop the work, or close what is open", false, KeyCode.ESCAPE);

    private final String keys;
    private final String sentence;
    private final List<KeyCodeCombination> combinations;

    Command(String keys, String sentence, boolean shortcut, KeyCode... codes) {
        this.keys = keys;
        this.sentence = sentence;
        this.combinations = Arrays.stream(codes)
                .map(code -> new KeyCodeCombination(code, modifiers(shortcut, code)))
                .toList();
    }

    /** With one modifier. */
    Command(String keys, String sentence, KeyCombination.Modifier modifier, KeyCode code) {
        this.keys = keys;
        this.sentence = sentence;
        this.combinations = List.of(new KeyCodeCombination(code, modifier));
    }

    /** With Shift. */
    Command(String keys, String sentence, KeyCode shifted) {
        this(keys, sentence, KeyCombination.SHIFT_DOWN, shifted);
    }

    /** On many keyboards + is typed with Shift, so Shift does not matter there. */
    private static KeyCombination.Modifier[] modifiers(boolean shortcut, KeyCode code) {
        if (shortcut) {
            return new KeyCombination.Modifier[] {KeyCombination.SHORTCUT_DOWN};
        }
        boolean anyShift = code == KeyCode.PLUS || code == KeyCode.EQUALS;
        return anyShift ? new KeyCombination.Modifier[] {KeyCombination.SHIFT_ANY} : new KeyCombination.Modifier[0];
    }

    /** @return the command of a pressed key */
    public static Optional<Command> of(KeyEvent event) {
        return Arrays.stream(values())
                .filter(c -> c.combinations.stream().anyMatch(k -> k.match(event)))
                .findFirst();
    }

    /** @return whether it is done while a field is typed into, which has no use for its key */
    public boolean leavesFields() {
        return this == NEXT_PART || this == PREVIOUS_PART || this == CLOSE;
    }

    /** @return the key as the user knows it */
    public String keys() {
        return keys;
    }

    /** @return what it does */
    public String sentence() {
        return sentence;
    }

    /** @return text for a tooltip */
    public String tip() {
        return sentence + "  [" + keys + "]";
    }
}
