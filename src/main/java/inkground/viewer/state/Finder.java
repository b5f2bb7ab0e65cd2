package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.util.List;
import java.util.stream.IntStream;
import javafx.beans.Observable;

/** Finds inks of the page and substrates of the rack by what is typed, and chooses one after the other. */
public final class Finder {
    private final ViewerState state;
    private int next;

    Finder(ViewerState state) {
        this.state = state;
        state.rack.query.addListener((Observable o) -> next = 0);
    }

    /** @return plane indices of the inks found; none while nothing is searched for */
    public List<Integer> inks() {
        OpenPage page = state.page.get();
        Search search = new Search(state.rack.query.get());
        if (page == null || search.isEmpty()) {
            return List.of();
        }
        List<InkCard> inks = page.inks();
        return IntStream.range(0, inks.size())
                .filter(plane -> search.finds(inks.get(plane)))
                .boxed()
                .toList();
    }

    /** @return how many inks and substrates are found */
    public int count() {
        return inks().size() + state.rack.hung().size();
    }

    /** @return whether anything is searched for */
    public boolean searching() {
        return !new Search(state.rack.query.get()).isEmpty();
    }

    /** Chooses the first thing found, then the next each time, and begins anew after the last. Inks come first. */
    public void chooseNext() {
        List<Integer> inks = inks();
        List<SubstrateCard> cards = state.rack.cards();
        if (!searching() || inks.isEmpty() && cards.isEmpty()) {
            return;
        }
        int at = next % (inks.size() + cards.size());
        next = at + 1;
        if (at < inks.size()) {
            state.chosenInk.set(inks.get(at));
        } else {
            state.substrate.set(cards.get(at - inks.size()));
        }
    }
}
