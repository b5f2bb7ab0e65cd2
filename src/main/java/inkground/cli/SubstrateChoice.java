package inkground.cli;

import inkground.app.OwnSubstrates;
import inkground.base.Refusal;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** Finds the substrate that a command line names: the program's or the user's own by its id, or by the JSON file of one. */
final class SubstrateChoice {
    private SubstrateChoice() {}

    /**
     * @param id as given by the user; a file is told by its ending
     * @param spec of the command, for the message
     * @throws ParameterException if there is none of this id
     * @throws Refusal if there is no such file, or it does not describe a substrate
     */
    static Substrate of(String id, CommandSpec spec) throws Refusal {
        if (id.toLowerCase(Locale.ROOT).endsWith(".json")) {
            return Substrates.read(Path.of(id));
        }
        Optional<Substrate> known = Substrates.load().byId(id);
        return known.or(() -> OwnSubstrates.ofUser().byId(id))
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        "there is no substrate '" + id
                                + "'; 'inkground substrates' lists them, and a JSON file of one will do"));
    }
}
