package inkground.viewer.state;

import java.util.Objects;

/** How the window around the proof is coloured. The surround of the proof itself is the same grey in all themes. */
public enum Theme {
    /** Dark text on light panels. */
    LIGHT("light.css"),
    /** Light text on dark panels. */
    DARK("dark.css");

    private final String file;

    Theme(String file) {
        this.file = file;
    }

    /** @return address of the style sheet that gives the colour tokens */
    public String tokens() {
        return address(file);
    }

    /** @return address of the style sheet that uses them */
    public static String rules() {
        return address("viewer.css");
    }

    private static String address(String file) {
        return Objects.requireNonNull(Theme.class.getResource("/inkground/viewer/" + file), file)
                .toExternalForm();
    }
}
