package inkground.cli;

import inkground.viewer.ViewerApp;
import java.awt.GraphicsEnvironment;
import java.nio.file.Path;
import java.util.Optional;

/** The screen, where there is one. This class is the only one of the command line that touches the viewer. */
final class Screen {
    private Screen() {}

    /**
     * Opens the viewer and returns when it is closed.
     *
     * @param file to open, empty for the start screen
     * @return false if there is no screen that a window can be opened on
     */
    static boolean show(Optional<Path> file, Console console) {
        if (GraphicsEnvironment.isHeadless() && System.getProperty("glass.platform") == null) {
            return false;
        }
        console.endAtOnceWhenInterrupted();
        try {
            ViewerApp.launch(file);
            return true;
        } catch (UnsupportedOperationException e) {
            // What the toolkit throws where a display is named but cannot be reached.
            return false;
        }
    }
}
