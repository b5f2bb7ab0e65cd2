package inkground.appearance;

import inkground.appearance.StackGamut.Nearest;
import inkground.colour.Cie;
import inkground.colour.Lab;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The one rule by which artwork is within reach of inks on a substrate: the colour it asks for is missed by no more than a limit, either by
 * the artwork printed as it stands or by the nearest mixture of the same inks. Colours are searched for in steps of one unit of Lab, so
 * what a mixture misses is right within ΔE00 0.9. Remembers what it searched; thread-safe.
 */
final class InkReach {
    private static final int MOST_SEARCHED = 1 << 15;

    private final StackModel model;
    private final AskedColours asked;
    private final StackGamut gamut;
    private final double limitDe00;
    private final Map<Lab, Nearest> searched = new ConcurrentHashMap<>();

    /**
     * @param model inks on the substrate
     * @param totalInk largest sum of tints in one place, above 0; 3 is 300 %
     * @param limitDe00 largest ΔE00 that is let pass
     */
    InkReach(StackModel model, double totalInk, double limitDe00) {
        this.model = model;
        this.asked = AskedColours.of(model);
        this.gamut = StackGamut.of(model, totalInk);
        this.limitDe00 = limitDe00;
    }

    /**
     * What tints ask for and the best that the inks give.
     *
     * @param asked absolute; in whole units where it was searched for
     * @param nearest what the print as it stands gives, where that is within the limit; else the nearer of it and the nearest mixture
     * @param missedBy ΔE00 between what is asked for and the nearest
     */
    record Answer(Lab asked, Lab nearest, double missedBy) {}

    /** @return the answer for tints of all inks, 0 to 255 each, not all 0 */
    Answer of(int[] tints) {
        Lab wanted = asked.lab(tints);
        Lab printed = AskedColours.lab(model, tints);
        double shift = Cie.deltaE00(wanted, printed);
        if (shift <= limitDe00) {
            return new Answer(wanted, printed, shift); // no search can change the verdict
        }
        if (searched.size() > MOST_SEARCHED) {
            searched.clear();
        }
        Lab near = StackGamut.whole(wanted);
        Nearest mixture = searched.computeIfAbsent(near, gamut::nearest);
        return mixture.missedBy() < shift
                ? new Answer(near, mixture.lab(), mixture.missedBy())
                : new Answer(near, printed, shift);
    }

    /** @return whether the inks miss what is asked for by more than the limit */
    boolean beyond(Answer answer) {
        return answer.missedBy() > limitDe00;
    }
}
