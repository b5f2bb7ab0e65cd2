package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.artwork.Colour;
import inkground.artwork.Paint;
import inkground.geometry.Matrix;
import java.util.stream.IntStream;

/** Shadings whose colour is a function of the point (type 1), evaluated at every pixel centre. */
final class PointShadingSource implements PixelSource {
    private final Paint.Shading shading;
    private final Paint.OfPoint geometry;
    private final ColourMapping mapping;
    private final Matrix toDomain;
    private final boolean background;

    PointShadingSource(Paint.Shading shading, Matrix pageToDevice, ColourMapping mapping, boolean asPattern) {
        this.shading = shading;
        this.geometry = (Paint.OfPoint) shading.geometry();
        this.mapping = mapping;
        Matrix m = geometry.domainToShading().then(shading.toPage()).then(pageToDevice);
        this.toDomain = m.invertible() ? m.inverse() : null;
        this.background = asPattern && shading.background() != null;
    }

    @Override
    public int[] planes() {
        return IntStream.range(0, mapping.tintPlanes()).toArray();
    }

    @Override
    public Extent cell(int deviceX, int deviceY, int[][] tints, int[] cover) {
        int[] out = new int[mapping.tintPlanes()];
        float[] at = new float[2];
        float[] values =
                new float[Math.max(shading.function().outputs(), shading.space().components())];
        for (int i = 0; i < CELL_W * CELL_H; i++) {
            boolean inside = toDomain != null && locate(deviceX + i % CELL_W + 0.5, deviceY + i / CELL_W + 0.5, at);
            if (inside) {
                shading.function().apply(at, values);
                mapping.mixedTints(shading.space(), new Colour(shading.space(), values).components(), null, out);
            } else if (background) {
                mapping.mixedTints(shading.space(), shading.background().components(), null, out);
            }
            cover[i] = inside || background ? Fixed.COVER_ONE : 0;
            for (int p = 0; p < out.length; p++) {
                tints[p][i] = out[p];
            }
        }
        return Extent.SOME;
    }

    private boolean locate(double px, double py, float[] at) {
        double x = toDomain.x(px, py);
        double y = toDomain.y(px, py);
        at[0] = (float) x;
        at[1] = (float) y;
        return x >= geometry.domain().x0()
                && x <= geometry.domain().x1()
                && y >= geometry.domain().y0()
                && y <= geometry.domain().y1();
    }
}
