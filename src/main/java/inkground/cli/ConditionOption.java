package inkground.cli;

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

    /** @return as given, or null */
    String name() {
        return condition;
    }
}
