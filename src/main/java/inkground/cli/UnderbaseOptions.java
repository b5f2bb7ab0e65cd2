package inkground.cli;

import inkground.appearance.InkColours;
import inkground.appearance.Underbase;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** White laid under colours, in the words of a command line. */
final class UnderbaseOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--underbase",
            description = "Lay white ink under every coloured ink. The options below change it, and lay it too.")
    private boolean plain;

    @Option(
            names = "--underbase-tint",
            paramLabel = "PERCENT",
            description = "Tint of the white, above 0 to 100. Default: 100.")
    private Double tint;

    @Option(
            names = "--underbase-hits",
            paramLabel = "N",
            description = "How many times the white is printed over itself, 1 to " + Underbase.MOST_HITS
                    + "; 2 hides more of a dark cloth. Default: 1.")
    private Integer hits;

    @Option(
            names = "--underbase-choke",
            paramLabel = "MM",
            description = "Pull the white's edge in by so many millimetres, up to 5, so that it does not peep out.")
    private Double chokeMm;

    @Option(
            names = "--underbase-spread",
            paramLabel = "MM",
            description = "Push the white's edge out by so many millimetres, up to 5.")
    private Double spreadMm;

    @Option(
            names = "--underbase-under",
            paramLabel = "INK",
            description = "Lay it under this ink only. May be repeated. Default: under every coloured ink.")
    private List<String> under = new ArrayList<>();

    @Option(
            names = "--underbase-not-under",
            paramLabel = "INK",
            description = "Leave the white out wherever this ink prints, as for a black straight on the cloth. May be"
                    + " repeated.")
    private List<String> notUnder = new ArrayList<>();

    /** @return the underbase asked for, or null */
    Underbase underbase() {
        boolean changed = tint != null
                || hits != null
                || chokeMm != null
                || spreadMm != null
                || !under.isEmpty()
                || !notUnder.isEmpty();
        if (!plain && !changed) {
            return null;
        }
        double percent = tint == null ? 100 : tint;
        int passes = hits == null ? 1 : hits;
        check(percent > 0 && percent <= 100, "--underbase-tint must be above 0 and at most 100");
        check(passes >= 1 && passes <= Underbase.MOST_HITS, "--underbase-hits must be 1 to " + Underbase.MOST_HITS);
        check(chokeMm == null || spreadMm == null, "--underbase-choke and --underbase-spread exclude each other");
        double move = chokeMm != null ? chokeMm : spreadMm != null ? spreadMm : 0;
        check(
                move >= 0 && move <= Underbase.MOST_CHOKE_MM,
                (chokeMm != null ? "--underbase-choke" : "--underbase-spread") + " must be 0 to 5 mm");
        for (String ink : under) {
            check(!notUnder.contains(ink), "the underbase is to lie under '" + ink + "' and not under it");
        }
        return new Underbase(
                InkColours.underbaseWhite(),
                percent / 100,
                passes,
                spreadMm == null ? move : -move,
                new HashSet<>(under),
                new HashSet<>(notUnder));
    }

    private void check(boolean holds, String message) {
        if (!holds) {
            throw new ParameterException(spec.commandLine(), message);
        }
    }
}
