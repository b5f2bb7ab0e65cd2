package inkground.viewer.desk;

import inkground.app.ColourInventory;
import inkground.app.ColourRules;
import inkground.app.ColourUse;
import inkground.app.ColourWords;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.Grounds.Reason;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.base.Progress;
import inkground.colour.Lab;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;
import javafx.geometry.Point2D;

/**
 * Finds out about the colours of the artwork: takes stock of them once the page was measured, looks for a garment painted in, and
 * answers what was picked. The colours that a page paints do not hang on what they are printed as, so that stock is taken once for
 * each page of each revision of the file.
 */
public final class ColourDesk {
    private final ViewerState state;
    private final BackgroundWork work;
    private final RenderScheduler stock;
    private final RenderScheduler ground;
    private final RenderScheduler deletion;
    private final RenderScheduler pick;
    private final RenderScheduler proposing;
    private OpenFile stockedFile;
    private int stockedPage;
    private Activity taking;
    private Described described;

    /** A colour that lies on a page as its ground, for which it was worked out what deleting it would do. */
    private record Described(OpenPage page, ColourUse use) {}

    /** Begins to listen. */
    public ColourDesk(ViewerState state, BackgroundWork work) {
        this.state = state;
        this.work = work;
        stock = work.scheduler("colours of the artwork");
        ground = work.scheduler("painted-in ground");
        deletion = work.scheduler("what deleting would do");
        pick = work.scheduler("picked colour");
        proposing = work.scheduler("proposed inks");
        state.page.addListener((Observable o) -> turnTo());
        state.figures.addListener((Observable o) -> {
            // The picture and the areas of the inks come first: the user waits for those.
            if (state.figures.get() != null && state.colours.inventory.get() == null && taking == null) {
                takeStock();
            }
        });
        for (Observable value : List.of(state.colours.inventory, state.substrate, state.history.now())) {
            value.addListener(o -> lookForGround());
        }
        SetChangeListener<Integer> layers = c -> lookForGround();
        state.layersOn.addListener(layers);
        state.colours.pickedAt.addListener((Observable o) -> pick());
    }

    private void turnTo() {
        OpenPage page = state.page.get();
        if (page == null) {
            return;
        }
        int number = page.info().number();
        if (state.file.get() != stockedFile || number != stockedPage) {
            stockedFile = state.file.get();
            stockedPage = number;
            stock.cancel();
            taking = null;
            state.colours.taking.set(false);
            state.colours.inventory.set(null);
            state.colours.picked.set(null);
        }
        lookForGround();
    }

    /** Takes stock of the page's colours; done by itself once the page is measured, and anew when the user stopped it. */
    public void takeStock() {
        OpenPage page = state.page.get();
        if (page == null) {
            return;
        }
        state.colours.taking.set(true);
        Activity[] mine = new Activity[1];
        mine[0] = work.start(
                "Taking stock of the colours",
                stock,
                (cancel, activity) -> page.colours(cancel, activity),
                (ColourInventory found) -> {
                    if (state.file.get() == stockedFile
                            && state.page.get().info().number() == stockedPage) {
                        state.colours.inventory.set(found);
                    }
                },
                () -> {
                    if (taking == mine[0]) {
                        state.colours.taking.set(false);
                    }
                });
        taking = mine[0];
    }

    private void lookForGround() {
        ColourInventory colours = state.colours.inventory.get();
        SubstrateCard card = state.substrate.get();
        OpenPage page = state.page.get();
        boolean anyBare = state.history.get().assignment().rules().stream().anyMatch(rule -> rule.to() instanceof Bare);
        if (colours == null
                || card == null
                || !card.garment()
                || anyBare
                || !defaultLayersOn(page)
                || state.file.get() == null // another file is being opened
                || state.colours.groundSettled(state.file.get().path())) {
            ground.cancel();
            state.colours.ground.set(null);
            return;
        }
        Lab garment = card.lab();
        ground.submit(cancel -> likeliest(page.grounds(colours, garment)), outcome -> {
            if (outcome instanceof Outcome.Done<Optional<Candidate>> done && state.page.get() == page) {
                ask(page, done.value().orElse(null));
            }
        });
    }

