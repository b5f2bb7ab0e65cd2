package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CxfTest {
    private static final String HEAD =
            "<cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\"><cc:Resources>" + "<cc:ObjectCollection>";
    private static final String TAIL = "</cc:ObjectCollection><cc:ColorSpecificationCollection>"
            + "<cc:ColorSpecification Id=\"M0\"><cc:MeasurementSpec><cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/>"
            + "</cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection></cc:Resources></cc:CxF>";

    @Test
    void the_tables_add_up_to_the_white_of_d50() {
        double[] white = Spectra.white();
        assertThat(white[0]).isCloseTo(Cie.D50_X, within(0.002));
        assertThat(white[2]).isCloseTo(Cie.D50_Z, within(0.002));
    }

    @Test
    void an_even_grey_is_neutral_at_its_own_reflectance() {
        double[] grey = new double[Spectra.BANDS];
        java.util.Arrays.fill(grey, 0.18);
        Lab lab = Spectra.toLab(grey);
        assertThat(lab.L()).isCloseTo(49.4961, within(1e-3));
        assertThat(Math.hypot(lab.a(), lab.b())).isLessThan(1e-6);
    }

    @Test
    void spectra_of_other_steps_come_to_the_same_colour() {
        double[] fine = new double[71]; // a smooth slope, 380 to 730 nm in steps of 5
        for (int i = 0; i < fine.length; i++) {
            fine[i] = 0.1 + 0.8 * i / 70;
        }
        double[] coarse = new double[] {0.1, 0.5, 0.9}; // the same slope at three places
        Lab one = Spectra.toLab(Spectra.resample(380, 5, fine));
        Lab other = Spectra.toLab(Spectra.resample(380, 175, coarse));
        assertThat(Cie.deltaE00(one, other)).isLessThan(1e-6);
        assertThat(one.a()).isPositive();
        assertThat(one.b()).isPositive();
    }

    @Test
    void spectra_and_lab_values_are_read_by_name() throws Refusal {
        List<Cxf.Sample> samples = read(object(
                        "Weir Green",
                        "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">"
                                + String.join(" ", Collections.nCopies(36, "0.18")) + "</cc:ReflectanceSpectrum>")
                + object(
                        "Reach Red", "<cc:ColorCIELab><cc:L>45</cc:L><cc:A>60</cc:A><cc:B>35</cc:B></cc:ColorCIELab>"));
        assertThat(samples).extracting(Cxf.Sample::name).containsExactly("Weir Green", "Reach Red");
        assertThat(samples.get(0).spectral()).isTrue();
        assertThat(samples.get(0).lab().L()).isCloseTo(49.5, within(0.01));
        assertThat(samples.get(1).lab()).isEqualTo(new Lab(45, 60, 35));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<cc:ReflectanceSpectrum ColorSpecification=\"other\">0.1 0.2</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">0.1 x</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">0.1 55</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum StartWL=\"1\">0.1 0.2</cc:ReflectanceSpectrum>",
                "<cc:ColorCIELab><cc:L>45</cc:L></cc:ColorCIELab>",
                "<cc:ColorCIELab><cc:L>NaN</cc:L><cc:A>1</cc:A><cc:B>1</cc:B></cc:ColorCIELab>",
                "<unclosed>",
                ""
            })
    void what_is_wrong_is_refused_with_the_files_name(String values) {
        assertThatThrownBy(() -> read(object("Weir Green", values)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "StartWL=\"500\" Increment=\"10\" | 30 | StartWL",
                "StartWL=\"400\" Increment=\"10\" | 20 | StartWL",
                "StartWL=\"380\" Increment=\"40\" | 12 | Increment",
                "StartWL=\"380\" Increment=\"-5\" | 36 | Increment",
                "Increment=\"10\" ColorSpecification=\"none\" | 36 | StartWL"
            })
    void a_spectrum_that_leaves_light_out_is_refused_with_object_and_field(String range, int values, String field) {
        String spectrum = "<cc:ReflectanceSpectrum " + range + ">"
                + String.join(" ", Collections.nCopies(values, "0.2")) + "</cc:ReflectanceSpectrum>";
        assertThatThrownBy(() -> read(object("Weir Green", spectrum)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf")
                .hasMessageContaining("Weir Green")
                .hasMessageContaining(field);
    }

    @Test
    void other_ranges_and_steps_of_one_spectrum_are_one_colour() throws Refusal {
        int[][] ranges = {{360, 5, 81}, {380, 10, 36}, {400, 20, 16}, {360, 10, 41}, {400, 10, 31}, {340, 10, 50}};
        Lab[] labs = new Lab[ranges.length];
        for (int r = 0; r < ranges.length; r++) {
            StringBuilder values = new StringBuilder();
            for (int i = 0; i < ranges[r][2]; i++) {
                double nm = ranges[r][0] + i * ranges[r][1];
                values.append(0.4 + 0.3 * Math.sin(nm / 90)).append(' ');
            }
            labs[r] = read(object(
                            "S",
                            "<cc:ReflectanceSpectrum StartWL=\"" + ranges[r][0] + "\" Increment=\"" + ranges[r][1]
                                    + "\">" + values + "</cc:ReflectanceSpectrum>"))
                    .get(0)
                    .lab();
        }
        assertThat(Cie.deltaE00(labs[0], labs[1])).isLessThan(0.1);
        assertThat(Cie.deltaE00(labs[2], labs[1])).isLessThan(0.7);
        assertThat(Cie.deltaE00(labs[3], labs[1])).isLessThan(1e-6);
        assertThat(Cie.deltaE00(labs[4], labs[1])).isLessThan(0.1);
        assertThat(Cie.deltaE00(labs[5], labs[1])).isLessThan(1e-6);
    }

    @ParameterizedTest
    @CsvSource({"D65, 2_Degree, Illuminant D65", "D50, 10_Degree, Observer 10_Degree", "A, 2_Degree, Illuminant A"})
    void lab_of_another_light_or_eye_is_refused_with_object_and_field(String light, String eye, String field) {
        String text = HEAD
                + object(
                        "Reach Red",
                        "<cc:ColorCIELab ColorSpecification=\"X\"><cc:L>45</cc:L><cc:A>60</cc:A><cc:B>35</cc:B>"
                                + "</cc:ColorCIELab>")
                + TAIL.replace(
                        "<cc:ColorSpecification Id=\"M0\">",
                        "<cc:ColorSpecification Id=\"X\"><cc:TristimulusSpec><cc:Illuminant>" + light
                                + "</cc:Illuminant><cc:Observer>" + eye
                                + "</cc:Observer></cc:TristimulusSpec></cc:ColorSpecification>"
                                + "<cc:ColorSpecification Id=\"M0\">");
        assertThatThrownBy(() -> Cxf.read(text.getBytes(StandardCharsets.UTF_8), "inks.cxf"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf")
                .hasMessageContaining("Reach Red")
                .hasMessageContaining(field);
    }

    @ParameterizedTest
    @CsvSource({"D65, 10_Degree", "A, 2_Degree"})
    void a_spectrum_is_its_colour_for_d50_whatever_light_and_eye_the_file_states(String light, String eye)
            throws Refusal {
        String specification = "<cc:TristimulusSpec><cc:Illuminant>" + light + "</cc:Illuminant><cc:Observer>" + eye
                + "</cc:Observer></cc:TristimulusSpec><cc:MeasurementSpec>";
        Cxf.Sample sample = specified(specification).get(0);
        assertThat(sample.spectral()).isTrue();
        assertThat(Cie.deltaE76(sample.lab(), new Lab(49.4961, 0, 0))).isLessThan(1e-3); // L* of Y = 0.18
    }

    @Test
    void the_measurement_condition_is_told_and_light_that_passes_through_refused() throws Refusal {
        assertThat(specified("<cc:MeasurementSpec>").get(0).condition()).isEmpty();
        String device = "<cc:MeasurementSpec><cc:Device><cc:DeviceFilter>%s</cc:DeviceFilter>"
                + "<cc:DeviceIllumination>%s</cc:DeviceIllumination></cc:Device>";
        assertThat(specified(String.format(device, "Filter_None", "M1_Daylight"))
                        .get(0)
                        .condition())
                .isEqualTo("Filter_None, M1_Daylight");
        String through = "<cc:MeasurementSpec><cc:MeasurementType>Spectrum_Transmittance</cc:MeasurementType>";
        assertThatThrownBy(() -> specified(through))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf, object 'Grey'")
                .hasMessageContaining("MeasurementType is Spectrum_Transmittance");
    }

    /** A grey of 0.18 whose specification holds this before its wavelengths. */
    private static List<Cxf.Sample> specified(String specification) throws Refusal {
        String grey = object(
                "Grey",
                "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">" + String.join(" ", Collections.nCopies(36, "0.18"))
                        + "</cc:ReflectanceSpectrum>");
        String text = HEAD + grey + TAIL.replace("<cc:MeasurementSpec>", specification);
        return Cxf.read(text.getBytes(StandardCharsets.UTF_8), "inks.cxf").samples();
    }

    @Test
    void a_characterisation_that_lacks_its_solid_or_an_object_is_refused_with_the_ink() {
        String paper = CxfInk.object("p0", CxfInk.ground(CxfInk::paper));
        String solid = CxfInk.object("p100", CxfInk.over(0.3, CxfInk::paper));
        String open = "<sic:MeasurementSet Background=\"Substrate\">";
        String close = "</sic:MeasurementSet>";
        String onlyPaper = open + CxfInk.measurement("p0", 0) + close;
        inkRefused(paper, onlyPaper, "TintLevel 100");
        inkRefused(paper, open + CxfInk.measurement("p100", 100) + close, "ObjectRef 'p100'");
        inkRefused(paper + solid, open + CxfInk.measurement("p100", 101) + close, "TintLevel 101");
        String twice = open + CxfInk.measurement("p100", 100) + CxfInk.measurement("p0", 100) + close;
        inkRefused(paper + solid, twice, "there twice");
        String noSolidOverBlack = open + CxfInk.measurement("p100", 100) + close
                + "<sic:MeasurementSet Background=\"Black\">" + CxfInk.measurement("p0", 0) + close;
        inkRefused(paper + solid, noSolidOverBlack, "over black");
    }

    private static void inkRefused(String objects, String sets, String why) {
        assertThatThrownBy(() -> Cxf.read(CxfInk.document("Weir Red", objects, sets), "inks.cxf"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf")
                .hasMessageContaining("Weir Red")
                .hasMessageContaining(why);
    }

    @Test
    void nothing_outside_the_file_is_read() {
        String hostile = "<!DOCTYPE a [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>" + HEAD
                + object("&e;", "<cc:ColorCIELab><cc:L>&e;</cc:L><cc:A>1</cc:A><cc:B>1</cc:B></cc:ColorCIELab>") + TAIL;
        assertThatThrownBy(() -> Cxf.read(hostile.getBytes(StandardCharsets.UTF_8), "inks.cxf"))
                .isInstanceOf(Refusal.class);
    }

    private static String object(String name, String values) {
        return "<cc:Object Name=\"" + name + "\"><cc:ColorValues>" + values + "</cc:ColorValues></cc:Object>";
    }

    private static List<Cxf.Sample> read(String objects) throws Refusal {
        return Cxf.read((HEAD + objects + TAIL).getBytes(StandardCharsets.UTF_8), "inks.cxf")
                .samples();
    }
}
