package inkground.handoff;

import inkground.Ghostscript;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * Writes the clean files of all cases, or of those named, and what Ghostscript and Poppler make of them, which are committed. Planes
 * in which nothing is printed are left out, and so are files that carry a font of 200 kB.
 */
final class CleanReferences {
    private static final int LARGE_BYTES = 20_000;
    static final int OVER = 4;

    private CleanReferences() {}

    /**
     * @param names of cases, with or without their dashes; none for all
     * @throws Exception if one cannot be written
     */
    public static void main(String[] names) throws Exception {
        Path work = Files.createTempDirectory("clean");
        List<String> wanted =
                List.of(names).stream().map(n -> n.replace(' ', '-')).toList();
        for (CleanFileTest.Case one : CleanFileTest.cases().toList()) {
            if (wanted.isEmpty() || wanted.contains(one.fileName())) {
                write(one, work);
            }
        }
        Files.delete(work);
    }

    private static void write(CleanFileTest.Case one, Path work) throws Exception {
        Path art = one.pdf().write(work.resolve("art.pdf"));
        Path clean = CleanFileTest.write(art, one.bare(), work.resolve(one.fileName() + ".pdf"));
        Ghostscript.separate(clean, work.resolve(one.fileName() + ".tif"), OtherRenderers.DPI, OVER);
        OtherRenderers.picture(clean, work.resolve(one.fileName()));
        try (DirectoryStream<Path> made = Files.newDirectoryStream(work)) {
            for (Path file : made) {
                keep(file, one);
            }
        }
    }

    private static void keep(Path file, CleanFileTest.Case one) throws IOException {
        String name = file.getFileName().toString();
        boolean keep = name.endsWith(".pdf")
                ? !name.equals("art.pdf") && Files.size(file) < LARGE_BYTES
                : name.endsWith(".png") ? one.popplerKnowsItsUnit() : name.endsWith(").tif") && printsAnything(file);
        Path kept = CleanFileTest.REFERENCE.resolve(name);
        Files.deleteIfExists(kept);
        if (keep) {
            Files.copy(file, kept);
        }
        Files.delete(file);
    }

    private static boolean printsAnything(Path separation) throws IOException {
        BufferedImage film = ImageIO.read(separation.toFile());
        for (int y = 0; y < film.getHeight(); y++) {
            for (int x = 0; x < film.getWidth(); x++) {
                if (film.getRaster().getSample(x, y, 0) < 255) {
                    return true;
                }
            }
        }
        return false;
    }
}
