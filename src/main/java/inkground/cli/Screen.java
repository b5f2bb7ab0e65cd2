package inkground.cli;

import java.awt.GraphicsEnvironment;

/** Whether there is a screen to open a window on. */
final class Screen {
    private Screen() {}

    /** @return true with a display, or where the toolkit has been told to paint without one */
    static boolean present() {
        return System.getProperty("glass.platform") != null || !GraphicsEnvironment.isHeadless();
    }
}
