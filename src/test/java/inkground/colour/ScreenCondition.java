package inkground.colour;

/**
 * An sRGB screen written down as a print condition: cyan, magenta and yellow are the complements of encoded red, green and blue,
 * black darkens all three alike. Planes made with it are a picture, exactly, so that artwork of the screen can be compared with
 * pictures that screens show.
 */
public final class ScreenCondition implements PrintCondition {
    @Override
    public String name() {
        return "screen";
    }

    @Override
    public String source() {
        return "IEC 61966-2-1";
    }

    @Override
    public Lab paper() {
        return new Lab(100, 0, 0);
    }

    @Override
    public void cmykToXyz(float[] cmyk, double[] xyz) {
        double light = 1.0 - cmyk[3];
        Srgb.toXyz((1 - cmyk[0]) * light, (1 - cmyk[1]) * light, (1 - cmyk[2]) * light, xyz);
    }

    @Override
    public void labToCmyk(double L, double a, double b, float[] cmyk) {
        double[] linear = new double[3];
        Srgb.xyzToLinear(Cie.labToXyz(new Lab(L, a, b)), linear);
        for (int i = 0; i < 3; i++) {
            cmyk[i] = (float) (1 - Srgb.encode(Math.max(0, Math.min(1, linear[i]))));
        }
        cmyk[3] = 0;
    }

    /** Every intent is the same: a screen shows what is asked of it. */
    @Override
    public boolean byIntent(Lab lab, RenderingIntent intent, boolean blackMatched, float[] cmyk) {
        labToCmyk(lab.L(), lab.a(), lab.b(), cmyk);
        return true;
    }
}
