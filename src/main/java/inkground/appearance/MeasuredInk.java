package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.Cxf.SpotInk;
import inkground.colour.Cxf.Tint;
import inkground.colour.Lab;
import inkground.colour.Spectra;
import inkground.colour.ToneCurve;
import inkground.colour.ToneValues;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Ink films from measurements of a spot ink over its substrate and over black (CxF/X-4 [ISO17972]). Where both are spectra, the
 * Kubelka–Munk layer is found at each wavelength; neither ground has to be ideal. The film's colour over perfect white and perfect
 * black is what a stack works with.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>reflectance</td><td>0 to 1 at each wavelength; fluorescence is clipped</td></tr>
 * <tr><td>opacity</td><td>0 to 1: Y over black by Y over white</td></tr>
 * </table>
 *
 * <p>Example: a film that shows 0.4235 over a ground of 0.5 and 0.3 over one of 0 shows 0.6 over perfect white.
 */
public final class MeasuredInk {
    private static final double[] WHITE = even(1);
    private static final double[] BLACK = even(0);

    private MeasuredInk() {}

    private static double[] even(double reflectance) {
        double[] out = new double[Spectra.BANDS];
        java.util.Arrays.fill(out, reflectance);
        return out;
    }

    /**
     * @param ink with its solid on the substrate at least
     * @param where it was found, for the user, such as "the file's output intent"
     * @return the ink, with the tone values of its tints; the source says what was measured and what is assumed
     */
    public static InkLibrary.Entry of(SpotInk ink, String where) {
        Tint paper = ground(ink.onSubstrate());
        Tint solid = ink.onSubstrate().get(ink.onSubstrate().size() - 1);
        boolean spectral = solid.reflectance() != null;
        String what = (spectral ? "spectra" : "Lab values") + " (CxF/X-4"
                + (solid.condition().isEmpty() ? "" : ", " + solid.condition()) + ") in " + where;
        String noPaper = paper == null ? "; its substrate is taken for white" : "";
        ToneCurve tone = tone(ink.onSubstrate(), paper == null ? new Lab(100, 0, 0) : paper.lab());
        if (ink.overBlack().isEmpty()) {
            Lab relative = relative(solid.lab(), paper == null ? new Lab(100, 0, 0) : paper.lab());
            return new InkLibrary.Entry(ink.name(), relative, OptionalDouble.empty(), null, tone, what + noPaper);
        }
        Tint black = ground(ink.overBlack());
        Tint overBlack = ink.overBlack().get(ink.overBlack().size() - 1);
        String noBlack = black == null ? "; its black is taken for perfect" : "";
        Lab[] film = film(paper, solid, black, overBlack);
        double opacity = contrast(film[0], film[1]);
        return new InkLibrary.Entry(
                ink.name(),
                film[0],
                OptionalDouble.of(opacity),
                film[1],
                tone,
                what + ", over white and over black" + noPaper + noBlack);
    }

    /** @return the measurement of no ink, or null */
    private static Tint ground(List<Tint> tints) {
        return tints.get(0).tint() == 0 ? tints.get(0) : null;
    }

    /** @return the film over perfect white and over perfect black */
    private static Lab[] film(Tint paper, Tint solid, Tint black, Tint overBlack) {
        boolean spectral = spectrum(paper, WHITE) != null
                && solid.reflectance() != null
                && spectrum(black, BLACK) != null
                && overBlack.reflectance() != null;
        if (spectral) {
            double[][] parts =
                    film(spectrum(paper, WHITE), solid.reflectance(), spectrum(black, BLACK), overBlack.reflectance());
            return new Lab[] {Spectra.toLab(parts[0]), Spectra.toLab(parts[1])};
        }
        double[][] parts = film(
                bands(paper == null ? new Lab(100, 0, 0) : paper.lab()),
                bands(solid.lab()),
                bands(black == null ? new Lab(0, 0, 0) : black.lab()),
                bands(overBlack.lab()));
        return new Lab[] {lab(parts[0]), lab(parts[1])};
    }

    private static double[] spectrum(Tint tint, double[] missing) {
        return tint == null ? missing : tint.reflectance();
    }

    private static double[][] film(double[] white, double[] overWhite, double[] black, double[] overBlack) {
        double[][] out = new double[2][white.length];
        for (int i = 0; i < white.length; i++) {
            KubelkaMunk film = KubelkaMunk.ofGrounds(white[i], overWhite[i], black[i], overBlack[i]);
            out[0][i] = Math.min(1, film.over(1));
            out[1][i] = film.overBlack();
        }
        return out;
    }

    private static double[] bands(Lab lab) {
        double[] out = Cie.labToXyz(lab);
        inkground.colour.Bands.STANDARD.fromXyz(out, out);
        return out;
    }

    private static Lab lab(double[] bands) {
        double[] xyz = new double[3];
        inkground.colour.Bands.STANDARD.toXyz(bands, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    private static double contrast(Lab overWhite, Lab overBlack) {
        double light = Cie.labToXyz(overWhite)[1];
        return light <= 0 ? 1 : Math.max(0, Math.min(1, Cie.labToXyz(overBlack)[1] / light));
    }

    private static Lab relative(Lab lab, Lab paper) {
        double[] xyz = Cie.labToXyz(lab);
        double[] white = Cie.labToXyz(paper);
        return Cie.xyzToLab(xyz[0] / white[0] * Cie.D50_X, xyz[1] / white[1], xyz[2] / white[2] * Cie.D50_Z);
    }

    /** @return the tone value of each tint between, or null where there is none */
    private static ToneCurve tone(List<Tint> tints, Lab paper) {
        boolean ground = tints.get(0).tint() == 0;
        int between = tints.size() - (ground ? 2 : 1);
        if (between < 1) {
            return null;
        }
        Lab solid = tints.get(tints.size() - 1).lab();
        double[] x = new double[between + 2];
        double[] y = new double[between + 2];
        for (int i = 1; i <= between; i++) {
            Tint tint = tints.get(ground ? i : i - 1);
            x[i] = tint.tint();
            y[i] = Math.max(0, Math.min(1, ToneValues.spot(paper, solid, tint.lab())));
        }
        x[between + 1] = 1;
        y[between + 1] = 1;
        return new ToneCurve(x, y);
    }
}
