package inkground.viewer.state;

import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.ink.InkKind;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.state.ProofEngine.Figures;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.task.Activity;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
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
public final class ViewerState {
    /** Zoom of one notch of a wheel (40 units of scrolling): about 1.13. */
    private static final double ZOOM_PER_UNIT = 0.003;
    /** Cloth shown around a page on a garment, as a share of the page's longer edge. */
    private static final double CLOTH_MARGIN = 0.06;

    /** The opened file; null before. */
    public final ObjectProperty<OpenFile> file = new SimpleObjectProperty<>(this, "file");
    /** The page shown; null before. */
    public final ObjectProperty<OpenPage> page = new SimpleObjectProperty<>(this, "page");
    /** Measures of the page; null until they are known. */
    public final ObjectProperty<Figures> figures = new SimpleObjectProperty<>(this, "figures");

    /** Whether the page has been seen whole and sharp since it was opened. */
    public final BooleanProperty pictured = new SimpleBooleanProperty(this, "pictured");

    /** The rack. */
    public final ObservableList<SubstrateCard> substrates = FXCollections.observableArrayList();
    /** What the page lies on; null before the rack is loaded. */
    public final ObjectProperty<SubstrateCard> substrate = new SimpleObjectProperty<>(this, "substrate");

    /** What has followed {@link #substrate} so far. */
    public final Following following = new Following(substrate);

    /** How they hang in the rack. */
    public final Rack rack = new Rack(substrates);
    /** Which of them lie side by side. */
    public final LineUp lineUp = new LineUp(substrates, rack);
    /** What the sheet for the user's own works on. */
    public final OwnColours own = new OwnColours();

    /** Plane indices of the inks that are hidden. */
    public final ObservableSet<Integer> hidden = FXCollections.observableSet();
    /** Plane index of the one ink to show, -1 for none. */
    public final IntegerProperty solo = new SimpleIntegerProperty(this, "solo", -1);
    /** Plane index of the ink the keys act on, -1 for none. */
    public final IntegerProperty chosenInk = new SimpleIntegerProperty(this, "chosenInk", -1);
    /** Ids of the layers that are on. */
    public final ObservableSet<Integer> layersOn = FXCollections.observableSet();

    /** Finds substrates and inks. */
    public final Finder finder = new Finder(this);
    /** How far the cross-section is laid open. */
    public final StackChoices stack = new StackChoices();

    /** The colours of the artwork. */
    public final ColourChoices colours = new ColourChoices();

    /** How large the artwork is, where its file does not say. */
    public final SizeQuestion size = new SizeQuestion();

    /** What is drawn over the proof or in place of its colours. */
    public final Overlays overlays = new Overlays();
    /** Goes through the places that the map found. */
    public final PlaceWalk walk = new PlaceWalk(this);
    /** How the artwork is laid out. */
    public final ObjectProperty<BenchView> view = new SimpleObjectProperty<>(this, "view", BenchView.FLAT);
    /** Whether overprint is honoured. */
    public final BooleanProperty overprint = new SimpleBooleanProperty(this, "overprint", true);
    /** The revision that the file is compared with. */
    public final Comparison comparison = new Comparison();
    /** What the user has decided about the job. */
    public final History history = new History();
    /** How the inks are laid. */
    public final Printing printing = new Printing(this);
    /** The arrangement as it was kept last. */
    public final ObjectProperty<Arrangement> kept = new SimpleObjectProperty<>(this, "kept", Arrangement.AS_FILED);
    /** Whether the user has decided something that is not kept yet. */
    public final BooleanBinding unsaved =
            Bindings.createBooleanBinding(() -> !history.get().equals(kept.get()), history.now(), kept);

    /** The artwork on a garment. */
    public final Worn worn = new Worn(this);

    /** What part of the page is seen; on the garment, what part of it. */
    public final ObjectProperty<Camera> camera = new SimpleObjectProperty<>(this, "camera", Camera.START);
    /** How large the pixels of the screen are. */
    public final TrueSize trueSize = new TrueSize();
    /** Whether the rulers are shown. */
    public final BooleanProperty rulers = new SimpleBooleanProperty(this, "rulers", true);
    /** Places of the page that are watched. */
    public final Pins pins = new Pins();
    /** Whether the page is kept fitted to the surface. */
    public final BooleanProperty fit = new SimpleBooleanProperty(this, "fit", true);
    /** What lies under the pointer; null when it is elsewhere. */
    public final ObjectProperty<Probe> probe = new SimpleObjectProperty<>(this, "probe");

