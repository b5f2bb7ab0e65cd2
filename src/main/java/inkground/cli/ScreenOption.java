package inkground.cli;

import inkground.base.Refusal;
import inkground.colour.DisplayProfile;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The screen that a picture is for. */
final class ScreenOption {
    @Option(
            names = "--screen",
            paramLabel = "FILE",
            description = "ICC profile of the screen that the picture is for; it is embedded. Default: sRGB.")
    private Path file;

    /** @return whether one is named */
    boolean chosen() {
        return file != null;
    }

    /** @return the screen, sRGB where none is named */
    DisplayProfile screen() throws Refusal {
        return file == null ? DisplayProfile.SRGB : DisplayProfile.read(file);
    }
}
