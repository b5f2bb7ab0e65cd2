package inkground.cli;

/** What the program tells the shell. */
final class ExitCode {
    /** All is well. */
    static final int FINE = 0;
    /** There are findings, or a file was refused. */
    static final int FINDINGS = 1;
    /** The command itself was wrong. */
    static final int USAGE = 2;
    /** Cancelled by the user: 128 + SIGINT, as shells count. */
    static final int CANCELLED = 130;

    private ExitCode() {}
}
