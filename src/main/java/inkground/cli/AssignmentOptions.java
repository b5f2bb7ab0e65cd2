package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.AssignmentFile;
import inkground.app.SessionFile;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.base.Refusal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Which colours of the artwork are printed otherwise than the file states. */
final class AssignmentOptions {
    @Option(
            names = "--assign",
            paramLabel = "FILE.json",
            description = "Colour assignment to use, such as the ART.pdf.inkground.json beside the artwork.")
    private Path assign;

    @Option(
            names = "--bare",
            paramLabel = "COLOUR",
            description = "A colour that is not printed: where it would be seen, the substrate is."
                    + " '#RRGGBB', '#RRGGBB~dE' (within that ΔE00; 1 without it) or the name of an ink."
                    + " May be repeated; goes before the rules of --assign.")
    private List<String> bare = new ArrayList<>();

    boolean given() {
        return assign != null || !bare.isEmpty();
    }

    /** @return what {@code --assign} arranges beside colours too, with the rules of both options */
    Arrangement arrangement() throws Refusal {
        Arrangement from =
                assign == null ? Arrangement.AS_FILED : SessionFile.load(assign).arrangement();
        return from.assigning(assignment());
    }

    /** @return the rules of both options */
    ColourAssignment assignment() throws Refusal {
        List<Rule> rules = new ArrayList<>();
        for (String text : bare) {
            rules.add(new Rule(AssignmentFile.nominated(text), new Bare()));
        }
        ColourAssignment nominated = new ColourAssignment(rules);
        return assign == null ? nominated : nominated.then(AssignmentFile.load(assign));
    }
}
