package inkground.substrate;

import java.util.List;
import java.util.Optional;

/**
 * All substrates, print processes and cuts of garments that are known. Immutable.
 *
 * @param all substrates, papers first, each kind in its stated order
 * @param processes print processes in their stated order
 * @param cuts shapes of garments in their stated order
 */
public record Library(List<Substrate> all, List<PrintProcess> processes, List<Cut> cuts) {
    /** Copies the lists. */
    public Library {
        all = List.copyOf(all);
        processes = List.copyOf(processes);
        cuts = List.copyOf(cuts);
    }

    /** @return the substrate of this id, if there is one */
    public Optional<Substrate> byId(String id) {
        return all.stream().filter(s -> s.id().equals(id)).findFirst();
    }

    /** @return the print process of this id, if there is one */
    public Optional<PrintProcess> processById(String id) {
        return processes.stream().filter(p -> p.id().equals(id)).findFirst();
    }

    /** @return the cut of this id, if there is one */
    public Optional<Cut> cutById(String id) {
        return cuts.stream().filter(c -> c.id().equals(id)).findFirst();
    }

    /** @return substrates of one kind, in order */
    public List<Substrate> ofKind(Substrate.Kind kind) {
        return all.stream().filter(s -> s.kind() == kind).toList();
    }
}
