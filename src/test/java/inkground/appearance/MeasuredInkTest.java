package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Cxf;
import inkground.colour.CxfInk;
import inkground.colour.Lab;
import inkground.colour.Spectra;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the hyperbolic solution of Kubelka and Munk, by which the measurements are made. */
class MeasuredInkTest {
    private static InkLibrary.Entry entry(double scattering, boolean withBlack, double[] half) throws Refusal {
        Cxf document = Cxf.read(CxfInk.document("Weir Red", scattering, withBlack, half), "inks.cxf");
        return MeasuredInk.of(document.spotInks().get(0), "a test");
    }

    private static Lab printed(InkLibrary.Entry entry, Lab ground) {
        InkColour ink = new InkColour(
                new Ink(entry.name(), InkKind.SPOT),
                entry.solid(),
                entry.opacity().getAsDouble(),
                entry.overBlack(),
                entry.tone(),
                entry.source());
        double[] xyz = Cie.labToXyz(ground);
        InkLayer.of(ink).over(1, xyz, new double[3]);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.3, 1.5})
    void the_film_is_found_from_grounds_that_are_neither_white_nor_black(double scattering) throws Refusal {
        InkLibrary.Entry entry = entry(scattering, true, null);
        Lab white = Spectra.toLab(CxfInk.over(scattering, i -> 1));
        Lab black = Spectra.toLab(CxfInk.over(scattering, i -> 0));
        assertThat(Cie.deltaE00(entry.solid(), white)).isLessThan(0.01);
        assertThat(Cie.deltaE00(entry.overBlack(), black)).isLessThan(0.01);
        assertThat(entry.opacity().getAsDouble())
                .isCloseTo(Cie.labToXyz(black)[1] / Cie.labToXyz(white)[1], within(1e-3));
        assertThat(entry.source()).contains("CxF/X-4", "over black").doesNotContain("assumed", "taken for");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.3, 1.5})
    void over_other_grounds_it_shows_what_the_theory_says_wavelength_by_wavelength(double scattering) throws Refusal {
        InkLibrary.Entry entry = entry(scattering, true, null);
        for (double grey : new double[] {0.03, 0.2, 0.5, 0.9}) {
            Lab exact = Spectra.toLab(CxfInk.over(scattering, i -> grey));
            Lab ground = Spectra.toLab(CxfInk.ground(i -> grey));
            // three bands instead of 36 wavelengths: the difference that is left
            assertThat(Cie.deltaE00(printed(entry, ground), exact)).isLessThan(1.5);
        }
    }

    @Test
    void measured_over_black_an_ink_need_not_hide_all_light_alike() throws Refusal {
        InkLibrary.Entry entry = entry(0.3, true, null);
        Lab ground = Spectra.toLab(CxfInk.ground(i -> 0.03));
        Lab exact = Spectra.toLab(CxfInk.over(0.3, i -> 0.03));
        InkColour byContrastAlone = new InkColour(
                new Ink("Weir Red", InkKind.SPOT),
                entry.solid(),
                entry.opacity().getAsDouble(),
                "test");
        double[] xyz = Cie.labToXyz(ground);
        InkLayer.of(byContrastAlone).over(1, xyz, new double[3]);
        double without = Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), exact);
        assertThat(Cie.deltaE00(printed(entry, ground), exact)).isLessThan(0.7 * without);
    }

    @Test
    void without_a_measurement_over_black_the_opacity_is_said_to_be_assumed() throws Refusal {
        InkLibrary.Entry entry = entry(0.3, false, null);
        assertThat(entry.opacity()).isEmpty();
        assertThat(entry.overBlack()).isNull();
        Lab paper = Spectra.toLab(CxfInk.ground(CxfInk::paper));
        Lab solid = Spectra.toLab(CxfInk.over(0.3, CxfInk::paper));
        double[] xyz = Cie.labToXyz(solid);
        double[] white = Cie.labToXyz(paper);
        Lab relative = Cie.xyzToLab(xyz[0] / white[0] * Cie.D50_X, xyz[1] / white[1], xyz[2] / white[2] * Cie.D50_Z);
        assertThat(Cie.deltaE00(entry.solid(), relative)).isLessThan(1e-3);
    }

    @Test
    void a_measured_tint_comes_back_on_its_own_paper() throws Refusal {
        double[] solid = CxfInk.over(0.3, CxfInk::paper);
        double[] half = new double[solid.length];
        for (int i = 0; i < half.length; i++) {
            half[i] = 0.7 * solid[i] + 0.3 * CxfInk.paper(i); // 70 % of the area at a tint of 50 %
        }
        InkLibrary.Entry entry = entry(0.3, true, half);
        Lab paper = Spectra.toLab(CxfInk.ground(CxfInk::paper));
        Stack stack = Stack.of(
                Samples.substrate(Substrate.Kind.GARMENT, paper),
                java.util.List.of(new InkColour(
                        new Ink("Weir Red", InkKind.SPOT),
                        entry.solid(),
                        entry.opacity().getAsDouble(),
                        entry.overBlack(),
                        entry.tone(),
                        entry.source())),
                Samples.FOGRA);
        double[] xyz = new double[3];
        double[] tints = {0.5};
        new StackModel(stack).layer(tints, false, xyz, new double[3]);
        double withTone = Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), Spectra.toLab(half));
        assertThat(withTone).isLessThan(3.5); // the tone value is right, its path through colour is a model
        assertThat(entry.tone().at(0.5)).isGreaterThan(0.5);
    }

    @Test
    void a_film_of_equal_grounds_does_not_divide_by_nothing() {
        KubelkaMunk film = KubelkaMunk.ofGrounds(0.5, 0.4, 0.5, 0.4);
        assertThat(film.over(0.5)).isBetween(0.0, 1.0);
        assertThat(KubelkaMunk.ofGrounds(0.8, 0.4, 0.05, 0.025).overBlack()).isCloseTo(0, within(1e-12));
    }
}
