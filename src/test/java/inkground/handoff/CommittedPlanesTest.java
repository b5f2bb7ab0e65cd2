package inkground.handoff;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What the comparison with committed separations lets pass, and what it does not. */
class CommittedPlanesTest {
    private static int[][] committed() throws Exception {
        return CommittedPlanes.separation(Path.of("src/test/resources/reference/clean/on-top-of-ink(Reach Red).tif"));
    }

    private static void compare(int[][] ours) throws Exception {
        CommittedPlanes.compare(ours, committed(), CommittedPlanes.EXACT, CommittedPlanes.FAT_EDGE, "ink");
    }

    @Test
    void aQuarterOfAPixelAtAnEdgePasses() throws Exception {
        int[][] ours = committed();
        for (int y = 0; y < ours.length; y++) {
            ours[y][12] = Math.max(0, ours[y][12] - 64);
        }
        assertThatCode(() -> compare(ours)).doesNotThrowAnyException();
    }

    @Test
    void oneWrongPixelIsNoticed() throws Exception {
        int[][] ours = committed();
        ours[5][5] = 128;
        assertThatThrownBy(() -> compare(ours)).isInstanceOf(AssertionError.class);
    }

    @Test
    void aTintThatIsALittleOffIsNoticed() throws Exception {
        int[][] ours = committed();
        for (int[] row : ours) {
            for (int x = 0; x < row.length; x++) {
                row[x] = Math.max(0, row[x] - CommittedPlanes.EXACT - 1);
            }
        }
        assertThatThrownBy(() -> compare(ours)).hasMessageContaining("away from edges");
    }

    @Test
    void aShiftByHalfAPixelIsNoticed() throws Exception {
        int[][] theirs = committed();
        int[][] ours = committed();
        for (int y = 0; y < ours.length; y++) {
            for (int x = 1; x < ours[0].length; x++) {
                ours[y][x] = (theirs[y][x] + theirs[y][x - 1]) / 2;
            }
        }
        assertThatThrownBy(() -> compare(ours)).hasMessageContaining("at an edge");
    }
}