    /** Theme of the window. */
    public final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(this, "theme", Theme.LIGHT);
    /** Unit of lengths. */
    public final ObjectProperty<LengthUnit> unit = new SimpleObjectProperty<>(this, "unit", LengthUnit.MM);
    /** Recently opened files, latest first. */
    public final ObservableList<Path> recent = FXCollections.observableArrayList();

    /** What could not be done, for the user; null when all is well. */
    public final StringProperty trouble = new SimpleStringProperty(this, "trouble");
    /** What the user has to decide now; null for nothing. */
    public final ObjectProperty<Question> question = new SimpleObjectProperty<>(this, "question");
    /** What was done, for the status line; null for nothing to say. */
    public final StringProperty news = new SimpleStringProperty(this, "news");
    /** Long work that is under way. */
    public final ObservableList<Activity> activities = FXCollections.observableArrayList();
    /** Whether the sheet for exporting a proof is open. */
    public final BooleanProperty exportSheet = new SimpleBooleanProperty(this, "exportSheet");
    /** Whether the sheet of keys is open. */
    public final BooleanProperty keySheet = new SimpleBooleanProperty(this, "keySheet");

    private Camera otherCamera = Camera.START;
    private boolean otherFit = true;

    /** Nothing open, nothing chosen. */
    public ViewerState() {
        substrate.addListener((Observable o) -> suitProcess());
        overlays.processes.addListener((Observable o) -> suitProcess());
        // A plate and a map both stand in for the colours: the one asked for last is shown.
        stack.plate.addListener((o, before, now) -> {
            if (now) {
                overlays.map.set(null);
            }
        });
        overlays.map.addListener((o, before, now) -> {
            if (now != null) {
                stack.plate.set(false);
            }
        });
        view.addListener((o, before, now) -> {
            if ((before == BenchView.GARMENT) != (now == BenchView.GARMENT)) {
                swapCameras();
            }
        });
        // Another garment may be larger; the artwork on it is moved under a camera that stands still.
        for (Observable value : List.of(substrate, history.now(), worn.cuts)) {
            value.addListener(o -> {
                if (view.get() == BenchView.GARMENT && fit.get()) {
                    refit();
                }
            });
        }
    }

    /** Page and garment are each looked at by a camera of their own. */
    private void swapCameras() {
        Camera seen = camera.get();
        boolean fitted = fit.get();
        fit.set(otherFit);
        camera.set(otherCamera.resized(seen.widthPx(), seen.heightPx(), seen.outputScale()));
        otherCamera = seen;
        otherFit = fitted;
        probe.set(null);
        if (fit.get()) {
            refit();
        }
    }

    private void suitProcess() {
        if (substrate.get() != null) {
            overlays.suit(substrate.get().garment());
        }
    }

    /**
     * Shows a page. Which inks are hidden is forgotten, since the inks may be others; technical ones, which do not print, are
     * hidden at first.
     */
    public void show(OpenFile newFile, OpenPage newPage) {
        figures.set(null);
        stack.unused = null;
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
        worn.inkedPt.set(null);
        otherFit = true;
        file.set(newFile);
        page.set(newPage);
        fitPage();
    }

    /**
     * Shows another version of the same page: after the file changed, or its colours were assigned otherwise. The view stays;
     * inks stay hidden, alone or chosen by their names, and layers on or off by their ids.
     */
    public void replace(OpenFile newFile, OpenPage newPage) {
        Set<String> hiddenNames = hidden.stream().map(this::inkName).collect(Collectors.toSet());
        String alone = solo.get() < 0 ? null : inkName(solo.get());
        String chosen = chosenInk.get() < 0 ? null : inkName(chosenInk.get());
        Camera seen = camera.get();
        boolean fitted = fit.get();
        Set<Integer> on = Set.copyOf(layersOn);
        Set<String> unused = stack.unused;
        boolean sameLayers = newPage.layers().equals(page.get().layers());
        show(newFile, newPage);
        stack.unused = unused;
        for (int plane = 0; plane < newPage.inks().size(); plane++) {
            String name = inkName(plane);
            if (hiddenNames.contains(name)) {
                hidden.add(plane);
            }
            if (name.equals(alone)) {
                solo.set(plane);
            }
            if (name.equals(chosen)) {
                chosenInk.set(plane);
            }
        }
        if (sameLayers) {
            layersOn.retainAll(on);
            layersOn.addAll(on);
        }
        if (!fitted) {
            fit.set(false);
            camera.set(seen);
        }
    }

