package inkground.app;

import inkground.appearance.InkColours;
import inkground.appearance.Stack;
import inkground.appearance.Underbase;
import inkground.base.Refusal;
import inkground.substrate.PrintProcess;
import java.util.List;
import java.util.TreeSet;

/** A stack as a print process prints it: with that process's opacities, and with white beneath. */
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
