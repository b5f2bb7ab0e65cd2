package inkground.colour;

/**
 * Colours of reflectance spectra for D50 and the 2° observer [CIE15]: sums over 380 to 730 nm in steps of 10 nm, of the values
 * tabled there for the illuminant and the observer, without a correction for the instrument's bandpass.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>reflectance</td><td>0 to 1; fluorescence can exceed it</td></tr>
 * <tr><td>X, Y, Z</td><td>the perfect diffuser is exactly the D50 of [ICC1]: the sums' own white differs by less than 0.002</td></tr>
 * </table>
 *
 * <p>Example: 0.18 at all wavelengths is (49.4961, 0, 0).
 */
public final class Spectra {
    /** First wavelength in nm. */
    public static final int FIRST_NM = 380;
    /** Last wavelength in nm. */
    public static final int LAST_NM = 730;
    /** Step in nm. */
    public static final int STEP_NM = 10;

    /** Number of bands. */
    public static final int BANDS = (LAST_NM - FIRST_NM) / STEP_NM + 1;

    private static final double[] D50 = {
        24.49, 29.87, 49.31, 56.51, 60.03, 57.82, 74.82, 87.25, 90.61, 91.37, 95.11, 91.96, 95.72, 96.61, 97.13, 102.10,
        100.75, 102.32, 100.00, 97.74, 98.92, 93.50, 97.69, 99.27, 99.04, 95.72, 98.86, 95.67, 98.19, 103.00, 99.13,
        87.38, 91.60, 92.89, 76.85, 86.51
    };
    private static final double[] X = {
        0.001368, 0.004243, 0.01431, 0.04351, 0.13438, 0.2839, 0.34828, 0.3362, 0.2908, 0.19536, 0.09564, 0.03201,
        0.0049, 0.0093, 0.06327, 0.1655, 0.2904, 0.43345, 0.5945, 0.7621, 0.9163, 1.0263, 1.0622, 1.0026, 0.85445,
        0.6424, 0.4479, 0.2835, 0.1649, 0.0874, 0.04677, 0.0227, 0.011359, 0.00579, 0.002899, 0.00144
    };
    private static final double[] Y = {
        0.000039, 0.00012, 0.000396, 0.00121, 0.004, 0.0116, 0.023, 0.038, 0.06, 0.09098, 0.13902, 0.20802, 0.323,
        0.503, 0.71, 0.862, 0.954, 0.99495, 0.995, 0.952, 0.87, 0.757, 0.631, 0.503, 0.381, 0.265, 0.175, 0.107, 0.061,
        0.032, 0.017, 0.00821, 0.004102, 0.002091, 0.001047, 0.00052
    };
    private static final double[] Z = {
        0.00645, 0.02005, 0.06785, 0.2074, 0.6456, 1.3856, 1.74706, 1.77211, 1.6692, 1.28764, 0.81295, 0.46518, 0.272,
        0.1582, 0.07825, 0.04216, 0.0203, 0.00875, 0.0039, 0.0021, 0.00165, 0.0011, 0.0008, 0.00034, 0.00019, 0.00005,
        0.00002, 0, 0, 0, 0, 0, 0, 0, 0, 0
    };

    private Spectra() {}

    /**
     * @param reflectance {@value #BANDS} values from {@value #FIRST_NM} nm on
     * @return absolute Lab
     */
    public static Lab toLab(double[] reflectance) {
        if (reflectance.length != BANDS) {
            throw new IllegalArgumentException(reflectance.length + " bands");
        }
        double[] white = sums(null);
        double[] sums = sums(reflectance);
        return Cie.xyzToLab(sums[0] / white[0] * Cie.D50_X, sums[1] / white[1], sums[2] / white[2] * Cie.D50_Z);
    }

    /**
     * Brings a spectrum to the program's own wavelengths, linearly between its own and level beyond them.
     *
     * @param startNm of the first value
     * @param stepNm between values
     * @return {@value #BANDS} values
     */
    public static double[] resample(double startNm, double stepNm, double[] values) {
        double[] out = new double[BANDS];
        for (int i = 0; i < BANDS; i++) {
            double place = Math.max(0, Math.min(values.length - 1, (FIRST_NM + i * STEP_NM - startNm) / stepNm));
            int at = Math.min(values.length - 2, (int) place);
            out[i] = at < 0 ? values[0] : values[at] + (place - at) * (values[at + 1] - values[at]);
        }
        return out;
    }

    /** @return X, Y, Z of the perfect diffuser by the tables, Y = 1; for tests */
    static double[] white() {
        double[] sums = sums(null);
        return new double[] {sums[0] / sums[1], 1, sums[2] / sums[1]};
    }

    private static double[] sums(double[] reflectance) {
        double[] out = new double[3];
        for (int i = 0; i < BANDS; i++) {
            double light = D50[i] * (reflectance == null ? 1 : reflectance[i]);
            out[0] += light * X[i];
            out[1] += light * Y[i];
            out[2] += light * Z[i];
        }
        return out;
    }
}
