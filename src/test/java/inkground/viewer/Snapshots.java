package inkground.viewer;

import static org.assertj.core.api.Assertions.fail;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;

/**
 * Compares pictures with references. The window paints in software and the fonts are left out, so that a picture is the same on
 * all machines but for the last digit of a sine or of a mixed edge: a component may differ by {@value #NEAR} of 255, and
 * {@value #MOST_PER_MILLE} in a thousand pixels by more. A line that is missing, or lies a pixel off, is more than that.
 */
final class Snapshots {
    /** Set to {@code rewrite} the references are written anew, to be looked at before they are kept. */
    static final String PROPERTY = "inkground.snapshots";

    static final int NEAR = 2;
    static final double MOST_PER_MILLE = 1;

    private final Path references;
    private final Path results;

    /**
     * @param references folder of the references
     * @param results folder for what is to be looked at after a failure
     */
    Snapshots(Path references, Path results) {
        this.references = references;
        this.results = results;
    }

    /** @return those of the program */
    static Snapshots usual() {
        return new Snapshots(
                Path.of("src", "test", "resources", "inkground", "viewer", "snapshots"),
                Path.of("target", "snapshots"));
    }

    private record Difference(int pixels, int largest, int x, int y, BufferedImage picture) {}

    /** Fails if a picture is not like its reference. */
    void check(String name, BufferedImage actual) throws IOException {
        Path reference = references.resolve(name + ".png");
        if ("rewrite".equals(System.getProperty(PROPERTY))) {
            write(actual, reference);
            return;
        }
        String advice = "If the new picture is right, write the references anew with -D" + PROPERTY + "=rewrite.";
        Path got = results.resolve(name + "-actual.png");
        if (!Files.exists(reference)) {
            write(actual, got);
            fail("%s has no reference %s. The picture is %s. %s", name, reference, got, advice);
        }
        BufferedImage expected = ImageIO.read(reference.toFile());
        if (expected.getWidth() != actual.getWidth() || expected.getHeight() != actual.getHeight()) {
            write(actual, got);
            fail(
                    "%s is %d × %d px, its reference %d × %d.%nactual: %s%nexpected: %s%n%s",
                    name,
                    actual.getWidth(),
                    actual.getHeight(),
                    expected.getWidth(),
                    expected.getHeight(),
                    got,
                    reference,
                    advice);
        }
        Difference off = difference(actual, expected);
        int pixels = actual.getWidth() * actual.getHeight();
        if (off.pixels() > pixels * MOST_PER_MILLE / 1000) {
            Path copy = results.resolve(name + "-expected.png");
            Path picture = results.resolve(name + "-difference.png");
            write(actual, got);
            write(expected, copy);
            write(off.picture(), picture);
            fail(String.format(
                    Locale.ROOT,
                    "%s: %d of %d pixels (%.2f %%) differ by more than %d, at most by %d, at (%d, %d); let pass are %.2f %%."
                            + "%nactual: %s%nexpected: %s%ndifference: %s%n%s",
                    name,
                    off.pixels(),
                    pixels,
                    100.0 * off.pixels() / pixels,
                    NEAR,
                    off.largest(),
                    off.x(),
                    off.y(),
                    MOST_PER_MILLE / 10,
                    got,
                    copy,
                    picture,
                    advice));
        }
    }

    /** Pixels that are like the reference are drawn faintly, the others in red, the stronger the more they differ. */
    private static Difference difference(BufferedImage actual, BufferedImage expected) {
        BufferedImage picture = new BufferedImage(actual.getWidth(), actual.getHeight(), BufferedImage.TYPE_INT_RGB);
        int pixels = 0;
        int largest = -1;
        int atX = 0;
        int atY = 0;
        for (int y = 0; y < actual.getHeight(); y++) {
            for (int x = 0; x < actual.getWidth(); x++) {
                int off = off(actual.getRGB(x, y), expected.getRGB(x, y));
                if (off > largest) {
                    largest = off;
                    atX = x;
                    atY = y;
                }
                int faint = 200 + (expected.getRGB(x, y) >> 8 & 255) / 5;
                pixels += off > NEAR ? 1 : 0;
                picture.setRGB(x, y, off > NEAR ? 128 + off / 2 << 16 : faint * 0x10101);
            }
        }
        return new Difference(pixels, largest, atX, atY, picture);
    }

    private static int off(int a, int b) {
        int most = 0;
        for (int shift = 0; shift < 24; shift += 8) {
            most = Math.max(most, Math.abs((a >> shift & 255) - (b >> shift & 255)));
        }
        return most;
    }

    private static void write(BufferedImage picture, Path file) throws IOException {
        Files.createDirectories(file.getParent());
        ImageIO.write(picture, "png", file.toFile());
    }
}
