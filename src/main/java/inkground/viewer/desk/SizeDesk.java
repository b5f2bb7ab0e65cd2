package inkground.viewer.desk;

import inkground.app.Session.Extent;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Refusal;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ViewerState;
import java.util.Optional;
import javafx.beans.Observable;

/** Asks how large a picture or an SVG is where its file does not say, and takes the answer. */
public final class SizeDesk {
    private final ViewerState state;

    /** Begins to listen. */
    public SizeDesk(ViewerState state) {
        this.state = state;
        state.page.addListener((Observable o) -> lookAtPage());
    }

    private Optional<Sizing> sizing() {
        return state.page.get() == null || state.file.get() == null
                ? Optional.empty()
                : state.file.get().sizing(state.page.get().info().number());
    }

    private void lookAtPage() {
        state.size.asked.set(
                sizing().filter(page -> state.size.open(state.file.get().path(), page))
                        .orElse(null));
    }

    /** Asks about the page that is open, whatever its file says. */
    public void ask() {
        if (state.page.get() == null) {
            return;
        }
        if (sizing().isEmpty()) {
            state.news.set("This file states its own size, which is taken");
            return;
        }
        if (state.view.get() != BenchView.FLAT && state.view.get() != BenchView.GARMENT) {
            state.view.set(BenchView.FLAT);
        }
        state.size.asked.set(sizing().orElseThrow());
    }

    /**
     * Checks a width for all pages of the file.
     *
     * @param text as typed, in the unit that lengths are shown in or with another one after it
     * @throws Refusal in plain words and in the unit that lengths are shown in, if the artwork cannot have it
     */
    public PictureSize read(String text) throws Refusal {
        LengthUnit unit = state.unit.get();
        double mm = unit.parseMm(text)
                .orElseThrow(() -> new Refusal("Type the width as a number, such as " + unit.numberOfMm(280) + "."));
        String most = unit.textOfMm(PictureSize.MOST_MM);
        if (!PictureSize.isWidth(mm)) {
            throw new Refusal("A width is " + unit.textOfMm(PictureSize.LEAST_MM) + " to " + most + ".");
        }
        PictureSize size = PictureSize.wide(mm);
        OpenFile file = state.file.get();
        for (int page = 1; page <= file.pageCount(); page++) {
            Optional<Sizing> sizing = file.sizing(page);
            if (sizing.isPresent() && !sizing.get().fits(size)) {
                throw new Refusal(file.path().getFileName() + " would be "
                        + unit.size(sizing.get().page(size)) + " at that width: more than " + most
                        + ". Choose a smaller one.");
            }
        }
        return size;
    }

    /** Takes a size, which can be undone. */
    public void take(PictureSize size) {
        keep();
        state.history.change(
                "make the artwork " + state.unit.get().textOfMm(size.widthMm()) + " wide", a -> a.sized(size));
    }

    /** Leaves the size as it is. */
    public void keep() {
        Sizing asked = state.size.asked.get();
        if (asked != null) {
            state.size.settle(state.file.get().path(), Extent.of(asked));
            state.size.asked.set(null);
        }
    }
}
