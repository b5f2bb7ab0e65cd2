package inkground.colour;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Makes the bundled grids of process tints anew; to be run after a change to the ink model, its inverse or the data. */
public final class SrgbGridMaker {
    private SrgbGridMaker() {}

    /** @param args none; run in the project's folder */
    public static void main(String[] args) throws Exception {
        for (String name : PrintConditions.BUNDLED) {
            write(name, Path.of("src/main/resources/inkground/colour"));
        }
    }

    private static void write(String name, Path folder) throws IOException, inkground.base.Refusal {
        SrgbGrid grid = SrgbGrid.compute(MeasuredCondition.of(PrintConditions.bundledData(name)));
        try (OutputStream out = Files.newOutputStream(folder.resolve(name + ".srgb"))) {
            grid.write(out);
        }
    }
}
