package inkground.appearance;

import inkground.colour.PrintCondition;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What a cross-section of the print would show: substrate, underbase, inks in print order.
 *
 * @param substrate at the bottom
 * @param inks one per plane, in plane order
 * @param condition how process inks print on paper
 * @param shown plane indices of the inks that are shown; the others are as if they did not print
 * @param printOrder plane indices, first printed first; planes left out follow in plane order
 * @param underbase null for none
 */
public record Stack(
        Substrate substrate,
        List<InkColour> inks,
        PrintCondition condition,
        Set<Integer> shown,
        List<Integer> printOrder,
        Underbase underbase) {
    /** Checks the indices, completes the order and copies the collections. */
    public Stack {
        inks = List.copyOf(inks);
        shown = Set.copyOf(shown);
        LinkedHashSet<Integer> order = new LinkedHashSet<>(printOrder);
        if (order.size() != printOrder.size()) {
            throw new IllegalArgumentException("an ink is twice in the print order " + printOrder);
        }
        for (int i = 0; i < inks.size(); i++) {
            order.add(i);
        }
        int n = inks.size();
        if (order.size() != n || shown.stream().anyMatch(i -> i < 0 || i >= n)) {
            throw new IllegalArgumentException("an index beyond the " + n + " inks");
        }
        printOrder = List.copyOf(order);
    }

    /** @return the usual stack: white ink first, then the others in plane order; all shown but technical ones; no underbase */
    public static Stack of(Substrate substrate, List<InkColour> inks, PrintCondition condition) {
        Set<Integer> shown = IntStream.range(0, inks.size())
                .filter(i -> inks.get(i).ink().kind() != InkKind.TECHNICAL)
                .boxed()
                .collect(Collectors.toSet());
        return new Stack(substrate, inks, condition, shown, usualOrder(inks), null);
    }

    /** @return plane indices with white inks first, then the others in plane order */
    public static List<Integer> usualOrder(List<InkColour> inks) {
        List<Integer> order = new ArrayList<>();
        for (boolean white : new boolean[] {true, false}) {
            for (int i = 0; i < inks.size(); i++) {
                if ((inks.get(i).ink().kind() == InkKind.WHITE) == white) {
                    order.add(i);
                }
            }
        }
        return order;
    }

    /**
     * @param stated names of inks, first printed first, as a file may state them
     * @return plane indices: white inks that are not stated, the stated ones, then the others in plane order
     */
    public static List<Integer> order(List<InkColour> inks, List<String> stated) {
        List<Integer> usual = usualOrder(inks);
        List<Integer> placed = stated.stream()
                .map(name -> usual.stream()
                        .filter(i -> inks.get(i).ink().name().equals(name))
                        .findFirst()
                        .orElse(-1))
                .filter(i -> i >= 0)
                .distinct()
                .toList();
        LinkedHashSet<Integer> out = new LinkedHashSet<>(usual.stream()
                .filter(i -> !placed.contains(i) && inks.get(i).ink().kind() == InkKind.WHITE)
                .toList());
        out.addAll(placed);
        out.addAll(usual);
        return List.copyOf(out);
    }

    /** @return the same stack printed in another order; see {@link #printOrder} */
    public Stack inOrder(List<Integer> planes) {
        return new Stack(substrate, inks, condition, shown, planes, underbase);
    }

    /** @return the same stack with other colours of the same inks, in plane order */
    public Stack with(List<InkColour> colours) {
        return new Stack(substrate, colours, condition, shown, printOrder, underbase);
    }

    /** @return the same stack on another substrate */
    public Stack on(Substrate other) {
        return new Stack(other, inks, condition, shown, printOrder, underbase);
    }

    /** @return the same stack with other inks shown */
    public Stack showing(Set<Integer> planes) {
        return new Stack(substrate, inks, condition, planes, printOrder, underbase);
    }

    /** @return the same stack with another underbase, or none if null */
    public Stack over(Underbase other) {
        return new Stack(substrate, inks, condition, shown, printOrder, other);
    }
}