    /** Stock is taken of the layers that are on by default: with one of them off, its ground may not be there. */
    private boolean defaultLayersOn(OpenPage page) {
        return page.layers().stream()
                .filter(layer -> layer.on())
                .allMatch(layer -> state.layersOn.contains(layer.id()));
    }

    /** A colour that only reaches the edges may well be artwork: that alone is no reason to ask. */
    private static Optional<Candidate> likeliest(List<Candidate> candidates) {
        return candidates.stream()
                .filter(c -> c.reasons().contains(Reason.FILLS_THE_PAGE)
                        || c.reasons().contains(Reason.NEAR_THE_GARMENT))
                .findFirst();
    }

    private void ask(OpenPage page, Candidate candidate) {
        // On the next garment it is the same colour as a rule, and what deleting it would do does not hang on the
        // garment.
        Described wanted = candidate == null ? described : new Described(page, candidate.use());
        boolean other = !Objects.equals(wanted, described);
        if (other) {
            described = wanted;
            state.colours.deletion.set("");
        }
        state.colours.ground.set(candidate);
        if (candidate != null && (other || state.colours.deletion.get().isEmpty() && !deletion.busy())) {
            deletion.submit(cancel -> page.deletion(candidate.nominated(), cancel, Progress.NONE), outcome -> {
                if (outcome instanceof Outcome.Done<Deletion> done && wanted.equals(described)) {
                    state.colours.deletion.set(done.value().words());
                }
            });
        }
    }

    /** Prints the colour that is asked about as bare. */
    public void printGroundBare() {
        Candidate candidate = state.colours.ground.get();
        if (candidate != null) {
            state.colours.settleGround(state.file.get().path());
            ColourAssignment nominated = candidate.nominated();
            state.history.change(
                    "print the " + ColourWords.of(candidate.use().lab()).toLowerCase(Locale.ROOT) + " as bare",
                    a -> a.assigning(nominated.then(a.assignment())));
        }
    }

    /** Leaves the colour that is asked about as it is. */
    public void keepGround() {
        state.colours.settleGround(state.file.get().path());
    }

    /** Prints all flat colours that have no ink yet as inks; what the user has decided stays. */
    public void assignAll() {
        OpenPage page = state.page.get();
        ColourInventory colours = state.colours.inventory.get();
        SubstrateCard card = state.substrate.get();
        if (page == null || colours == null || card == null) {
            return;
        }
        work.start(
                "Proposing inks",
                proposing,
                (cancel, activity) -> page.proposal(colours, card.id(), cancel, activity),
                (ColourAssignment proposed) -> {
                    state.history.change(
                            "assign all flat colours to inks",
                            a -> a.assigning(a.assignment().then(proposed)));
                    int rules = proposed.rules().size();
                    state.news.set(
                            rules == 0
                                    ? "Every flat colour has its ink already"
                                    : rules + (rules == 1 ? " colour" : " colours")
                                            + " assigned; change any in the list");
                });
    }

    private void pick() {
        Point2D at = state.colours.pickedAt.get();
        ColourInventory colours = state.colours.inventory.get();
        OpenPage page = state.page.get();
        if (at == null || colours == null || page == null) {
            return;
        }
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        work.start(
                "Looking for the colour",
                pick,
                (cancel, activity) -> page.colourAt(colours, at.getX(), at.getY(), layersOn, cancel),
                (Optional<ColourUse> found) -> {
                    state.colours.picked.set(null);
                    found.ifPresentOrElse(
                            use -> state.colours.picked.set(use),
                            () -> state.news.set("No flat colour is painted there"));
                });
    }

    /** Changes what some colours are printed as; empty for as stated. */
    public void assign(
            List<ColourRules.Subject> subjects, Optional<ColourAssignment.Target> target, String what, Object gesture) {
        state.history.change(
                what,
                gesture,
                a -> a.assigning(target.map(to -> ColourRules.assigning(a.assignment(), subjects, to))
                        .orElseGet(() -> ColourRules.asStated(a.assignment(), subjects))));
    }
}
