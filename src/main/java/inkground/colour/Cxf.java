package inkground.colour;

import inkground.base.Refusal;
import java.util.List;

/**
 * What a CxF 3 document (ISO 17972-1) holds of colours, and of spot inks measured over their substrate and over black (CxF/X-4, ISO
 * 17972-4) [ISO17972].
 *
 * <p>Reflectance spectra are brought to 380 to 730 nm in steps of 10 nm. Of an object with a spectrum and a Lab value the spectrum
 * counts, since Lab may be of another illuminant; Lab of another illuminant or observer than D50 and 2° is refused. The measurement
 * condition of ISO 13655 (M0 to M3) is told as the file states it, and changes nothing else; light that passes through is refused.
 *
 * @param samples named colours, in file order; those that a spot ink's tints are stated by are not among them
 * @param spotInks inks with their measurements, in file order
 */
public record Cxf(List<Sample> samples, List<SpotInk> spotInks) {
    /** Most measured objects. */
    public static final int MAX_OBJECTS = 20_000;

    /** Copies the lists. */
    public Cxf {
        samples = List.copyOf(samples);
        spotInks = List.copyOf(spotInks);
    }

    /**
     * A named colour.
     *
     * @param name of the object
     * @param lab absolute, D50
     * @param spectral whether it comes from a spectrum
     * @param condition how it was measured (light and filter of the device), as the file states it; empty where it does not
     */
    public record Sample(String name, Lab lab, boolean spectral, String condition) {}

    /**
     * A spot ink.
     *
     * @param name as artwork has it
     * @param onSubstrate its tints on the substrate, lightest first; that of 0, if any, is the substrate
     * @param overBlack its tints on black, lightest first; that of 0, if any, is the black; empty where it was not measured
     */
    public record SpotInk(String name, List<Tint> onSubstrate, List<Tint> overBlack) {
        /** Copies the lists. */
        public SpotInk {
            onSubstrate = List.copyOf(onSubstrate);
            overBlack = List.copyOf(overBlack);
        }
    }

    /**
     * One measured tint.
     *
     * @param tint 0 to 1
     * @param reflectance {@link Spectra#BANDS} values, not to be changed; null where only Lab is stated
     * @param lab absolute, D50
     * @param condition how it was measured (light and filter of the device), as the file states it; empty where it does not
     */
    public record Tint(double tint, double[] reflectance, Lab lab, String condition) {}

    /**
     * Reads a document without document types, external entities or anything else from outside the file.
     *
     * @param bytes of the document
     * @param file its name, for messages
     * @throws Refusal naming the file, and the object, ink or line and what is wrong with it
     */
    public static Cxf read(byte[] bytes, String file) throws Refusal {
        return CxfReader.read(bytes, file);
    }
}
