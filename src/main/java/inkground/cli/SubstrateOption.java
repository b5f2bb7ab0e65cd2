package inkground.cli;

import inkground.base.Refusal;
import inkground.substrate.Substrate;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The one substrate that is printed on. */
final class SubstrateOption {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--on",
            paramLabel = "SUBSTRATE",
            required = true,
            description = "Id of the paper or garment, as 'inkground substrates' lists them, or a JSON file of one.")
    private String id;

    /** @throws Refusal if there is no such file, or it does not describe a substrate */
    Substrate substrate() throws Refusal {
        return SubstrateChoice.of(id, spec);
    }
}
