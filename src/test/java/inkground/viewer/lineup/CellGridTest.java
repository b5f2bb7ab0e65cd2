package inkground.viewer.lineup;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CellGridTest {
    @Test
    void twoWidePicturesLieAboveEachOtherInATallPlaceAndSideBySideInAWideOne() {
        assertThat(CellGrid.of(2, 400, 900, 2).columns()).isEqualTo(1);
        assertThat(CellGrid.of(2, 1600, 400, 2).columns()).isEqualTo(2);
    }

    @Test
    void cellsNeverOverlapAndAllLieWithinThePlace() {
        for (int count = 1; count <= 24; count++) {
            CellGrid grid = CellGrid.of(count, 890, 540, 0.75);
            for (int cell = 0; cell < count; cell++) {
                assertThat(grid.x(cell)).isNotNegative();
                assertThat(grid.x(cell) + grid.cellW()).isLessThanOrEqualTo(890);
                assertThat(grid.y(cell) + grid.pictureH() + grid.captionH()).isLessThanOrEqualTo(540);
                assertThat(grid.at(grid.x(cell) + 1, grid.y(cell) + 1)).isEqualTo(cell);
            }
            assertThat(grid.at(1, 1)).isEqualTo(-1);
        }
    }
}
