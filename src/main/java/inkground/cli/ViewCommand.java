package inkground.cli;

import inkground.base.Refusal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the viewer. */
@Command(name = "view", description = "Open the viewer, on FILE if one is given.")
final class ViewCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "The artwork, a PDF.")
    private Path file;

    ViewCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        if (!Screen.show(Optional.ofNullable(file), console)) {
            throw new Refusal(
                    "there is no screen to open a window on. Use 'inkground proof' to write a picture instead");
        }
        return ExitCode.FINE;
    }
}
