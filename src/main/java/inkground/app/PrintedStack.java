package inkground.app;

import inkground.app.Arrangement.WhiteBase;
import inkground.appearance.InkColour;
import inkground.appearance.InkColours;
import inkground.appearance.Stack;
import inkground.appearance.Underbase;
import inkground.base.Refusal;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrate;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** A stack as the user has arranged it, and as a print process prints it: order, opacities, and white beneath. */
public final class PrintedStack {
    private PrintedStack() {}

    /**
     * @param stack substrate and inks
     * @param process whose opacities the inks get where they were not measured; null for none
     * @param underbase white beneath; null for none, unless the process lays its own
     * @throws Refusal if the process does not print on the substrate, has no white, or the underbase names an ink that is not there
     */
    public static Stack of(Stack stack, PrintProcess process, Underbase underbase) throws Refusal {
        if (underbase != null) {
            checkNames(stack, underbase);
        }
        return printed(stack, process, underbase);
    }

    /**
     * A stack as it was arranged, but for what is said otherwise now.
     *
     * @param usual substrate and inks in their usual order
     * @param arrangement as for {@link #arranged}
     * @param process goes before the opacities of the arrangement, and one without white before its underbase; null for none
     * @param underbase goes before that of the arrangement; null for that
     * @throws Refusal if the process does not print on the substrate or has no white for {@code underbase}, or that names an ink
     *     that is not there
     */
    public static Stack of(Stack usual, Arrangement arrangement, PrintProcess process, Underbase underbase)
            throws Refusal {
        Stack arranged = arranged(usual, arrangement);
        if (underbase != null) {
            return of(arranged, process, underbase);
        }
        boolean white = process == null || process.white() != PrintProcess.White.BARE;
        return printed(arranged, process, white ? arranged.underbase() : null);
    }

    private static Stack printed(Stack stack, PrintProcess process, Underbase underbase) throws Refusal {
        if (process == null) {
            return stack.over(underbase);
        }
        if (!process.on().contains(stack.substrate().kind())) {
            throw new Refusal(process.name() + " does not print on "
                    + stack.substrate().name() + ". Choose another process or substrate.");
        }
        Underbase beneath = underbase;
        if (process.white() == PrintProcess.White.AUTOMATIC && underbase == null) {
            beneath = Underbase.full();
        }
        if (beneath != null && process.white() == PrintProcess.White.BARE) {
            throw new Refusal(process.name() + " has no white ink, so it lays no underbase. Leave the underbase out.");
        }
        Stack printed = stack.with(InkColours.in(process, stack.inks()));
        return printed.over(beneath == null ? null : beneath.withWhiteOf(process.whiteOpacity()));
    }

    /**
     * @param usual substrate and inks in their usual order
     * @return them as arranged; what names an ink that is not there says nothing, and only cloth gets an underbase
     */
    public static Stack arranged(Stack usual, Arrangement arrangement) {
        List<InkColour> colours = usual.inks().stream()
                .map(colour -> {
                    Double opacity = arrangement.opacities().get(colour.ink().name());
                    return opacity == null ? colour : colour.withOpacity(opacity);
                })
                .toList();
        List<String> order = arrangement.printOrder();
        // stable: inks that the arrangement does not know keep their usual order, and follow the known ones
        List<Integer> planes = usual.printOrder().stream()
                .sorted(Comparator.comparingInt(plane -> {
                    int at = order.indexOf(usual.inks().get(plane).ink().name());
                    return at < 0 ? order.size() : at;
                }))
                .toList();
        boolean cloth = usual.substrate().kind() == Substrate.Kind.GARMENT;
        return usual.with(colours)
                .inOrder(planes)
                .over(arrangement
                        .underbase()
                        .filter(base -> cloth)
                        .map(PrintedStack::underbase)
                        .orElse(null));
    }

    /** @return the underbase of an arrangement, of the usual white */
    public static Underbase underbase(WhiteBase base) {
        return new Underbase(
                InkColours.underbaseWhite(),
                base.tint(),
                base.hits(),
                base.chokeMm(),
                base.under(),
                base.knockedOutUnder());
    }

    private static void checkNames(Stack stack, Underbase underbase) throws Refusal {
        List<String> known =
                stack.inks().stream().map(colour -> colour.ink().name()).toList();
        TreeSet<String> named = new TreeSet<>(underbase.under());
        named.addAll(underbase.knockedOutUnder());
        for (String name : named) {
            if (!known.contains(name)) {
                throw new Refusal("The underbase names the ink '" + name + "', which is not there; inks here: "
                        + String.join(", ", known) + ".");
            }
        }
    }
}
