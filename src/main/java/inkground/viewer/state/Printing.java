package inkground.viewer.state;

import inkground.app.Arrangement.WhiteBase;
import inkground.ink.InkKind;
import inkground.viewer.state.ProofEngine.InkCard;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** How the inks of the page are laid: their order, their opacity and what lies beneath them, as the user has arranged it. */
public final class Printing {
    private final ViewerState state;

    Printing(ViewerState state) {
        this.state = state;
    }

    /** @return plane indices of all inks of the page, first printed first: as the user has arranged them, or as is usual */
    public List<Integer> order() {
        List<String> arranged = state.history.get().printOrder();
        List<Integer> order = new ArrayList<>(state.page.get().printOrder());
        // Stable: inks that the arrangement does not know keep their usual order, and follow the known ones.
        order.sort(Comparator.comparingInt(plane -> {
            int at = arranged.indexOf(state.inkName(plane));
            return at < 0 ? arranged.size() : at;
        }));
        return order;
    }

    /**
     * Moves an ink in the print order.
     *
     * @param plane which
     * @param to its new place, 0 printed first; held within the stack
     */
    public void move(int plane, int to) {
        List<Integer> order = new ArrayList<>(order());
        order.remove(Integer.valueOf(plane));
        order.add(Math.max(0, Math.min(order.size(), to)), plane);
        if (order.equals(order())) {
            return;
        }
        List<String> names = order.stream().map(state::inkName).toList();
        state.history.change(
                "print " + state.inkName(plane) + " " + ordinal(order.indexOf(plane)), a -> a.printing(names));
    }

    /**
     * Moves an ink so that it is printed right after another.
     *
     * @param below plane index of that other; -1 to print it before all
     */
    public void moveAfter(int plane, int below) {
        List<Integer> rest = new ArrayList<>(order());
        rest.remove(Integer.valueOf(plane));
        move(plane, below < 0 ? 0 : rest.indexOf(below) + 1);
    }

    /** Moves an ink past its neighbour in the stack, upwards ({@code by} above 0) or towards the state.substrate. */
    public void moveBy(int plane, int by) {
        List<Integer> stacked = stacked();
        int at = stacked.indexOf(plane);
        int to = at + Integer.signum(by);
        if (at >= 0 && to >= 0 && to < stacked.size()) {
            moveAfter(plane, by > 0 ? stacked.get(to) : to > 0 ? stacked.get(to - 1) : -1);
        }
    }

    private static String ordinal(int at) {
        return at == 0 ? "first" : "as number " + (at + 1);
    }

    /**
     * @return plane indices of the process inks that the page does not use, which the stack folds away; none where the user
     *     has them listed. Before the first measure they are taken as unused where the page names inks of its own.
     */
    public Set<Integer> folded() {
        if (state.page.get() == null || state.stack.unusedShown.get()) {
            return Set.of();
        }
        List<InkCard> cards = state.page.get().inks();
        boolean named = cards.stream().anyMatch(card -> card.ink().kind() != InkKind.PROCESS);
        return IntStream.range(0, cards.size())
                .filter(plane -> cards.get(plane).ink().kind() == InkKind.PROCESS)
                .filter(plane -> state.stack.unused == null ? named : state.stack.unused.contains(state.inkName(plane)))
                .boxed()
                .collect(Collectors.toSet());
    }

    /** @return plane indices of the inks that the stack lists, first printed first */
    public List<Integer> stacked() {
        Set<Integer> folded = folded();
        return order().stream().filter(plane -> !folded.contains(plane)).toList();
    }

    /** @return opacity of an ink as it is proofed, 0 to 1 */
    public double opacity(int plane) {
        Double arranged = state.history.get().opacities().get(state.inkName(plane));
        return arranged == null ? state.page.get().inks().get(plane).opacity() : arranged;
    }

    Map<Integer, Double> opacities() {
        Map<Integer, Double> opacities = new HashMap<>();
        for (int plane = 0; plane < state.page.get().inks().size(); plane++) {
            Double arranged = state.history.get().opacities().get(state.inkName(plane));
            if (arranged != null) {
                opacities.put(plane, arranged);
            }
        }
        return opacities;
    }

    /**
     * Sets the opacity of an ink.
     *
     * @param opacity 0 to 1; empty for what the file says
     * @param gesture changes of one gesture are undone together
     */
    public void setOpacity(int plane, Optional<Double> opacity, Object gesture) {
        String name = state.inkName(plane);
        state.history.change("opacity of " + name, gesture, a -> a.withOpacity(name, opacity));
    }

    /** @return whether an underbase is arranged and there is cloth to lay it on */
    public boolean underbaseLies() {
        return state.history.get().underbase().isPresent()
                && state.substrate.get() != null
                && state.substrate.get().garment();
    }

    /** Lays an underbase, or takes it away; only on cloth. */
    public void toggleUnderbase() {
        if (underbaseLies()) {
            state.history.change("take the underbase away", a -> a.over(Optional.empty()));
        } else if (state.substrate.get() != null && state.substrate.get().garment()) {
            state.history.change("lay an underbase", a -> a.over(Optional.of(WhiteBase.FULL)));
        }
    }

    /** Changes the underbase, if one is arranged. */
    public void changeUnderbase(String what, Object gesture, UnaryOperator<WhiteBase> change) {
        state.history.change(what, gesture, a -> a.over(a.underbase().map(change)));
    }
}
