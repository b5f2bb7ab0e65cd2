package inkground.cli;

import inkground.base.Refusal;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Finds the substrate that a command line names. */
final class SubstrateChoice {
    private SubstrateChoice() {}

    /**
     * @param id as given by the user
     * @param spec of the command, for the message
     * @throws ParameterException if there is none of this id
     */
    static Substrate of(String id, CommandSpec spec) throws Refusal {
        return Substrates.load()
                .byId(id)
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(), "there is no substrate '" + id + "'; 'inkground substrates' lists them"));
    }
}
