package inkground.viewer;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.ink.InkKind;
import inkground.viewer.ProofEngine.Figures;
import inkground.viewer.ProofEngine.OpenFile;
import inkground.viewer.ProofEngine.OpenPage;
import inkground.viewer.ProofEngine.SubstrateCard;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.ObservableSet;

/**
 * All that the window shows, as observable values; no controls, no work. Views bind to it and change it, {@link ProofDesk}
 * fills it. Used on the window's thread only.
 */
final class ViewerState {
    /** Distance that type and logos keep from the trim, in points: 5 mm, common practice, no source. */
    static final double SAFE_PT = 5 / Box.MM_PER_PT;
    /** Cloth shown around a page on a garment, as a share of the page's longer edge. */
    private static final double CLOTH_MARGIN = 0.06;

    /** The opened file; null before. */
    final ObjectProperty<OpenFile> file = new SimpleObjectProperty<>(this, "file");
    /** The page shown; null before. */
    final ObjectProperty<OpenPage> page = new SimpleObjectProperty<>(this, "page");
    /** Measures of the page; null until they are known. */
    final ObjectProperty<Figures> figures = new SimpleObjectProperty<>(this, "figures");

    /** Whether the page has been seen whole and sharp since it was opened. */
    final BooleanProperty pictured = new SimpleBooleanProperty(this, "pictured");

    /** The rack. */
    final ObservableList<SubstrateCard> substrates = FXCollections.observableArrayList();
    /** What the page lies on; null before the rack is loaded. */
    final ObjectProperty<SubstrateCard> substrate = new SimpleObjectProperty<>(this, "substrate");

    /** Plane indices of the inks that are hidden. */
    final ObservableSet<Integer> hidden = FXCollections.observableSet();
    /** Plane index of the one ink to show, -1 for none. */
    final IntegerProperty solo = new SimpleIntegerProperty(this, "solo", -1);
    /** Plane index of the ink the keys act on, -1 for none. */
    final IntegerProperty chosenInk = new SimpleIntegerProperty(this, "chosenInk", -1);
    /** Ids of the layers that are on. */
    final ObservableSet<Integer> layersOn = FXCollections.observableSet();

    /** Whether the trim line is shown. */
    final BooleanProperty trim = new SimpleBooleanProperty(this, "trim", true);
    /** Whether the bleed line is shown. */
    final BooleanProperty bleed = new SimpleBooleanProperty(this, "bleed", false);
    /** Whether the safe area is shown. */
    final BooleanProperty safe = new SimpleBooleanProperty(this, "safe", false);
    /** Whether the bare map stands in place of the colours. */
    final BooleanProperty bareMap = new SimpleBooleanProperty(this, "bareMap", false);
    /** Whether overprint is honoured. */
    final BooleanProperty overprint = new SimpleBooleanProperty(this, "overprint", true);
    /** Whether a white underbase lies under the inks; only on garments. */
    final BooleanProperty underbase = new SimpleBooleanProperty(this, "underbase", false);

    /** What part of the page is seen. */
    final ObjectProperty<Camera> camera = new SimpleObjectProperty<>(this, "camera", Camera.START);
    /** Whether the page is kept fitted to the surface. */
    final BooleanProperty fit = new SimpleBooleanProperty(this, "fit", true);
    /** What lies under the pointer; null when it is elsewhere. */
    final ObjectProperty<Probe> probe = new SimpleObjectProperty<>(this, "probe");

    /** Theme of the window. */
    final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(this, "theme", Theme.LIGHT);
    /** Unit of lengths. */
    final ObjectProperty<LengthUnit> unit = new SimpleObjectProperty<>(this, "unit", LengthUnit.MM);
    /** Recently opened files, latest first. */
    final ObservableList<Path> recent = FXCollections.observableArrayList();

    /** What could not be done, for the user; null when all is well. */
    final StringProperty trouble = new SimpleStringProperty(this, "trouble");
    /** What was done, for the status line; null for nothing to say. */
    final StringProperty news = new SimpleStringProperty(this, "news");
    /** Long work that is under way. */
    final ObservableList<Activity> activities = FXCollections.observableArrayList();
    /** Whether the sheet for exporting a proof is open. */
    final BooleanProperty exportSheet = new SimpleBooleanProperty(this, "exportSheet");
    /** Whether the sheet of keys is open. */
    final BooleanProperty keySheet = new SimpleBooleanProperty(this, "keySheet");

