package inkground.cli;

import inkground.base.Cancel;
import java.io.ByteArrayInputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;

/** One run of the command line in this process. */
record Run(int code, String out, String err) {
    static Run of(Object... args) {
        return of(new Cancel(), args);
    }

    static Run of(Cancel cancel, Object... args) {
        return of(cancel, "", args);
    }

    /** With text on standard input. */
    static Run reading(String in, Object... args) {
        return of(new Cancel(), in, args);
    }

    private static Run of(Cancel cancel, String in, Object[] args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            words[i] = args[i].toString();
        }
        ByteArrayInputStream bytes = new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8));
        int code = Main.run(words, new Console(bytes, new PrintWriter(out), new PrintWriter(err), false, cancel));
        return new Run(code, out.toString(), err.toString());
    }
}
