package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ProofEngine.Vanish;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javafx.beans.Observable;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.ObservableSet;
import javafx.collections.SetChangeListener;

/** How the substrates hang in the rack: in groups, those that were searched for, in one of two orders. */
public final class Rack {
    /** In which order substrates follow each other. */
    public enum Order {
        /** As the rack has them. */
        RACK,
        /** Those on which most of the artwork's edges stay come first; those not scored yet last. */
        VANISH
    }

    /** What hangs together, in the order of the rack. */
    public enum Group {
        /** What the user keeps at hand. */
        FAVOURITES("Favourites"),
        /** What the user has made. */
        OWN("Own"),
        /** Sheets. */
        PAPERS("Papers"),
        /** Cloth. */
        GARMENTS("Garments");

        private final String label;

        Group(String label) {
            this.label = label;
        }

        /** @return its name for the user */
        public String label() {
            return label;
        }
    }

    /**
     * One substrate in its place.
     *
     * @param group where it hangs
     * @param card what it is
     */
    public record Hanging(Group group, SubstrateCard card) {}

    /** Ids of the favourites. */
    public final ObservableSet<String> favourites = FXCollections.observableSet(new LinkedHashSet<>());
    /** Ids of those that are marked for the line-up. */
    public final ObservableSet<String> marked = FXCollections.observableSet(new LinkedHashSet<>());
    /** What is searched for, as typed; never null. */
    public final StringProperty query = new SimpleStringProperty(this, "query", "");
    /** In which order they hang. */
    public final ObjectProperty<Order> order = new SimpleObjectProperty<>(this, "order", Order.RACK);
    /** What is known of how the artwork holds, by id; immutable, replaced as more becomes known. */
    public final ObjectProperty<Map<String, Vanish>> scores = new SimpleObjectProperty<>(this, "scores", Map.of());

    private final ObservableList<SubstrateCard> all;
    private final ObservableList<Hanging> hung = FXCollections.observableArrayList();
    // Held on to: the wrapper alone holds its listeners.
    private final ObservableList<Hanging> seen = FXCollections.unmodifiableObservableList(hung);

    /**
     * @param all every substrate there is, papers first
     */
    Rack(ObservableList<SubstrateCard> all) {
        this.all = all;
        for (Observable value : List.of(all, query, order)) {
            value.addListener(o -> hang());
        }
        favourites.addListener((SetChangeListener<String>) c -> hang());
        scores.addListener(o -> {
            if (order.get() == Order.VANISH) {
                hang();
            }
        });
    }

    /** @return what hangs in the rack now, from left to right; each substrate once */
    public ObservableList<Hanging> hung() {
        return seen;
    }

    /** @return the cards of what hangs in the rack now */
    public List<SubstrateCard> cards() {
        return hung.stream().map(Hanging::card).toList();
    }

    private void hang() {
        Search search = new Search(query.get());
        Stream<Hanging> found = all.stream().filter(search::finds).map(card -> new Hanging(group(card), card));
        // Stable: within a group all keep their place of before, unless they are ranked.
        List<Hanging> next = new ArrayList<>(
                found.sorted(Comparator.comparing(Hanging::group)).toList());
        if (order.get() == Order.VANISH) {
            next.sort(Comparator.comparing(Hanging::group).thenComparing(Hanging::card, byScore()));
        }
        if (!next.equals(hung)) {
            hung.setAll(next);
        }
    }

    private Group group(SubstrateCard card) {
        if (favourites.contains(card.id())) {
            return Group.FAVOURITES;
        }
        return card.own() ? Group.OWN : card.garment() ? Group.GARMENTS : Group.PAPERS;
    }

    /** @return best kept edges first, unknown last */
    Comparator<SubstrateCard> byScore() {
        Map<String, Vanish> known = scores.get();
        return Comparator.comparingDouble(
                card -> known.containsKey(card.id()) ? known.get(card.id()).share() : 2);
    }

    /** Makes a substrate a favourite, or an ordinary one again. */
    public void toggleFavourite(SubstrateCard card) {
        if (!favourites.remove(card.id())) {
            favourites.add(card.id());
        }
    }

    /**
     * Marks a substrate for the line-up, or takes the mark away.
     *
     * @return false if no more can be marked
     */
    public boolean toggleMark(SubstrateCard card) {
        if (marked.remove(card.id())) {
            return true;
        }
        return marked.size() < LineUp.MOST && marked.add(card.id());
    }

    /** Gives favourite and mark of one substrate to the one that takes its place, or takes them away where there is none. */
    public void succeed(String before, SubstrateCard after) {
        for (ObservableSet<String> ids : List.of(favourites, marked)) {
            if (ids.remove(before) && after != null) {
                ids.add(after.id());
            }
        }
    }
}
