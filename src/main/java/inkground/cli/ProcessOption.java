package inkground.cli;

import inkground.base.Refusal;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrates;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The way of printing, which decides how much inks hide. */
final class ProcessOption {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--process",
            paramLabel = "ID",
            description =
                    "How it is printed, such as screen-plastisol or sublimation: inks that were not measured get the"
                            + " opacity usual there, dyes none. Default: the inks' own.")
    private String id;

    /** @return the process, or null where none is named */
    PrintProcess process() throws Refusal {
        if (id == null) {
            return null;
        }
        var all = Substrates.load();
        return all.processById(id)
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        "there is no print process '" + id + "'; there are "
                                + all.processes().stream().map(PrintProcess::id).collect(Collectors.joining(", "))));
    }
}
