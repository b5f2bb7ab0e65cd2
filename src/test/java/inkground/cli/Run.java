package inkground.cli;

import inkground.base.Cancel;
import java.io.PrintWriter;
import java.io.StringWriter;

/** One run of the command line in this process. */
record Run(int code, String out, String err) {
    static Run of(Object... args) {
        return of(new Cancel(), args);
    }

    static Run of(Cancel cancel, Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = new String[args.length];
        for (int i = 0; i < args.length; i++) {
            words[i] = args[i].toString();
        }
        int code = Main.run(words, new Console(new PrintWriter(out), new PrintWriter(err), false, cancel));
        return new Run(code, out.toString(), err.toString());
    }
}
