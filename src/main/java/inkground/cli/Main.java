package inkground.cli;

import inkground.base.Cancel;
import inkground.base.Refusal;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import java.util.logging.Handler;
import java.util.logging.Logger;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Starts the program. */
public final class Main {
    private Main() {}

    /**
     * Runs one command and ends the process with its exit code.
     *
     * @param args as typed
     */
    public static void main(String[] args) {
        // Standard output is UTF-8 whatever the locale says: JSON has to be.
        PrintWriter out = writer(FileDescriptor.out);
        PrintWriter err = writer(FileDescriptor.err);
        Console console = new Console(System.in, out, err, errIsTerminal(), new Cancel());
        Interrupt interrupt = Interrupt.watch(console);
        int code = run(args, console);
        interrupt.finished();
        System.exit(code);
    }

    /** Runs one command in this process; never throws for what the user or a file did. */
    static int run(String[] args, Console console) {
        boolean verbose = java.util.Arrays.asList(args).contains("--verbose");
        if (!verbose) {
            quietLibraries();
        }
        try {
            int code = commandLine(console).execute(args);
            console.out().flush();
            return code;
        } catch (OutOfMemoryError e) {
            console.tell("this needs more memory than Java was given. Lower --dpi, or allow more by setting"
                    + " INKGROUND_JAVA_OPTS=-Xmx8g");
            return ExitCode.FINDINGS;
        } catch (StackOverflowError e) {
            return unexpected(e, args, verbose, console);
        }
    }

    private static CommandLine commandLine(Console console) {
        CommandLine root = new CommandLine(new RootCommand())
                .addSubcommand(new ViewCommand(console))
                .addSubcommand(new InksCommand(console))
                .addSubcommand(new ColoursCommand(console))
                .addSubcommand(new KnockoutCommand(console))
                .addSubcommand(new SeparateCommand(console))
                .addSubcommand(new ProofCommand(console))
                .addSubcommand(new LineUpCommand(console))
                .addSubcommand(new ApproveCommand(console))
                .addSubcommand(new CompareCommand(console))
                .addSubcommand(new SubstratesCommand(console))
                .addSubcommand(new CutsCommand(console))
                .addSubcommand(new ConditionCommand(console))
                .addSubcommand(new PatchCommand(console))
                .addSubcommand(new DemoCommand(console));
        root.setOut(console.out());
        root.setErr(console.err());
        root.setUsageHelpAutoWidth(true);
        root.setCaseInsensitiveEnumValuesAllowed(true);
        root.setParameterExceptionHandler((e, args) -> wrongUsage(e, console));
        root.setExecutionExceptionHandler((e, line, parsed) -> failed(
                e,
                parsed.originalArgs().toArray(String[]::new),
                parsed.originalArgs().contains("--verbose"),
                console));
        return root;
    }

    private static int wrongUsage(ParameterException e, Console console) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        console.tell(e.getMessage() + " (see '" + command + " --help')");
        return ExitCode.USAGE;
    }

    private static int failed(Exception e, String[] args, boolean verbose, Console console) {
        if (e instanceof Refusal) {
            console.tell(e.getMessage());
            if (verbose) {
                e.printStackTrace(console.err());
            }
            return ExitCode.FINDINGS;
        }
        if (e instanceof CancellationException) {
            console.tell("cancelled; nothing was left half-written");
            return ExitCode.CANCELLED;
        }
        return unexpected(e, args, verbose, console);
    }

    private static int unexpected(Throwable e, String[] args, boolean verbose, Console console) {
        if (verbose) {
            e.printStackTrace(console.err());
            console.tell("something went wrong inside the program (see above)");
            return ExitCode.FINDINGS;
        }
        try {
            Path log = FailureLog.write(e, Version.text(), args);
            console.tell("something went wrong inside the program. What happened is in " + log);
        } catch (IOException unwritable) {
            console.tell("something went wrong inside the program (" + e + "). Run it again with --verbose for more");
        }
        return ExitCode.FINDINGS;
    }

    /** Libraries log doubts about files; the reader turns those that matter into words of its own. */
    private static void quietLibraries() {
        Logger root = Logger.getLogger("");
        for (Handler handler : root.getHandlers()) {
            root.removeHandler(handler);
        }
    }

    private static PrintWriter writer(FileDescriptor descriptor) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(descriptor), StandardCharsets.UTF_8));
    }

    /** The launcher knows; without it, a console on both ends is the best sign Java 17 has. */
    private static boolean errIsTerminal() {
        String told = System.getProperty("inkground.terminal");
        return told == null ? System.console() != null : told.equals("yes");
    }
}
