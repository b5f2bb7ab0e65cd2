package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.Grounds;
import inkground.app.Job;
import inkground.app.KnockOuts;
import inkground.base.Refusal;
import inkground.handoff.CleanFile;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes a PDF without its bare colours. */
@Command(
        name = "knockout",
        description = {
            "Write a PDF in which the bare colours print nothing and what they hid stays hidden. Vectors, type, inks,"
                    + " boxes and layers stay. Where that cannot be done truly, nothing is written."
        })
final class KnockoutCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private FileArgument file;

    @Mixin
    private AssignmentOptions assignment;

    @Option(names = "--out", paramLabel = "CLEAN.pdf", required = true, description = "PDF to write.")
    private Path out;

    @Option(names = "--replace", description = "Replace a file that exists already.")
    private boolean replace;

    KnockoutCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (!assignment.given()) {
            throw new ParameterException(spec.commandLine(), "say what is bare: --bare or --assign");
        }
        Arrangement arrangement = assignment.arrangement();
        Job.Choices choices = new Job.Choices(null, null, arrangement.assignment()).sized(arrangement.size());
        try (Job job = file.open(choices, console)) {
            CleanFile.Result result = KnockOuts.write(job, out, replace, console.cancel(), console.progress());
            console.say(out + ": " + result.removed() + (result.removed() == 1 ? " bare object" : " bare objects")
                    + " taken out, " + result.knockedOut() + " of them over other paint, which is knocked out there.");
            for (int page = 1; page <= job.pages().size() && result.knockedOut() > 0; page++) {
                Grounds.Deletion deletion = Grounds.deletion(
                        job.page(page, console.cancel(), console.progress()),
                        job.assignment(),
                        console.cancel(),
                        console.progress());
                if (!deletion.inks().isEmpty()) {
                    console.say("page " + page + ": just " + deletion.words() + ".");
                }
            }
        }
        return ExitCode.FINE;
    }
}
