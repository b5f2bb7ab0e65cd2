package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import inkground.artwork.Artwork;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.geometry.Box;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our page boxes beside Poppler's pdfinfo, which prints them as the file has them: not turned, y up. */
class PdfinfoBoxesTest {
    private static final Path REFERENCE = Path.of("src/test/resources/reference/pdfinfo");
    private static final Pattern BOX =
            Pattern.compile("Page +(\\d+) (\\w+)Box: +(-?[\\d.]+) +(-?[\\d.]+) +(-?[\\d.]+) +(-?[\\d.]+)");
    private static final Pattern TURN = Pattern.compile("Page +(\\d+) rot: +(\\d+)");

    @TempDir
    Path folder;

    @Test
    void pageBoxesAreThoseOfTheCommittedReference() throws Exception {
        compare(REFERENCE.resolve("boxes.txt"));
    }

    @Test
    void pageBoxesAreThoseOfTheInstalledPdfinfo() throws Exception {
        assumeTrue(OutsideTool.present("pdfinfo", "-v"), "pdfinfo is not installed");
        OutsideTool.run("sh", "src/test/reference/pdfinfo.sh", folder.toString());
        compare(folder.resolve("boxes.txt"));
    }

    private static void compare(Path printed) throws Exception {
        Map<String, Box> boxes = new HashMap<>();
        Map<Integer, Integer> turns = new HashMap<>();
        for (String line : Files.readAllLines(printed)) {
            Matcher box = BOX.matcher(line);
            Matcher turn = TURN.matcher(line);
            if (box.find()) {
                boxes.put(box.group(1) + box.group(2).toUpperCase(Locale.ROOT), box(box));
            } else if (turn.find()) {
                turns.put(Integer.valueOf(turn.group(1)), Integer.valueOf(turn.group(2)));
            }
        }
        assertThat(boxes).hasSize(15);
        try (Artwork artwork = PdfArtwork.open(REFERENCE.resolve("boxes.pdf"), new Cancel(), Progress.NONE)) {
            for (PageInfo page : artwork.pages()) {
                assertThat(page.rotation()).isEqualTo(turns.get(page.number()));
                Box media = boxes.get(page.number() + "MEDIA");
                for (PageBox which : PageBox.values()) {
                    Box theirs = boxes.get(page.number() + which.name());
                    same(page.number() + " " + which, page.box(which), turned(theirs, media, page.rotation()));
                }
            }
        }
    }

    private static Box box(Matcher m) {
        return new Box(number(m, 3), number(m, 4), number(m, 5), number(m, 6));
    }

    private static double number(Matcher m, int group) {
        return Double.parseDouble(m.group(group));
    }

    /** Into page space: turned clockwise, origin at the top left of the turned media box, y down. */
    private static Box turned(Box b, Box media, int rotation) {
        return switch (rotation) {
            case 90 -> new Box(b.y0() - media.y0(), b.x0() - media.x0(), b.y1() - media.y0(), b.x1() - media.x0());
            case 180 -> new Box(media.x1() - b.x1(), b.y0() - media.y0(), media.x1() - b.x0(), b.y1() - media.y0());
            case 270 -> new Box(media.y1() - b.y1(), media.x1() - b.x1(), media.y1() - b.y0(), media.x1() - b.x0());
            default -> new Box(b.x0() - media.x0(), media.y1() - b.y1(), b.x1() - media.x0(), media.y1() - b.y0());
        };
    }

    private static void same(String what, Box ours, Box theirs) {
        assertThat(ours.x0()).as(what + " left").isCloseTo(theirs.x0(), within(0.01));
        assertThat(ours.y0()).as(what + " top").isCloseTo(theirs.y0(), within(0.01));
        assertThat(ours.x1()).as(what + " right").isCloseTo(theirs.x1(), within(0.01));
        assertThat(ours.y1()).as(what + " bottom").isCloseTo(theirs.y1(), within(0.01));
    }
}
