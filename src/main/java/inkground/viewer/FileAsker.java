package inkground.viewer;

import java.nio.file.Path;
import java.util.Optional;
import javafx.stage.Window;

/** Asks the user which file to open. */
@FunctionalInterface
interface FileAsker {
    /**
     * Asks, and waits for the answer.
     *
     * @param title of the dialog
     * @param over the window that waits
     * @param near folder to begin in, if one is known
     * @return the file; empty where the user chose none
     */
    Optional<Path> ask(String title, Window over, Optional<Path> near);
}
