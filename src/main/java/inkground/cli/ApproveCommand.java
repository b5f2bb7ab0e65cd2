package inkground.cli;

import inkground.app.Approval;
import inkground.app.Approvals;
import inkground.app.Arrangement;
import inkground.app.Arrangement.WhiteBase;
import inkground.app.Job;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.app.Proofs;
import inkground.appearance.Stack;
import inkground.base.Refusal;
import inkground.substrate.PrintProcess;
import inkground.substrate.Substrate;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Keeps what was approved. */
@Command(
        name = "approve",
        description = {
            "Keep a page as it was approved, in one file: the artwork itself, substrate, inks, arrangement, and the picture that"
                    + " was seen. 'compare' tells later what is no longer so. " + Proofs.CAUTION
        })
final class ApproveCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    private FileArgument file;

    @Mixin
    private ConditionOption condition;

    @Mixin
    private InkLibraryOption library;

    @Mixin
    private PageOption page;

    @Mixin
    private AssignmentOptions assignment;

    @Mixin
    private SubstrateOption substrate;

    @Mixin
    private LayersOption layers;

    @Mixin
    private ProcessOption process;

    @Mixin
    private UnderbaseOptions underbase;

    @Option(names = "--by", paramLabel = "NAME", description = "Who approved. Default: no one is named.")
    private String by;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = "Record to write. Default: ART" + Approvals.ENDING + " beside the artwork.")
    private Path out;

    @Option(names = "--replace", description = "Replace a record that exists already.")
    private boolean replace;

    ApproveCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (by != null && (by.isBlank() || by.length() > Approval.LONGEST_NAME)) {
            throw new ParameterException(
                    spec.commandLine(), "--by is a name of 1 to " + Approval.LONGEST_NAME + " characters");
        }
        Substrate on = substrate.substrate();
        Arrangement arrangement = assignment.arrangement();
        PrintProcess printing = process.process();
        Path target = out == null ? Approvals.beside(file.path().toAbsolutePath()) : out;
        try (Job job = file.open(condition.choices(library.file(), arrangement), console)) {
            PageJob read = job.page(page.page(), console.cancel(), console.progress());
            Stack usual = PrintedStack.arranged(read.stackOn(on), arrangement);
            Stack printed = PrintedStack.of(read.stackOn(on), arrangement, printing, underbase.underbase());
            Approvals.write(
                    new Approvals.Order(
                            job,
                            page.page(),
                            on,
                            printedBy(arrangement, usual, printed),
                            Approvals.technicalInks(read),
                            printed.underbase() == null
                                    ? OptionalDouble.empty()
                                    : OptionalDouble.of(
                                            printed.underbase().white().opacity()),
                            Optional.ofNullable(printing).map(PrintProcess::name),
                            true,
                            layers.on(read.displayList()),
                            Optional.empty(),
                            Optional.ofNullable(by).map(String::strip),
                            OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS),
                            target,
                            replace),
                    console.cancel(),
                    console.progress());
            console.say(target + ": page " + page.page() + " of " + file.path().getFileName() + " on " + on.name()
                    + ", as approved" + (by == null ? "." : " by " + by.strip() + "."));
            read.notes().forEach(note -> console.say("note: " + note));
            console.say(Proofs.CAUTION);
        }
        return ExitCode.FINE;
    }

    /** A record states numbers, not the process they come from, whose usual values may be others one day. */
    private static Arrangement printedBy(Arrangement arrangement, Stack usual, Stack printed) {
        Arrangement out = arrangement;
        for (int plane = 0; plane < usual.inks().size(); plane++) {
            double opacity = printed.inks().get(plane).opacity();
            if (opacity != usual.inks().get(plane).opacity()) {
                out = out.withOpacity(printed.inks().get(plane).ink().name(), Optional.of(opacity));
            }
        }
        return out.over(Optional.ofNullable(printed.underbase()).map(WhiteBase::of));
    }
}
