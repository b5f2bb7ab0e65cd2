package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Cancel;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PlanePaletteTest {
    private static InkSet inks(int count) {
        return new InkSet(
                IntStream.range(0, count).mapToObj(i -> Ink.named("Ink " + i)).toList());
    }

    private static void assertThatItGivesBack(InkPlanes planes) {
        PlanePalette palette = PlanePalette.of(planes, new Cancel()).orElseThrow();
        InkPlanes vectors = palette.vectors();
        int[] ofVector = new int[vectors.width() * vectors.height()];
        int[] pixels = new int[planes.width() * planes.height()];
        for (int plane = 0; plane < planes.planes(); plane++) {
            for (int i = 0; i < ofVector.length; i++) {
                ofVector[i] = vectors.get(plane, i % InkPlanes.CELL_W, i / InkPlanes.CELL_W);
            }
            palette.spread(ofVector, pixels);
            for (int i = 0; i < pixels.length; i++) {
                assertThat(pixels[i]).isEqualTo(planes.get(plane, i % planes.width(), i / planes.width()));
            }
        }
    }

    @Test
    void everyPixelGetsItsOwnVectorBackForAnyNumberOfInks() {
        Random random = new Random(20261125);
        for (int count : List.of(1, 4, 6, 7, 15)) {
            PlateRequest request = new PlateRequest(1, 3, 5, 3 + 150, 5 + 70, true, Set.of());
            int[] few = random.ints(40, 0, 256).toArray();
            assertThatItGivesBack(PlanesForTests.of(
                    inks(count), request, (plane, x, y) -> few[Math.floorMod(x * 31 + y * 17 + plane * 7, 40)]));
        }
    }

    @Test
    void cellsOfOneValueAreIndexedToo() {
        PlateRequest request = new PlateRequest(1, 0, 0, 130, 40, true, Set.of());
        InkPlanes.Cell[] cells = new InkPlanes.Cell[6];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = new InkPlanes.Cell(new byte[] {(byte) (i * 40), (byte) 255, 0, 7}, new byte[4][]);
        }
        assertThatItGivesBack(new InkPlanes(inks(1), request, cells));
    }

    @Test
    void whatACellHoldsBeyondTheRegionCountsForNothing() {
        PlateRequest request = new PlateRequest(1, 0, 0, 6, 3, true, Set.of());
        byte[] dense = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
        for (int y = 0; y < 3; y++) {
            dense[y * InkPlanes.CELL_W] = 9;
            dense[y * InkPlanes.CELL_W + 5] = 20;
            dense[(y + 1) * InkPlanes.CELL_W - 1] = 9; // as the pixel that the next row begins with
        }
        InkPlanes.Cell cell = new InkPlanes.Cell(new byte[4], new byte[][] {dense, null, null, null});
        assertThatItGivesBack(new InkPlanes(inks(1), request, new InkPlanes.Cell[] {cell}));
    }

    @Test
    void aRegionOfTooManyVectorsHasNone() {
        PlateRequest request = new PlateRequest(1, 0, 0, 300, 300, true, Set.of());
        InkPlanes planes = PlanesForTests.of(
                inks(1), request, (plane, x, y) -> plane == 0 ? x & 255 : plane == 1 ? y & 255 : x >> 8 << 4 | y >> 8);
        assertThat(PlanePalette.of(planes, new Cancel())).isEmpty();
    }
}
