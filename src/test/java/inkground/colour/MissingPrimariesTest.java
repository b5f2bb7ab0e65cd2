package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Estimate;
import inkground.colour.Characterisation.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is left out of the bundled data is estimated, and compared with what was measured. */
class MissingPrimariesTest {
    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void complete_data_gets_no_estimates(String name) throws Refusal {
        Characterisation data = MissingPrimaries.complete(PrintConditions.bundledData(name));
        assertThat(data.estimates()).isEmpty();
        assertThat(data.gaps()).isEmpty();
        assertThat(data.unseen()).hasSize(1493);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void a_missing_paper_is_continued_from_the_lightest_steps(String name) throws Refusal {
        Characterisation data = without(name, p -> inks(p) == 0);
        assertThat(data.gaps()).singleElement().asString().contains("paper", "lightest steps");
        assertThat(differences(data, name).max()).isLessThan(0.1);
        Characterisation coarse =
                without(name, p -> inks(p) == 0 || Arrays.stream(p.tints()).anyMatch(t -> t > 0 && t < 0.2));
        assertThat(differences(coarse, name).max()).isLessThan(0.8);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void missing_solids_are_continued_from_the_darkest_steps(String name) throws Refusal {
        Characterisation data = without(name, p -> inks(p) == 1 && solid(p));
        assertThat(data.estimates()).hasSize(4);
        assertThat(data.gaps().get(0)).contains("Cyan from its steps up to 98 %");
        assertThat(differences(data, name).max()).isLessThan(0.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void a_missing_overprint_is_found_from_the_nearest_patch_which_no_longer_tests_the_model(String name)
            throws Refusal {
        Characterisation data = without(name, p -> inks(p) > 1 && solid(p));
        assertThat(data.estimates()).hasSize(11);
        assertThat(data.gaps()).anyMatch(g -> g.contains("Cyan + Magenta from the patch Cyan 100 % + Magenta 85 %"));
        assertThat(differences(data, name).mean()).isLessThan(1.0);
        assertThat(differences(data, name).max()).isLessThan(2.0);
        ModelFit fit = ModelFit.of(data);
        assertThat(fit.patches()).isEqualTo(1493 - 11);
        assertThat(fit.meanDe00()).isLessThan(0.6);
        assertThat(fit.maxDe00()).isLessThan(2.6);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void overprints_of_three_inks_are_estimated_from_those_of_two(String name) throws Refusal {
        Characterisation data = without(name, p -> inks(p) > 2);
        assertThat(data.gaps()).hasSize(5).allMatch(g -> g.contains("as filters of one another"));
        assertThat(differences(data, name).mean()).isLessThan(5.0);
        assertThat(differences(data, name).max()).isLessThan(7.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void single_inks_alone_still_make_a_model(String name) throws Refusal {
        Characterisation data = without(name, p -> inks(p) > 1);
        assertThat(differences(data, name).mean()).isLessThan(6.0);
        assertThat(ModelFit.of(data).patches()).isZero();
        ModelFit fit = ModelFit.withoutOverprints(PrintConditions.bundledData(name));
        assertThat(fit.patches()).isEqualTo(1493);
        assertThat(fit.meanDe00()).isBetween(1.5, 2.6);
        assertThat(fit.p95De00()).isBetween(4.0, 6.5);
    }

    @Test
    void solids_alone_make_a_model_too_and_the_missing_steps_are_told() throws Refusal {
        Characterisation data = without("FOGRA39L", p -> !solid(p));
        assertThat(data.estimates()).isEmpty();
        assertThat(data.gaps()).hasSize(4).anyMatch(g -> g.contains("no steps of Cyan between paper and solid"));
    }

    @Test
    void no_estimate_is_black_where_no_ink_is() throws Refusal {
        // eight light inks, their overprints all left out
        List<Patch> patches = new ArrayList<>(List.of(new Patch(new double[8], new Lab(95, 0, -2))));
        for (int i = 0; i < 8; i++) {
            double[] tints = new double[8];
            tints[i] = 1;
            patches.add(new Patch(tints, new Lab(90, 3 * Math.cos(i), 3 * Math.sin(i))));
        }
        Characterisation data = MissingPrimaries.complete(
                new Characterisation("light", "made up", List.of("A", "B", "C", "D", "E", "F", "G", "H"), patches));
        assertThat(data.estimates()).hasSize(256 - 9);
        double[] all = new double[8];
        Arrays.fill(all, 1);
        // each takes about a tenth of the light: (Y of 90 / Y of 95)^8 of the paper's by multiplication, L* 59
        assertThat(data.find(all).L()).isBetween(55.0, 65.0);
    }

    @Test
    void what_cannot_be_found_is_refused_with_the_file_and_the_ink() {
        refused(p -> p.tints()[0] > 0.4, "solid Cyan", "50 %");
        refused(p -> inks(p) == 0 || Arrays.stream(p.tints()).anyMatch(t -> t > 0 && t < 0.3), "unprinted paper");
    }

    private static void refused(Predicate<Patch> left, String... parts) {
        assertThatThrownBy(() -> without("FOGRA39L", left))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("few.txt")
                .message()
                .contains(parts);
    }

    private static Characterisation without(String name, Predicate<Patch> left) throws Refusal {
        Characterisation data = PrintConditions.bundledData(name);
        return MissingPrimaries.complete(new Characterisation(
                name,
                "",
                "few.txt",
                data.inks(),
                data.patches().stream().filter(left.negate()).toList(),
                Characterisation.Repeats.NONE,
                List.of()));
    }

    private static long inks(Patch patch) {
        return Arrays.stream(patch.tints()).filter(t -> t > 0).count();
    }

    private static boolean solid(Patch patch) {
        return NeugebauerModel.isPrimary(patch.tints());
    }

    private static Differences differences(Characterisation data, String name) {
        Characterisation measured = PrintConditions.bundledData(name);
        return Differences.of(data.estimates().stream()
                .map(Estimate::patch)
                .mapToDouble(p -> Cie.deltaE00(p.lab(), measured.find(p.tints())))
                .toArray());
    }
}
