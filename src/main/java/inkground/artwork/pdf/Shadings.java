package inkground.artwork.pdf;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Paint;
import inkground.artwork.TintTransform;
import inkground.colour.RenderingIntent;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSStream;

/** Reads shading dictionaries: ISO 32000-2 §8.7.4.5. */
final class Shadings {
    private final ColourSpaces spaces;

    Shadings(ColourSpaces spaces) {
        this.spaces = spaces;
    }

    /**
     * @param dict a shading dictionary or stream
     * @param resources where its colour space may be named
     * @param toPage from the shading's coordinates to page space
     * @param pattern whether it is used as a pattern, so that its background counts
     * @param intent by which its colours are rendered
     */
    Paint.Shading read(
            COSDictionary dict, COSDictionary resources, Matrix toPage, boolean pattern, RenderingIntent intent)
            throws IOException {
        ColourSpace space = spaces.of(Cos.get(dict, "ColorSpace"), resources).by(intent);
        int type = dict.getInt(Cos.name("ShadingType"), 0);
        COSBase stated = Cos.get(dict, "Function");
        TintTransform function = stated == null ? null : Functions.of(stated, type == 1 ? 2 : 1, space.components());
        if (function == null && type <= 3) {
            throw new IOException("a shading without a function");
        }
        Paint.Geometry geometry =
                switch (type) {
                    case 1 -> ofPoint(dict);
                    case 2 -> axial(dict);
                    case 3 -> radial(dict);
                    case 4, 5, 6, 7 -> mesh(dict, type, function == null ? space.components() : 1, toPage);
                    default -> throw new IOException("a shading of type " + type);
                };
        double[] background = pattern ? Cos.numbers(Cos.get(dict, "Background")) : null;
        return new Paint.Shading(
                geometry,
                space,
                function,
                background == null ? null : new Colour(space, floats(background)),
                Cos.box(dict, "BBox"),
                toPage);
    }

    static float[] floats(double[] values) {
        float[] out = new float[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) values[i];
        }
        return out;
    }

    private static Paint.Geometry ofPoint(COSDictionary dict) {
        double[] d = Cos.numbers(dict, "Domain", 0, 1, 0, 1);
        return new Paint.OfPoint(Box.ofCorners(d[0], d[2], d[1], d[3]), Cos.matrix(dict, "Matrix"));
    }

    private static Paint.Geometry axial(COSDictionary dict) throws IOException {
        double[] c = Cos.required(dict, "Coords", 4);
        double[] t = Cos.numbers(dict, "Domain", 0, 1);
        return new Paint.Axial(c[0], c[1], c[2], c[3], t[0], t[1], extend(dict, 0), extend(dict, 1));
    }

    private static Paint.Geometry radial(COSDictionary dict) throws IOException {
        double[] c = Cos.required(dict, "Coords", 6);
        double[] t = Cos.numbers(dict, "Domain", 0, 1);
        return new Paint.Radial(
                c[0],
                c[1],
                Math.max(0, c[2]),
                c[3],
                c[4],
                Math.max(0, c[5]),
                t[0],
                t[1],
                extend(dict, 0),
                extend(dict, 1));
    }

    private static boolean extend(COSDictionary dict, int end) {
        COSArray extend = Cos.array(dict, "Extend");
        return extend != null
                && end < extend.size()
                && extend.getObject(end) instanceof COSBoolean flag
                && flag.getValue();
    }

    private static Paint.Geometry mesh(COSDictionary dict, int type, int values, Matrix toPage) throws IOException {
        if (!(dict instanceof COSStream stream)) {
            throw new IOException("a mesh shading without data");
        }
        MeshReader reader = new MeshReader(stream, type, values);
        return switch (type) {
            case 4 -> reader.freeTriangles();
            case 5 -> reader.lattice();
            default -> reader.patches(toPage);
        };
    }
}
