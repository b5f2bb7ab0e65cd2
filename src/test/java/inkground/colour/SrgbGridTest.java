package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SrgbGridTest {
    private static final int LAST = SrgbGrid.NODES - 1;

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void the_bundled_grid_is_what_a_search_finds_today(String name) throws Exception {
        SrgbGrid grid = PrintConditions.bundledGrid(name);
        // Made of the data anew, so that its searches know nothing of the grid.
        RgbToCmyk anew = new RgbToCmyk(MeasuredCondition.of(PrintConditions.bundledData(name)));
        assertThat(grid.blackY()).isCloseTo(anew.blackY(), within(1e-6));
        Random random = new Random(33);
        float[] stored = new float[4];
        float[] found = new float[4];
        for (int i = 0; i < 400; i++) {
            // The corners first, then anywhere.
            int r = i < 8 ? LAST * (i >> 2) : random.nextInt(SrgbGrid.NODES);
            int g = i < 8 ? LAST * (i >> 1 & 1) : random.nextInt(SrgbGrid.NODES);
            int b = i < 8 ? LAST * (i & 1) : random.nextInt(SrgbGrid.NODES);
            grid.node(r, g, b, stored);
            anew.convert((float) r / LAST, (float) g / LAST, (float) b / LAST, found);
            for (int ink = 0; ink < 4; ink++) {
                assertThat(stored[ink])
                        .as("node %d %d %d, ink %d; after a change to the model, run SrgbGridMaker", r, g, b, ink)
                        .isCloseTo(found[ink], within(0.002f));
            }
        }
    }

    @Test
    void white_is_no_ink_exactly() {
        float[] white = {1, 1, 1, 1};
        PrintConditions.bundledGrid("FOGRA39L").node(LAST, LAST, LAST, white);
        assertThat(white).containsExactly(0, 0, 0, 0);
    }

    @Test
    void what_is_written_is_read_again() throws IOException {
        SrgbGrid grid = PrintConditions.bundledGrid("TR006");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        grid.write(bytes);
        SrgbGrid again = SrgbGrid.read(new ByteArrayInputStream(bytes.toByteArray()));
        float[] a = new float[4];
        float[] b = new float[4];
        for (int i = 0; i < SrgbGrid.NODES; i++) {
            grid.node(i, LAST - i, i / 2, a);
            again.node(i, LAST - i, i / 2, b);
            assertThat(b).containsExactly(a);
        }
        assertThat(bytes.size()).isLessThan(100_000);
        assertThatThrownBy(() -> SrgbGrid.read(new ByteArrayInputStream(new byte[100])))
                .isInstanceOf(IOException.class);
    }

    @Test
    void a_search_that_starts_at_the_grid_ends_where_one_from_the_seeds_does() throws Exception {
        MeasuredCondition seeds = MeasuredCondition.of(PrintConditions.bundledData("FOGRA39L"));
        PrintCondition grid = PrintConditions.bundled("FOGRA39L");
        Random random = new Random(5);
        double[] xyz = new double[3];
        float[] a = new float[4];
        float[] b = new float[4];
        int apart = 0;
        for (int i = 0; i < 500; i++) {
            Lab lab = Srgb.toLab(random.nextDouble(), random.nextDouble(), random.nextDouble());
            seeds.labToCmyk(lab.L(), lab.a(), lab.b(), a);
            grid.labToCmyk(lab.L(), lab.a(), lab.b(), b);
            seeds.cmykToXyz(a, xyz);
            Lab one = Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
            seeds.cmykToXyz(b, xyz);
            Lab other = Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
            double d = Cie.deltaE00(one, other);
            assertThat(d).as(lab.toString()).isLessThan(1.5);
            apart += d > 0.3 ? 1 : 0;
        }
        assertThat(apart).isLessThan(10);
    }
}
