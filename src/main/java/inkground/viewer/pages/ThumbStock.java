package inkground.viewer.pages;

import inkground.app.Arrangement;
import inkground.artwork.ColourAssignment;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.PageThumb;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.beans.Observable;
import javafx.scene.image.Image;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * Small pictures of the pages that are asked for, on the chosen substrate: one at a time, in the background, the page asked for
 * last first. Keeps the planes of a limited number of pages, so that another substrate only costs their colours.
 */
final class ThumbStock {
    /** Longer edge in pixels: twice the logical size, for fine screens. */
    static final int EDGE_PX = 192;
    /** Most pages kept: of eight inks about 0.4 MB each, 25 MB in all. */
    static final int MOST = 64;

    private static final Logger LOG = Logger.getLogger(ThumbStock.class.getName());

    /** All that decides the colours of a small proof. */
    private record Dress(String substrateId, Arrangement arrangement) {}

    private record Shown(PageThumb thumb, Dress dress, Image picture) {}

    private final ViewerState state;
    private final RenderScheduler scheduler;
    private final Runnable changed;
    private final Map<Integer, Shown> stock = new LinkedHashMap<>(16, 0.75f, true);
    private final Set<Integer> wanted = new LinkedHashSet<>();
    private final Set<Integer> failed = new LinkedHashSet<>();
    private OpenFile file;
    private ColourAssignment assignment;
    private Integer running;

    /**
     * @param changed told when there is another picture
     */
    ThumbStock(ViewerState state, RenderScheduler scheduler, Runnable changed) {
        this.state = state;
        this.scheduler = scheduler;
        this.changed = changed;
        for (Observable value : new Observable[] {state.file, state.history.now()}) {
            value.addListener(o -> restart());
        }
        for (Observable value : new Observable[] {state.substrate, state.pictured}) {
            value.addListener(o -> work());
        }
    }

    /** Another file, or other colours: nothing kept is of use. */
    private void restart() {
        if (file != state.file.get() || !state.history.get().assignment().equals(assignment)) {
            file = state.file.get();
            assignment = state.history.get().assignment();
            stock.clear();
            failed.clear();
            running = null;
            scheduler.cancel();
        }
        work();
    }

    /** Tells which pages are seen. */
    void want(Set<Integer> pages) {
        if (!pages.equals(wanted)) {
            wanted.clear();
            wanted.addAll(pages);
            work();
        }
    }

    /** @return the picture, which may still lie on the substrate before; empty while there is none */
    Optional<Image> picture(int page) {
        return Optional.ofNullable(stock.get(page)).map(Shown::picture);
    }

    /** @return pages kept */
    int size() {
        return stock.size();
    }

    // The page itself comes first: the strip waits for its first picture.
    private void work() {
        if (file == null || state.substrate.get() == null || running != null || !state.pictured.get()) {
            return;
        }
        Dress dress = new Dress(state.substrate.get().id(), state.history.get());
        wanted.stream()
                .filter(page -> page <= file.pageCount() && !failed.contains(page))
                .filter(page ->
                        !stock.containsKey(page) || !stock.get(page).dress().equals(dress))
                .findFirst()
                .ifPresent(page -> make(page, dress));
    }

    private void make(int page, Dress dress) {
        OpenFile from = file;
        ColourAssignment rules = assignment;
        PageThumb known = Optional.ofNullable(stock.get(page)).map(Shown::thumb).orElse(null);
        running = page;
        scheduler.submit(
                cancel -> {
                    PageThumb thumb = known == null ? from.thumb(page, rules, EDGE_PX, cancel) : known;
                    return new Shown(thumb, dress, paint(thumb, dress, cancel));
                },
                outcome -> settled(from, rules, page, outcome));
    }

    // Off the window's thread.
    private static Image paint(PageThumb thumb, Dress dress, Cancel cancel) throws Refusal {
        InkPlanes planes = thumb.planes();
        int[] argb = new int[planes.width() * planes.height()];
        thumb.painter(dress.substrateId(), dress.arrangement()).paint(planes, argb, 0, planes.width(), cancel);
        WritableImage image = new WritableImage(planes.width(), planes.height());
        image.getPixelWriter()
                .setPixels(
                        0,
                        0,
                        planes.width(),
                        planes.height(),
                        PixelFormat.getIntArgbInstance(),
                        argb,
                        0,
                        planes.width());
        return image;
    }

    private void settled(OpenFile from, ColourAssignment rules, int page, Outcome<Shown> outcome) {
        if (from != file || rules != assignment) {
            return;
        }
        running = null;
        if (outcome instanceof Outcome.Done<Shown> done) {
            stock.put(page, done.value());
            if (stock.size() > MOST) {
                stock.remove(stock.keySet().iterator().next());
            }
            changed.run();
        } else if (outcome instanceof Outcome.Failed<Shown> why) {
            // The reason is told when the page itself is turned to; here its place stays empty.
            LOG.log(Level.FINE, "page {0}: {1}", new Object[] {page, why.message()});
            failed.add(page);
        } else {
            return; // stopped: the window is closing
        }
        work();
    }
}