    /** Shows the same page read in another size; the same part of the artwork stays in view, and pins stay on it. */
    public void resized(OpenFile newFile, OpenPage newPage) {
        double factor = newPage.info().box(PageBox.MEDIA).width()
                / page.get().info().box(PageBox.MEDIA).width();
        pins.scale(newPage.info().number(), factor);
        otherCamera = otherCamera.scaled(view.get() == BenchView.GARMENT ? factor : 1);
        camera.set(view.get() == BenchView.GARMENT ? camera.get() : camera.get().scaled(factor));
        replace(newFile, newPage);
    }

    /** @return what is to be kept of the work on this file */
    public Session session() {
        SubstrateCard on = substrate.get();
        return new Session(
                history.get(),
                on == null
                        ? Optional.empty()
                        : Optional.of(new Session.View(
                                on.id(),
                                page.get().info().number(),
                                hidden.stream().map(this::inkName).collect(Collectors.toSet()))),
                colours.groundSettled(file.get().path()),
                size.settled(file.get().path()));
    }

    /** Takes up what was looked at when a session was kept: the substrate, where the rack has it, and the hidden inks. */
    public void takeUp(Session.View view) {
        substrates.stream()
                .filter(card -> card.id().equals(view.substrate()))
                .findFirst()
                .ifPresent(substrate::set);
        hidden.clear();
        for (int plane = 0; plane < page.get().inks().size(); plane++) {
            if (view.hiddenInks().contains(inkName(plane))) {
                hidden.add(plane);
            }
        }
    }

    /** Tells of every change of what decides the colours and what is rasterised: page, {@link #look}, overprint and layers. */
    public void onLook(Runnable changed) {
        List<Observable> values = new ArrayList<>(List.of(
                page,
                substrate,
                solo,
                hidden,
                layersOn,
                stack.plate,
                chosenInk,
                overlays.map,
                overlays.phase,
                overlays.before,
                overprint,
                history.now()));
        values.addAll(overlays.limits());
        values.forEach(value -> value.addListener((Observable o) -> changed.run()));
    }

    /** @return what decides the colours now; null before there is a page and a substrate */
    public Look look() {
        return page.get() == null || substrate.get() == null ? null : lookOn(substrate.get());
    }

    /** @return what decides the colours now, but for the substrate; there must be a page */
    public Look lookOn(SubstrateCard card) {
        return new Look(
                card.id(),
                shownInks(),
                printing.order(),
                printing.opacities(),
                card.garment() ? history.get().underbase() : Optional.empty(),
                overlays.choice(),
                stack.plate.get() ? chosenInk.get() : -1);
    }

    /** @return plane indices of the inks that are shown */
    public Set<Integer> shownInks() {
        Set<Integer> shown = new HashSet<>();
        for (int plane = 0; plane < page.get().inks().size(); plane++) {
            if (solo.get() < 0 ? !hidden.contains(plane) : solo.get() == plane) {
                shown.add(plane);
            }
        }
        return shown;
    }

    /** Takes over the measures of the page. */
    public void measured(Figures measures) {
        stack.unused = IntStream.range(0, measures.inks().size())
                .filter(plane -> measures.inks().get(plane).coveredCm2() == 0)
                .mapToObj(this::inkName)
                .collect(Collectors.toSet());
        figures.set(measures);
    }

    /** @return name of an ink of the page */
    public String inkName(int plane) {
        return page.get().inks().get(plane).ink().name();
    }

    /** Shows the chosen ink as the printer sees it, or the colours again. */
    public void togglePlate() {
        stack.plate.set(!stack.plate.get());
    }

    /** Shows one ink alone, or all again when it already stands alone. */
    public void toggleSolo(int plane) {
        solo.set(solo.get() == plane ? -1 : plane);
    }

    /** Hides an ink or shows it. */
    public void toggleHidden(int plane) {
        if (!hidden.remove(plane)) {
            hidden.add(plane);
        }
    }

    /** Moves along what hangs in the rack; stays at its ends. */
    public void stepSubstrate(int by) {
        List<SubstrateCard> hung = rack.cards();
        step(hung, hung.indexOf(substrate.get()), by, substrate);
    }

    /** Moves along the line-up; stays at its ends. From a substrate that does not lie there, to its first. */
    public void stepLineUp(int by) {
        int at = lineUp.cards().indexOf(substrate.get());
        step(lineUp.cards(), at, at < 0 ? 1 : by, substrate);
    }

