package inkground.viewer;

import java.nio.file.Path;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;

/** The way into the viewer. Not itself a JavaFX application, so that the toolkit may lie on the class path. */
public final class ViewerApp {
    // Held on to, since the log manager holds its loggers weakly.
    private static final Logger TOOLKIT = Logger.getLogger("javafx");
    private static final Logger PREFERENCES = Logger.getLogger("java.util.prefs");

    private ViewerApp() {}

    /**
     * Opens the window and returns when it is closed; once per process.
     *
     * @param file to open; empty for the start screen. There must be a screen.
     */
    public static void launch(Optional<Path> file) {
        // The toolkit warns of every program that runs from the class path; this one does so on purpose.
        TOOLKIT.setLevel(Level.SEVERE);
        // A home that cannot be written costs only the list of recent files, and is no news to the user.
        PREFERENCES.setLevel(Level.SEVERE);
        String[] arguments = file.map(f -> new String[] {f.toString()}).orElse(new String[0]);
        Application.launch(WindowApplication.class, arguments);
    }
}