    /**
     * Shows a page. Which inks are hidden is forgotten, since the inks may be others; technical ones, which do not print, are
     * hidden at first.
     */
    void show(OpenFile newFile, OpenPage newPage) {
        figures.set(null);
        pictured.set(false);
        probe.set(null);
        solo.set(-1);
        chosenInk.set(-1);
        hidden.clear();
        layersOn.clear();
        newPage.layers().stream().filter(layer -> layer.on()).forEach(layer -> layersOn.add(layer.id()));
        for (int plane = 0; plane < newPage.inks().size(); plane++) {
            if (newPage.inks().get(plane).ink().kind() == InkKind.TECHNICAL) {
                hidden.add(plane);
            }
        }
        file.set(newFile);
        page.set(newPage);
        fitPage();
    }

    /** @return what decides the colours now; null before there is a page and a substrate */
    Look look() {
        if (page.get() == null || substrate.get() == null) {
            return null;
        }
        return new Look(substrate.get().id(), shownInks(), underbaseLies(), bareMap.get());
    }

    /** @return plane indices of the inks that are shown */
    Set<Integer> shownInks() {
        Set<Integer> shown = new HashSet<>();
        for (int plane = 0; plane < page.get().inks().size(); plane++) {
            if (solo.get() < 0 ? !hidden.contains(plane) : solo.get() == plane) {
                shown.add(plane);
            }
        }
        return shown;
    }

    /** @return whether the underbase is on and there is cloth to lay it on */
    boolean underbaseLies() {
        return underbase.get() && substrate.get() != null && substrate.get().garment();
    }

    /** Shows one ink alone, or all again when it already stands alone. */
    void toggleSolo(int plane) {
        solo.set(solo.get() == plane ? -1 : plane);
    }

    /** Hides an ink or shows it. */
    void toggleHidden(int plane) {
        if (!hidden.remove(plane)) {
            hidden.add(plane);
        }
    }

    /** Moves along the rack; stays at its ends. */
    void stepSubstrate(int by) {
        step(substrates, substrates.indexOf(substrate.get()), by, substrate);
    }

    private static <T> void step(List<T> all, int at, int by, ObjectProperty<T> chosen) {
        if (!all.isEmpty()) {
            chosen.set(all.get(Math.max(0, Math.min(all.size() - 1, at + by))));
        }
    }

    /** Moves the choice of ink towards the top ({@code by} above 0) or the substrate. */
    void stepInk(int by) {
        if (page.get() == null || page.get().printOrder().isEmpty()) {
            return;
        }
        List<Integer> order = page.get().printOrder();
        int at = order.indexOf(chosenInk.get());
        int next = at < 0 ? (by > 0 ? 0 : order.size() - 1) : Math.max(0, Math.min(order.size() - 1, at + by));
        chosenInk.set(order.get(next));
    }

    /**
     * @return the region that counts as the whole picture, in points: the media box with cloth around it; the same on paper,
     *     so that the artwork stays where it is while one substrate follows another
     */
    Box scene() {
        Box media = page.get().info().box(PageBox.MEDIA);
        return media.grow(Math.max(media.width(), media.height()) * CLOTH_MARGIN);
    }

    /** @return the region that the substrate covers, in points: cloth reaches beyond the page, paper ends with it */
    Box ground() {
        return substrate.get().garment() ? scene() : page.get().info().box(PageBox.MEDIA);
    }

    /** Fits the page to the surface and keeps it so until the user zooms or pans. */
    void fitPage() {
        fit.set(true);
        refit();
    }

    /** Tells the size of the surface. */
    void resize(double widthPx, double heightPx, double outputScale) {
        Camera resized = camera.get().resized(widthPx, heightPx, outputScale);
        camera.set(resized);
        if (fit.get()) {
            refit();
        }
    }

    /** Zooms by a factor about a point of the surface. */
    void zoom(double factor, double viewX, double viewY) {
        fit.set(false);
        camera.set(camera.get().zoomedAbout(viewX, viewY, camera.get().zoom() * factor));
    }

    /** Zooms by a factor about the middle. */
    void zoom(double factor) {
        zoom(factor, camera.get().widthPx() / 2, camera.get().heightPx() / 2);
    }

    /** Zooms to 96 logical pixels per inch. */
    void fullSize() {
        zoom(Camera.FULL_SIZE / camera.get().zoom());
    }

    /** Moves the picture by logical pixels. */
    void pan(double dxPx, double dyPx) {
        if (page.get() != null) {
            fit.set(false);
            camera.set(camera.get().panned(dxPx, dyPx, scene()));
        }
    }

    private void refit() {
        if (page.get() != null) {
            camera.set(camera.get().fitted(scene(), 16));
        }
    }
}
