package inkground.viewer.desk;

import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.Theme;
import inkground.viewer.state.TrueSize;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.prefs.BackingStoreException;
import java.util.prefs.Preferences;

/**
 * The files opened last, the theme, the unit, the window's place, the favourite substrates and the measure of each screen, kept in
 * the user's preferences.
 */
public final class Recents {
    /** Longest list. */
    public static final int MOST = 6;

    private static final int FAVOURITES = 200;

    private static final Logger LOG = Logger.getLogger(Recents.class.getName());
    private final Preferences node;

    /**
     * @param node where to keep them
     */
    public Recents(Preferences node) {
        this.node = node;
    }

    /** @return those that still exist, latest first */
    public List<Path> files() {
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            String text = node.get("recent." + i, "");
            try {
                if (!text.isEmpty() && Files.isRegularFile(Path.of(text))) {
                    files.add(Path.of(text));
                }
            } catch (InvalidPathException e) {
                LOG.log(Level.FINE, "forgotten: " + text, e);
            }
        }
        return files;
    }

    /** Puts a file first. @return the new list */
    public List<Path> add(Path file) {
        List<Path> files = new ArrayList<>(files());
        Path whole = file.toAbsolutePath().normalize();
        files.remove(whole);
        files.add(0, whole);
        List<Path> kept = files.subList(0, Math.min(MOST, files.size()));
        for (int i = 0; i < MOST; i++) {
            put("recent." + i, i < kept.size() ? kept.get(i).toString() : "");
        }
        save();
        return List.copyOf(kept);
    }

    /** @return the theme chosen last */
    public Theme theme() {
        return Theme.DARK.name().equals(node.get("theme", "")) ? Theme.DARK : Theme.LIGHT;
    }

    /** @return the unit chosen last */
    public LengthUnit unit() {
        return LengthUnit.INCH.name().equals(node.get("unit", "")) ? LengthUnit.INCH : LengthUnit.MM;
    }

    /** Keeps the theme and the unit. */
    public void keep(Theme theme, LengthUnit unit) {
        put("theme", theme.name());
        put("unit", unit.name());
        save();
    }

    /** @return where the window stood last; empty if it was never shown */
    public Optional<WindowPlace> window() {
        return WindowPlace.of(node.get("window", ""));
    }

    /** Keeps where the window stands. */
    public void keep(WindowPlace place) {
        put("window", place.text());
        save();
    }

    /** @return logical pixels per millimetre measured on a screen; 0 if it was not measured */
    public double pxPerMm(String screen) {
        double kept = node.getDouble("pxPerMm." + screen, 0);
        return kept > 0 ? TrueSize.limited(kept) : 0;
    }

    /** Keeps a screen's logical pixels per millimetre. */
    public void keepPxPerMm(String screen, double pxPerMm) {
        node.putDouble("pxPerMm." + screen, pxPerMm);
        save();
    }

    /** @return ids of the favourite substrates, in the order they became so */
    public List<String> favourites() {
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < FAVOURITES; i++) {
            String id = node.get("favourite." + i, "");
            if (!id.isEmpty()) {
                ids.add(id);
            }
        }
        return ids;
    }

    /** Keeps the favourite substrates, the first {@value #FAVOURITES} of them. */
    public void keepFavourites(Collection<String> ids) {
        List<String> kept = ids.stream().limit(FAVOURITES).toList();
        for (int i = 0; i < FAVOURITES; i++) {
            if (i < kept.size()) {
                put("favourite." + i, kept.get(i));
            } else {
                node.remove("favourite." + i);
            }
        }
        save();
    }

    private void put(String key, String value) {
        if (value.length() <= Preferences.MAX_VALUE_LENGTH) {
            node.put(key, value);
        }
    }

    private void save() {
        try {
            node.flush();
        } catch (BackingStoreException e) {
            // A home that cannot be written costs the list of recent files, nothing else.
            LOG.log(Level.INFO, "preferences not kept", e);
        }
    }
}
