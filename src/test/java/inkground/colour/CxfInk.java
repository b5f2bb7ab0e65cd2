package inkground.colour;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Writes CxF/X-4 documents for tests. The ink is invented: a Kubelka–Munk film of given absorption and scattering at each wavelength,
 * "measured" over an invented paper and an invented black by Kubelka's hyperbolic solution [KUBELKA1948], which the program itself does
 * not use.
 */
public final class CxfInk {
    private CxfInk() {}

    /** @return reflectance of a film over a ground; absorption and scattering per thickness 1 */
    public static double film(double absorption, double scattering, double ground) {
        double a = 1 + absorption / scattering;
        double b = Math.sqrt(a * a - 1);
        double coth = 1 / Math.tanh(b * scattering);
        return (1 - ground * (a - b * coth)) / (a - ground + b * coth);
    }

    /** Absorption of an invented red: strong in blue and green, weak in red. */
    public static double absorption(int band) {
        double nm = Spectra.FIRST_NM + band * Spectra.STEP_NM;
        return 0.08 + 1.6 / (1 + Math.exp((nm - 585) / 14));
    }

    /** Reflectance of the invented paper. */
    public static double paper(int band) {
        return 0.84 - 0.10 * Math.exp(-band / 4.0);
    }

    /** Reflectance of the invented black. */
    public static double black(int band) {
        return 0.035 + 0.0005 * band;
    }

    /** @return a spectrum of the film with this scattering over a ground of its own at each band */
    public static double[] over(double scattering, java.util.function.IntToDoubleFunction ground) {
        double[] out = new double[Spectra.BANDS];
        for (int i = 0; i < out.length; i++) {
            out[i] = film(absorption(i), scattering, ground.applyAsDouble(i));
        }
        return out;
    }

    /** @return the values of a ground */
    public static double[] ground(java.util.function.IntToDoubleFunction ground) {
        double[] out = new double[Spectra.BANDS];
        Arrays.setAll(out, ground);
        return out;
    }

    /**
     * @param name of the ink
     * @param scattering of its film
     * @param withBlack whether it was measured over black
     * @param half reflectance of its 50 % tint on the paper, or null for none
     * @return the document
     */
    public static byte[] document(String name, double scattering, boolean withBlack, double[] half) {
        StringBuilder objects = new StringBuilder();
        objects.append(object("p0", ground(CxfInk::paper))).append(object("p100", over(scattering, CxfInk::paper)));
        String tints = measurement("p0", 0) + measurement("p100", 100);
        if (half != null) {
            objects.append(object("p50", half));
            tints += measurement("p50", 50);
        }
        String sets = "<sic:MeasurementSet Background=\"Substrate\">" + tints + "</sic:MeasurementSet>";
        if (withBlack) {
            objects.append(object("k0", ground(CxfInk::black))).append(object("k100", over(scattering, CxfInk::black)));
            sets += "<sic:MeasurementSet Background=\"Black\">" + measurement("k0", 0) + measurement("k100", 100)
                    + "</sic:MeasurementSet>";
        }
        return document(name, objects.toString(), sets);
    }

    /** @return a document of these objects and measurement sets, as text of the format */
    public static byte[] document(String name, String objects, String sets) {
        return ("<cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\" xmlns:sic=\"urn:sic\"><cc:Resources>"
                        + "<cc:ObjectCollection>" + objects + "</cc:ObjectCollection><cc:ColorSpecificationCollection>"
                        + "<cc:ColorSpecification Id=\"M1\"><cc:TristimulusSpec><cc:Illuminant>D50</cc:Illuminant>"
                        + "<cc:Observer>2_Degree</cc:Observer></cc:TristimulusSpec><cc:MeasurementSpec>"
                        + "<cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/></cc:MeasurementSpec>"
                        + "</cc:ColorSpecification></cc:ColorSpecificationCollection></cc:Resources><cc:CustomResources>"
                        + "<sic:SpotInkCharacterisation SpotInkName=\"" + name + "\">" + sets
                        + "</sic:SpotInkCharacterisation></cc:CustomResources></cc:CxF>")
                .getBytes(StandardCharsets.UTF_8);
    }

    /** @return an object with a spectrum */
    public static String object(String id, double[] values) {
        return "<cc:Object Id=\"" + id + "\" ObjectType=\"Target\" Name=\"" + id + "\"><cc:ColorValues>"
                + "<cc:ReflectanceSpectrum ColorSpecification=\"M1\">"
                + Arrays.stream(values)
                        .mapToObj(v -> String.format(Locale.ROOT, "%.7f", v))
                        .collect(Collectors.joining(" "))
                + "</cc:ReflectanceSpectrum></cc:ColorValues></cc:Object>";
    }

    /** @return a reference to an object at a tint in per cent */
    public static String measurement(String object, int percent) {
        return "<sic:Measurement TintLevel=\"" + percent + "\" ObjectRef=\"" + object + "\"/>";
    }
}
