package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.SetChangeListener;

/** Which substrates lie side by side, and in which order. */
public final class LineUp {
    /** Fewest that are worth a comparison. */
    public static final int FEWEST = 2;
    /** Most that can be told apart on a screen. */
    public static final int MOST = 24;

    /** In which order they lie. */
    public final ObjectProperty<Rack.Order> order = new SimpleObjectProperty<>(this, "order", Rack.Order.VANISH);

    /** Whether the form for a contact sheet is open. */
    public final BooleanProperty sheet = new SimpleBooleanProperty(this, "sheet");

    private final ObservableList<SubstrateCard> all;
    private final Rack rack;
    private final ObservableList<SubstrateCard> cards = FXCollections.observableArrayList();
    // Held on to: the wrapper alone holds its listeners.
    private final ObservableList<SubstrateCard> seen = FXCollections.unmodifiableObservableList(cards);

    LineUp(ObservableList<SubstrateCard> all, Rack rack) {
        this.all = all;
        this.rack = rack;
        for (Observable value : List.of(all, order, rack.scores)) {
            value.addListener(o -> arrange());
        }
        rack.marked.addListener((SetChangeListener<String>) c -> arrange());
    }

    /** @return what lies side by side, from the top left, at most {@value #MOST} */
    public ObservableList<SubstrateCard> cards() {
        return seen;
    }

    /** @return whether the user has marked enough to decide what lies here */
    public boolean chosen() {
        return all.stream().filter(this::marked).count() >= FEWEST;
    }

    private boolean marked(SubstrateCard card) {
        return rack.marked.contains(card.id());
    }

    /** The marked ones; as long as there are too few, the garments, the best kept first where there are too many. */
    private void arrange() {
        List<SubstrateCard> next =
                new ArrayList<>(chosen() ? all.stream().filter(this::marked).toList() : usual());
        if (next.size() > MOST || order.get() == Rack.Order.VANISH) {
            next.sort(rack.byScore());
        }
        next = next.subList(0, Math.min(MOST, next.size()));
        if (order.get() == Rack.Order.RACK) {
            List<SubstrateCard> kept = next;
            next = all.stream().filter(kept::contains).toList();
        }
        if (!next.equals(cards)) {
            cards.setAll(next);
        }
    }

    private List<SubstrateCard> usual() {
        List<SubstrateCard> garments =
                all.stream().filter(SubstrateCard::garment).toList();
        return garments.size() < FEWEST ? all : garments;
    }
}
