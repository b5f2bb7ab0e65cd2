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

/** What is decided about the artwork in place of what its file states: in a file kept earlier, and colours that are bare. */
final class AssignmentOptions {
    @Option(
            names = "--assign",
            paramLabel = "FILE.json",
            description =
                    "What was decided about the artwork, such as the ART.pdf.inkground.json kept beside it by the window:"
                            + " colour rules and the size of a picture or an SVG; where the artwork is shown on a substrate, also"
                            + " the order and opacity of its inks and the underbase; with --worn, its place on the garment. Other"
                            + " options go before it. Its page, substrate and hidden inks are not taken.")
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

    /** @return what was decided by {@code --assign}, with the rules of {@code --bare} before its own */
    Arrangement arrangement() throws Refusal {
        List<Rule> rules = new ArrayList<>();
        for (String text : bare) {
            rules.add(new Rule(AssignmentFile.nominated(text), new Bare()));
        }
        Arrangement kept =
                assign == null ? Arrangement.AS_FILED : SessionFile.load(assign).arrangement();
        return kept.assigning(new ColourAssignment(rules).then(kept.assignment()));
    }
}
