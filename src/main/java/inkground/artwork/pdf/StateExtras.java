package inkground.artwork.pdf;

import inkground.colour.BlackPointCompensation;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.WeakHashMap;
import org.apache.pdfbox.pdmodel.graphics.PDLineDashPattern;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;

/** What graphics states hold that the library does not keep: phases of dashes with their fraction, and UseBlackPtComp (table 57). */
final class StateExtras {
    private final Map<PDLineDashPattern, Double> dashPhases = new IdentityHashMap<>();
    // Weak, since states of nested content end without a word.
    private final Map<PDGraphicsState, BlackPointCompensation> blackPoints = new WeakHashMap<>();
    private BlackPointCompensation inherited = BlackPointCompensation.DEFAULT;

    void dashPhase(PDGraphicsState state, double phase) {
        dashPhases.put(state.getLineDashPattern(), phase);
    }

    double dashPhase(PDGraphicsState state) {
        return dashPhases.getOrDefault(state.getLineDashPattern(), 0.0);
    }

    void blackPoint(PDGraphicsState state, BlackPointCompensation black) {
        if (black != inherited || blackPoints.containsKey(state)) {
            blackPoints.put(state, black);
        }
    }

    BlackPointCompensation blackPoint(PDGraphicsState state) {
        return blackPoints.getOrDefault(state, inherited);
    }

    /** Hands on what a state says to its copy, which q has put in its place. */
    void saved(PDGraphicsState state, PDGraphicsState copy) {
        blackPoint(copy, blackPoint(state));
    }

    /**
     * Sets what states say that are not known.
     *
     * @return what they said until now
     */
    BlackPointCompensation inherit(BlackPointCompensation black) {
        BlackPointCompensation outer = inherited;
        inherited = black;
        return outer;
    }
}
