package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.Job;
import inkground.colour.BlackPointCompensation;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** How process inks print, where the user knows better than the file. */
final class ConditionOption {
    @Option(
            names = "--condition",
            paramLabel = "FILE|NAME",
            description =
                    "How process inks print, and what RGB artwork is separated for: FOGRA39L, TR006, a characterisation"
                            + " file or a CMYK profile. Default: the file's output intent, else FOGRA39L.")
    private String condition;

    @Option(
            names = "--black-point",
            paramLabel = "default|on|off",
            defaultValue = "default",
            description =
                    "Whether the darkest colour of RGB and Lab artwork becomes the darkest print (black point compensation),"
                            + " where the file leaves it open. Default: on for RGB colours by the relative intent, else off.")
    private BlackPointCompensation black;

    /**
     * @param inks file of the user's ink colours; null for none
     * @param arrangement its colour rules and size are chosen too
     * @return all that is chosen in place of what the file says
     */
    Job.Choices choices(Path inks, Arrangement arrangement) {
        return new Job.Choices(condition, inks, arrangement.assignment(), arrangement.size(), black);
    }
}
