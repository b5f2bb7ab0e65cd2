package inkground.colour;

import inkground.base.Refusal;
import java.util.List;

/**
 * A print condition of the four process inks from characterisation data: the Neugebauer model from its primaries and ramps,
 * corrected at the data's own grid so that the data's patches come back. Thread-safe.
 */
public final class MeasuredCondition implements PrintCondition {
    private final Characterisation data;
    private final NeugebauerModel model;
    private final ResidualGrid residuals;
    private final Lab paper;
    private final CmykInverse inverse;

    private MeasuredCondition(Characterisation data, NeugebauerModel model) {
        this.data = data;
        this.model = model;
        this.residuals = ResidualGrid.of(data, model);
        this.paper = data.find(0, 0, 0, 0);
        this.inverse = new CmykInverse(this, BlackGeneration.STANDARD);
    }

    /**
     * @param data of cyan, magenta, yellow and black, in this order
     * @throws Refusal if the data is of other inks or lacks a primary
     */
    public static MeasuredCondition of(Characterisation data) throws Refusal {
        if (!data.inks().equals(TintColumns.PROCESS)) {
            throw new Refusal(
                    data.file() + " is data of " + String.join(", ", data.inks())
                            + "; a print condition needs cyan, magenta, yellow and black, in columns CMYK_C, CMYK_M, CMYK_Y, CMYK_K.");
        }
        return new MeasuredCondition(data, NeugebauerModel.of(data));
    }

    /** @return itself, its searches for tints now beginning at the nodes of this grid */
    MeasuredCondition startingFrom(SrgbGrid grid) {
        inverse.startFrom(grid);
        return this;
    }

    /** @return the model without the data's corrections */
    public NeugebauerModel model() {
        return model;
    }

    /** @return the data */
    public Characterisation data() {
        return data;
    }

    @Override
    public String name() {
        return data.name();
    }

    @Override
    public String source() {
        return data.source();
    }

    @Override
    public List<String> gaps() {
        return data.gaps();
    }

    @Override
    public Lab paper() {
        return paper;
    }

    @Override
    public void cmykToXyz(float[] cmyk, double[] xyz) {
        double[] tints = {clip(cmyk[0]), clip(cmyk[1]), clip(cmyk[2]), clip(cmyk[3])};
        double[] bands = new double[3];
        model.toCompressed(tints, bands);
        residuals.correct(tints, bands);
        model.bands().expand(bands, xyz);
    }

    @Override
    public void labToCmyk(double L, double a, double b, float[] cmyk) {
        inverse.labToCmyk(L, a, b, cmyk);
    }

    private static double clip(float tint) {
        return tint > 0 ? Math.min(1, tint) : 0;
    }
}
