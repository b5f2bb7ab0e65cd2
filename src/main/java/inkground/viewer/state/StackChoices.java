package inkground.viewer.state;

import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;

/** How far the cross-section is laid open. */
public final class StackChoices {
    /** Whether the process inks that the page does not use are listed one by one. */
    public final BooleanProperty unusedShown = new SimpleBooleanProperty(this, "unusedShown", false);
    /** Whether the settings of the chosen ink are open. */
    public final BooleanProperty inkDrawer = new SimpleBooleanProperty(this, "inkDrawer", false);
    /** Whether the settings of the underbase are open. */
    public final BooleanProperty underbaseDrawer = new SimpleBooleanProperty(this, "underbaseDrawer", false);

    /** Whether the plate of the chosen ink is shown, black on white, in place of the colours. */
    public final BooleanProperty plate = new SimpleBooleanProperty(this, "plate", false);

    /** Names of the process inks without any area when the page was last measured; null before the first time. */
    Set<String> unused;

    /** All closed. */
    StackChoices() {}
}
