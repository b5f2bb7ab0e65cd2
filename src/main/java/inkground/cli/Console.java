package inkground.cli;

import inkground.app.JsonText;
import inkground.base.Cancel;
import inkground.base.Progress;
import java.io.InputStream;
import java.io.PrintWriter;
import java.math.BigDecimal;

/**
 * Where a command reads its surroundings from and writes to. Data goes to {@code out}; everything said to a person about
 * the work, to {@code err}.
 */
final class Console {
    private final InputStream in;
    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean terminal;
    private final Cancel cancel;
    private final TerminalProgress progress;
    private volatile boolean endAtOnce;

    /**
     * @param in where data is read from
     * @param terminal whether {@code err} is a terminal, where progress may be drawn
     * @param cancel set when the user wants the work to stop
     */
    Console(InputStream in, PrintWriter out, PrintWriter err, boolean terminal, Cancel cancel) {
        this.in = in;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
        this.cancel = cancel;
        this.progress = new TerminalProgress(err);
    }

    Cancel cancel() {
        return cancel;
    }

    /** To be called where an interrupt has no work to wait for. */
    void endAtOnceWhenInterrupted() {
        endAtOnce = true;
    }

    /** @return whether an interrupt must let running work clear up first */
    boolean clearsUp() {
        return !endAtOnce;
    }

    /** @return progress drawn on the terminal, or none where there is no terminal */
    Progress progress() {
        return terminal ? progress : Progress.NONE;
    }

    InputStream in() {
        return in;
    }

    PrintWriter out() {
        return out;
    }

    PrintWriter err() {
        return err;
    }

    void say(String line) {
        progress.clear();
        out.println(printable(line));
        out.flush();
    }

    /** One line about the work, for a person. */
    void tell(String line) {
        progress.clear();
        err.println("inkground: " + printable(line));
        err.flush();
    }

    void json(Object value) {
        progress.clear();
        out.println(JsonText.of(value));
        out.flush();
    }

    /** @return a number for a person: without decimals where it has none */
    static String decimal(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    /**
     * Text from files made safe to show: names in a hostile file could hold terminal control sequences or line breaks.
     *
     * @return the text with each control character replaced
     */
    static String printable(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .forEach(c -> clean.appendCodePoint(
                        Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? '\uFFFD' : c));
        return clean.toString();
    }
}
