package inkground.bench;

import inkground.app.ArtworkFiles;
import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.ScreenPicture;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/**
 * Our pictures of SVG files, painted from the display list as a screen would show them, beside reference pictures: {@code NAME.png}
 * beside {@code NAME.svg}, laid on white. Writes a Markdown table ({@link Difference}). A tool for whoever looks into a
 * difference; {@code SvgPicturesTest} asks for the same of a few files of our own.
 */
public final class SvgTable {
    private SvgTable() {}

    /**
     * Runs.
     *
     * @param args folders of SVG files and their pictures; {@code --pictures FOLDER} to keep ours
     */
    public static void main(String[] args) throws IOException {
        Path keep = null;
        System.out.println("| file | red | green | blue | | said on the page |\n|---|---|---|---|---|---|");
        for (int i = 0; i < args.length; i++) {
            if (args[i].equals("--pictures")) {
                keep = Files.createDirectories(Path.of(args[++i]));
                continue;
            }
            for (Path file : svgs(Path.of(args[i]))) {
                System.out.println(row(file, keep));
            }
        }
    }

    private static List<Path> svgs(Path folder) throws IOException {
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.filter(p -> p.toString().endsWith(".svg")).sorted().toList();
        }
    }

    private static String row(Path file, Path keep) throws IOException {
        String name = file.getFileName().toString();
        Path reference = file.resolveSibling(name.replaceFirst("svg$", "png"));
        if (!Files.exists(reference)) {
            return "| " + name + " | | | | no reference | |";
        }
        int[][][] theirs = ScreenPicture.read(reference);
        try (Artwork artwork = ArtworkFiles.open(file, new Cancel(), Progress.NONE)) {
            ScreenPicture ours = ScreenPicture.of(artwork, theirs[0][0].length);
            if (keep != null) {
                write(ours, keep.resolve(name.replaceFirst("svg$", "png")));
            }
            List<String> figures = new ArrayList<>();
            boolean over = false;
            for (Difference d : ours.beside(theirs)) {
                figures.add(String.format(Locale.ROOT, "%.2f, %.2f %%", d.mean(), d.farPercent()));
                over |= d.over();
            }
            String said = ours.list().approximations().stream()
                    .map(Approximation::message)
                    .collect(Collectors.joining("; "));
            return "| " + name + " | " + String.join(" | ", figures) + " | " + (over ? "over" : "") + " | " + said
                    + " |";
        } catch (Refusal e) {
            return "| " + name + " | | | | refused | " + e.getMessage() + " |";
        }
    }

    private static void write(ScreenPicture picture, Path file) throws IOException {
        int height = picture.channels()[0].length;
        int width = picture.channels()[0][0].length;
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.setRGB(x, y, picture.rgb(x, y));
            }
        }
        ImageIO.write(image, "png", file.toFile());
    }
}
