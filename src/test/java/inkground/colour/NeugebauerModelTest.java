package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Patch;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NeugebauerModelTest {
    @Test
    void primaries_and_ramps_alone_predict_all_other_patches_of_the_bundled_data() throws Refusal {
        ModelFit fogra = ModelFit.of(PrintConditions.bundledData("FOGRA39L"));
        assertThat(fogra.patches()).isEqualTo(1493);
        assertThat(fogra.meanDe00()).isLessThan(0.60);
        assertThat(fogra.p95De00()).isLessThan(1.40);
        ModelFit tr006 = ModelFit.of(PrintConditions.bundledData("TR006"));
        assertThat(tr006.meanDe00()).isLessThan(0.50);
        assertThat(tr006.p95De00()).isLessThan(1.10);
    }

    @Test
    void a_profile_of_another_condition_is_predicted_too() throws Exception {
        // A profile of another printing condition, read at the patches of FOGRA39L. Its table is coarse (8 KB), and
        // what lies
        // between its nodes is not measured, so more than this cannot be asked of a model.
        IccReader profile = IccReader.open(LittleCmsTest.profile(), 4);
        Characterisation data = PrintConditions.bundledData("FOGRA39L");
        List<Patch> patches = data.patches().stream()
                .map(p -> new Patch(p.tints(), profile.toLab(floats(p.tints()))))
                .toList();
        ModelFit other = ModelFit.of(new Characterisation("other", "profile", data.inks(), patches));
        assertThat(other.meanDe00()).isLessThan(1.5);
    }

    private static float[] floats(double[] tints) {
        float[] out = new float[tints.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) tints[i];
        }
        return out;
    }

    @Test
    void the_patches_it_is_built_from_come_back() throws Refusal {
        Characterisation data = PrintConditions.bundledData("FOGRA39L");
        NeugebauerModel model = NeugebauerModel.of(data);
        for (Patch patch : data.patches()) {
            boolean primary =
                    patch.tints()[0] % 1 + patch.tints()[1] % 1 + patch.tints()[2] % 1 + patch.tints()[3] % 1 == 0;
            if (primary) {
                assertThat(difference(model, patch)).isLessThan(0.02);
            } else if (NeugebauerModel.usesPatch(patch.tints())) {
                // a weak band of a ramp follows the strongest one's curve, so a ramp is close, not exact
                assertThat(difference(model, patch)).isLessThan(0.7);
            }
        }
    }

    @Test
    void one_ink_with_two_patches_mixes_with_the_yule_nielsen_exponent() throws Refusal {
        Lab paper = new Lab(100, 0, 0);
        Lab solid = Cie.xyzToLab(0.04 * 0.9642, 0.04, 0.04 * 0.8249);
        Characterisation data =
                new Characterisation("grey", "by hand", List.of("Grey"), List.of(patch(paper, 0), patch(solid, 1)));
        double[] xyz = new double[3];
        NeugebauerModel.of(data).toXyz(new double[] {0.5}, xyz);
        // By hand, all bands 1 and 0.04, n = 1.95, 2.17 and 2.02
        double[] bands = new double[3];
        Bands.STANDARD.fromXyz(xyz, bands);
        assertThat(bands[0]).isCloseTo(Math.pow(0.5 + 0.5 * Math.pow(0.04, 1 / 1.95), 1.95), within(1e-4));
        assertThat(bands[1]).isCloseTo(Math.pow(0.5 + 0.5 * Math.pow(0.04, 1 / 2.17), 2.17), within(1e-4));
        assertThat(bands[2]).isCloseTo(Math.pow(0.5 + 0.5 * Math.pow(0.04, 1 / 2.02), 2.02), within(1e-4));
    }

    @Test
    void five_inks_are_mixed_from_their_32_primaries() throws Refusal {
        List<Patch> patches = new ArrayList<>();
        for (int p = 0; p < 32; p++) {
            double[] tints = new double[5];
            for (int i = 0; i < 5; i++) {
                tints[i] = p >> i & 1;
            }
            patches.add(new Patch(tints, new Lab(95 - 15.0 * Integer.bitCount(p), p % 7 - 3, p % 5 - 2)));
        }
        Characterisation data = new Characterisation("five", "made up", List.of("A", "B", "C", "D", "E"), patches);
        NeugebauerModel model = NeugebauerModel.of(data);
        for (Patch patch : patches) {
            assertThat(difference(model, patch)).isLessThan(0.02);
        }
    }

    @Test
    void a_missing_primary_is_named() {
        Characterisation data = PrintConditions.bundledData("TR006");
        List<Patch> fewer = data.patches().stream()
                .filter(p -> !java.util.Arrays.equals(p.tints(), new double[] {1, 0, 1, 0}))
                .toList();
        assertThatThrownBy(() -> NeugebauerModel.of(new Characterisation("few", "", data.inks(), fewer)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("few")
                .hasMessageContaining("Cyan + Yellow");
    }

    private static Patch patch(Lab lab, double... tints) {
        return new Patch(tints, lab);
    }

    private static double difference(NeugebauerModel model, Patch patch) {
        double[] xyz = new double[3];
        model.toXyz(patch.tints(), xyz);
        return Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), patch.lab());
    }
}
