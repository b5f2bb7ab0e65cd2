package inkground.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Draws all demo artwork. Run it with a folder to write the files of {@code demo/} again. */
public final class DemoArtwork {
    /** File name of the poster. */
    public static final String POSTER = "regatta-poster.pdf";
    /** File name of the shirt. */
    public static final String SHIRT = "regatta-shirt.pdf";

    private DemoArtwork() {}

    /**
     * @return each file's name and its bytes; the same on every run with the same libraries
     * @throws IOException if the bundled font cannot be read
     */
    public static Map<String, byte[]> draw() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(POSTER, RegattaPoster.pdf());
        files.put(SHIRT, RegattaShirt.pdf());
        return files;
    }

    /**
     * Writes the files, replacing those that are there.
     *
     * @param args the folder
     * @throws IOException if it cannot be written
     */
    public static void main(String[] args) throws IOException {
        if (args.length != 1) {
            throw new IllegalArgumentException("name the folder to write the artwork into");
        }
        Path folder = Files.createDirectories(Path.of(args[0]));
        for (Map.Entry<String, byte[]> file : draw().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue());
        }
    }
}
