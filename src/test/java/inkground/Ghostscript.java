package inkground;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.ImageIO;

/** Ghostscript's separations of the first page of a PDF, with overprint. */
public final class Ghostscript {
    private Ghostscript() {}

    /** @return whether it is installed */
    public static boolean present() throws InterruptedException {
        return OutsideTool.present("gs", "--version");
    }

    /**
     * Writes {@code NAME(INK).tif} for each ink beside a picture of all of them; grey, 255 is no ink.
     *
     * @param tif picture of all inks, NAME.tif
     * @param dpi pixels per inch
     * @param over times as fine it is rendered, then averaged down
     * @param options more of its own
     * @throws AssertionError with what it says, if it fails
     */
    public static void separate(Path pdf, Path tif, int dpi, int over, String... options)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                "gs",
                "-q",
                "-dBATCH",
                "-dNOPAUSE",
                "-dSAFER",
                "-sDEVICE=tiffsep",
                "-r" + dpi * over,
                "-dDownScaleFactor=" + over,
                "-sCompression=lzw",
                "-dOverprint=/enable",
                "-dFirstPage=1",
                "-dLastPage=1"));
        command.addAll(List.of(options));
        command.addAll(List.of("-sOutputFile=" + tif, pdf.toString()));
        OutsideTool.run(command.toArray(String[]::new));
    }

    /**
     * Separates as above in a folder of its own.
     *
     * @param work folder in which that one is made
     * @return planes by the names of their inks; 255 is no ink
     */
    public static Map<String, BufferedImage> separations(Path pdf, Path work, int dpi, int over, String... options)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory(work, "gs");
        separate(pdf, folder.resolve("p.tif"), dpi, over, options);
        Map<String, BufferedImage> planes = new TreeMap<>();
        try (DirectoryStream<Path> made = Files.newDirectoryStream(folder, "p(*).tif")) {
            for (Path plane : made) {
                String name = plane.getFileName().toString();
                planes.put(name.substring(2, name.lastIndexOf(')')), ImageIO.read(plane.toFile()));
            }
        }
        return planes;
    }
}
