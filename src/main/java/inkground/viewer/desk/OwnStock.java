package inkground.viewer.desk;

import inkground.app.OwnSubstrates;
import inkground.base.Refusal;
import inkground.colour.Srgb;
import inkground.substrate.Substrate;
import inkground.viewer.state.ProofEngine.OwnShelf;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The user's own substrates as the window knows them. Those that were removed are remembered until the program ends, since a
 * picture under way may still need them. Thread-safe.
 */
public final class OwnStock implements OwnShelf {
    private final OwnSubstrates own;
    private final Map<String, Substrate> known = new HashMap<>();
    private Set<String> builtIn = Set.of();
    private List<String> faults = List.of();

    /**
     * @param own where they are kept
     */
    public OwnStock(OwnSubstrates own) {
        this.own = own;
    }

    /**
     * Reads them anew.
     *
     * @param taken ids of the substrates that come with the program
     */
    public synchronized List<SubstrateCard> read(Set<String> taken) {
        builtIn = Set.copyOf(taken);
        OwnSubstrates.Shelf shelf = own.readBeside(builtIn);
        List<SubstrateCard> cards = new ArrayList<>();
        for (Substrate substrate : shelf.substrates()) {
            known.put(substrate.id(), substrate);
            cards.add(card(substrate, true));
        }
        faults = shelf.faults();
        return cards;
    }

    /** @return one of them, also one that was removed since the program began */
    public synchronized Optional<Substrate> byId(String id) {
        return Optional.ofNullable(known.get(id));
    }

    @Override
    public synchronized SubstrateCard add(OwnSubstrates.Draft draft) throws Refusal {
        return remember(own.add(draft, taken()));
    }

    @Override
    public synchronized SubstrateCard replace(String id, OwnSubstrates.Draft draft) throws Refusal {
        return remember(own.replace(known.get(id), draft, taken()));
    }

    private SubstrateCard remember(Substrate substrate) {
        known.put(substrate.id(), substrate);
        return card(substrate, true);
    }

    /** An id stands for one look as long as the program runs, even after its substrate was removed. */
    private Set<String> taken() {
        Set<String> taken = new HashSet<>(builtIn);
        taken.addAll(known.keySet());
        return taken;
    }

    @Override
    public void remove(String id) throws Refusal {
        own.remove(id);
    }

    @Override
    public Path file(String id) {
        return own.file(id);
    }

    @Override
    public synchronized List<String> faults() {
        return faults;
    }

    /**
     * @param own whether the user has made it
     * @return a substrate as the rack shows it
     */
    static SubstrateCard card(Substrate substrate, boolean own) {
        List<String> notes = new ArrayList<>(substrate.notes());
        if (substrate.underbaseAdvised()) {
            notes.add("A white underbase is usual under colours on this.");
        }
        return new SubstrateCard(
                substrate.id(),
                substrate.name(),
                substrate.kind() == Substrate.Kind.GARMENT,
                substrate.lab(),
                Srgb.labToArgb(substrate.lab()),
                substrate.texture().kind().name().toLowerCase(Locale.ROOT),
                substrate.source(),
                notes,
                own);
    }
}
