package inkground.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program by itself: lists its commands. */
@Command(
        name = "inkground",
        versionProvider = Version.class,
        description = "Shows artwork as the ink will lie on the real paper or garment.",
        synopsisSubcommandLabel = "COMMAND",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:fine", "1:findings, or a file was refused", "2:wrong usage"},
        footer = {"", "'inkground COMMAND --help' tells more about a command."})
final class RootCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            scope = ScopeType.INHERIT,
            description = "Show this help.")
    private boolean help;

    @Option(names = "--version", versionHelp = true, description = "Show the program's version.")
    private boolean version;

    @Option(
            names = "--verbose",
            scope = ScopeType.INHERIT,
            description = "Show the technical side of warnings and failures.")
    private boolean verbose;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "name a command");
    }
}
