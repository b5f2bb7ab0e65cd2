package inkground.viewer.state;

import inkground.app.Session.Extent;
import inkground.artwork.Sizing;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;

/** How large a picture or an SVG is, which the user is asked where its file does not say. */
public final class SizeQuestion {
    /** The page that is asked about; null while nothing is asked. */
    public final ObjectProperty<Sizing> asked = new SimpleObjectProperty<>(this, "asked");

    private final Map<Path, Extent> settled = new HashMap<>();

    /** Nothing asked. */
    SizeQuestion() {}

    /** Remembers that the user was asked about a file of this extent. */
    public void settle(Path file, Extent extent) {
        settled.put(file, extent);
    }

    /** Forgets that the user was asked about a file, as what was answered was not kept. */
    public void forget(Path file) {
        settled.remove(file);
    }

    /** @return for what extent the user was asked about this file; empty for never */
    public Optional<Extent> settled(Path file) {
        return Optional.ofNullable(settled.get(file));
    }

    /** @return whether the page is to be asked about by itself */
    public boolean open(Path file, Sizing page) {
        return !page.stated() && !settled(file).equals(Optional.of(Extent.of(page)));
    }
}
