package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.ArtworkFiles;
import inkground.artwork.Artwork;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.bench.Difference;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * SVG through the display list and the painter to a picture. The files in {@code svg} say themselves which colour is where, and by
 * which clause: {@code <!-- at X Y #RRGGBB why -->}, pixels of a picture at 96 to the inch.
 */
class SvgPicturesTest {
    private static final Pattern AT = Pattern.compile("<!-- at (\\d+) (\\d+) #([0-9a-f]{6})( [^>]*)?-->");
    private static final int TOLERANCE = 2;
    private static final int LEAST_POINTS = 35;

    /** Explained in src/docs/svg-compared.md. */
    private static final Set<String> DIFFER = Set.of("resvg__icc-color.svg", "resvg__multiple-coordinates.svg");

    private record Point(int x, int y, int rgb, String why) {}

    static Stream<Path> files() throws IOException, URISyntaxException {
        Path folder = Path.of(SvgPicturesTest.class.getResource("svg").toURI());
        try (Stream<Path> inside = Files.list(folder)) {
            return inside.filter(p -> p.toString().endsWith(".svg")).sorted().toList().stream();
        }
    }

    private static List<Point> points(Path file) throws IOException {
        List<Point> out = new ArrayList<>();
        Matcher m = AT.matcher(Files.readString(file));
        while (m.find()) {
            out.add(new Point(
                    Integer.parseInt(m.group(1)),
                    Integer.parseInt(m.group(2)),
                    Integer.parseInt(m.group(3), 16),
                    m.group(4) == null ? "" : m.group(4)));
        }
        return out;
    }

    private static ScreenPicture picture(Path file, double pxPerUnit) throws Exception {
        try (Artwork artwork = ArtworkFiles.open(file, new Cancel(), Progress.NONE)) {
            double widthPt = artwork.pages().get(0).box(PageBox.MEDIA).width();
            return ScreenPicture.of(artwork, (int) Math.round(widthPt / 0.75 * pxPerUnit));
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyPointHasTheColourThatTheFileStates(Path file) throws Exception {
        ScreenPicture picture = picture(file, 1);
        for (Point p : points(file)) {
            for (int shift = 16; shift >= 0; shift -= 8) {
                int value = picture.rgb(p.x(), p.y()) >> shift & 255;
                assertThat(Math.abs(value - (p.rgb() >> shift & 255)))
                        .as(
                                "at %d %d:%s expected %06x, is %06x",
                                p.x(), p.y(), p.why(), p.rgb(), picture.rgb(p.x(), p.y()))
                        .isLessThanOrEqualTo(TOLERANCE);
            }
        }
    }

    @Test
    void theFilesStateEnoughPoints() throws Exception {
        int count = 0;
        for (Path file : files().toList()) {
            assertThat(points(file)).as(file.toString()).isNotEmpty();
            count += points(file).size();
        }
        assertThat(count).isGreaterThanOrEqualTo(LEAST_POINTS);
    }

    /** Files of any folder beside pictures of the same names, laid on white: {@code -Dinkground.test.svg=FOLDER}. */
    @Test
    @EnabledIfSystemProperty(named = "inkground.test.svg", matches = ".+")
    void filesAgreeWithTheirReferencePictures() throws Exception {
        try (Stream<Path> inside = Files.list(Path.of(System.getProperty("inkground.test.svg")))) {
            for (Path file : inside.filter(SvgPicturesTest::isToAgree).toList()) {
                String name = file.getFileName().toString();
                int[][][] theirs = ScreenPicture.read(file.resolveSibling(name.replaceFirst("svg$", "png")));
                try (Artwork artwork = ArtworkFiles.open(file, new Cancel(), Progress.NONE)) {
                    ScreenPicture ours = ScreenPicture.of(artwork, theirs[0][0].length);
                    assertThat(ours.beside(theirs)).as(name).noneMatch(Difference::over);
                }
            }
        }
    }

    private static boolean isToAgree(Path file) {
        return file.toString().endsWith(".svg")
                && !DIFFER.contains(file.getFileName().toString());
    }
}