    private static <T> void step(List<T> all, int at, int by, ObjectProperty<T> chosen) {
        if (!all.isEmpty()) {
            chosen.set(all.get(Math.max(0, Math.min(all.size() - 1, at + by))));
        }
    }

    /** Moves the choice of ink towards the top ({@code by} above 0) or the substrate. */
    public void stepInk(int by) {
        if (page.get() == null || printing.stacked().isEmpty()) {
            return;
        }
        List<Integer> order = printing.stacked();
        int at = order.indexOf(chosenInk.get());
        int next = at < 0 ? (by > 0 ? 0 : order.size() - 1) : Math.max(0, Math.min(order.size() - 1, at + by));
        chosenInk.set(order.get(next));
    }

    /**
     * @return the region that counts as the whole picture, in points: the garment where it is worn; else the media box with cloth
     *     around it, the same on paper, so that the artwork stays where it is while one substrate follows another
     */
    public Box scene() {
        if (view.get() == BenchView.GARMENT && worn.scene().isPresent()) {
            return worn.scene().get();
        }
        Box media = page.get().info().box(PageBox.MEDIA);
        return media.grow(Math.max(media.width(), media.height()) * CLOTH_MARGIN);
    }

    /** @return the region that the substrate covers, in points: cloth reaches beyond the page, paper ends with it */
    public Box ground() {
        return groundOf(substrate.get());
    }

    /** @return the region that a substrate would cover, in points */
    public Box groundOf(SubstrateCard card) {
        return card.garment() ? scene() : page.get().info().box(PageBox.MEDIA);
    }

    /** Fits the page to the surface and keeps it so until the user zooms or pans. */
    public void fitPage() {
        fit.set(true);
        refit();
    }

    /** Tells the size of the surface. */
    public void resize(double widthPx, double heightPx, double outputScale) {
        Camera resized = camera.get().resized(widthPx, heightPx, outputScale);
        camera.set(resized);
        if (fit.get()) {
            refit();
        }
    }

    /** Zooms by a factor about a point of the surface. */
    public void zoom(double factor, double viewX, double viewY) {
        fit.set(false);
        camera.set(camera.get().zoomedAbout(viewX, viewY, camera.get().zoom() * factor));
    }

    /** Brings a place of the page, in points, into the middle, large enough to be judged. */
    public void lookAt(Box place) {
        fit.set(false);
        double margin = Math.max(12, Math.max(place.width(), place.height()) / 2);
        camera.set(camera.get().fitted(place.grow(margin), 16));
    }

    /** Zooms as a wheel is turned, about a point of the surface; units of scrolling, away from the user above 0. */
    public void scroll(double units, double viewX, double viewY) {
        if (units != 0) {
            zoom(Math.exp(units * ZOOM_PER_UNIT), viewX, viewY);
        }
    }

    /** Zooms by a factor about the middle. */
    public void zoom(double factor) {
        zoom(factor, camera.get().widthPx() / 2, camera.get().heightPx() / 2);
    }

    /** Zooms so that the page is seen as large as it is, as far as the screen's pixels are known. */
    public void showTrueSize() {
        zoom(trueSize.zoom() / camera.get().zoom());
        if (!trueSize.measured()) {
            news.set("This screen is not measured: click the zoom figure and lay a card on the screen");
        }
    }

    /** Turns the view by quarters, clockwise; a fitted page stays fitted. A garment is looked at as it is worn. */
    public void turn(int byQuarters) {
        if (view.get() == BenchView.GARMENT) {
            news.set("A garment is looked at upright: turn the flat page");
            return;
        }
        camera.set(camera.get().turned(byQuarters));
        if (fit.get()) {
            refit();
        }
    }

    /** Pins the place under the pointer. */
    public void pinProbe() {
        if (page.get() == null || probe.get() == null || probe.get().tints().isEmpty()) {
            news.set("Point at the page first: the place under the pointer is pinned");
        } else if (!pins.pin(
                probe.get(), page.get().info().number(), camera.get().pxPerPt())) {
            news.set("There are " + Pins.MOST + " pins, the most there can be: take some away first");
        }
    }

    /** Moves the picture by logical pixels. */
    public void pan(double dxPx, double dyPx) {
        if (page.get() != null) {
            fit.set(false);
            camera.set(camera.get().panned(dxPx, dyPx, scene()));
        }
    }

    private void refit() {
        if (page.get() != null) {
            Camera seen = camera.get();
            camera.set(camera.get().fitted(scene(), Math.min(16, 0.03 * Math.min(seen.widthPx(), seen.heightPx()))));
        }
    }
}
