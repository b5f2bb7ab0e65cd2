package inkground.artwork.pdf;

import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSObject;

/** Reads plain values out of PDF objects, telling what is missing or of the wrong kind. */
final class Cos {
    private static final int MAX_INDIRECTIONS = 32;

    private Cos() {}

    static COSName name(String name) {
        return COSName.getPDFName(name);
    }

    /** Follows references; null stays null. */
    static COSBase resolve(COSBase base) {
        COSBase at = base;
        for (int i = 0; at instanceof COSObject && i < MAX_INDIRECTIONS; i++) {
            at = ((COSObject) at).getObject();
        }
        return at instanceof COSObject ? null : at;
    }

    static COSDictionary dictionary(COSDictionary in, String key) {
        return in != null && in.getDictionaryObject(name(key)) instanceof COSDictionary found ? found : null;
    }

    static COSArray array(COSDictionary in, String key) {
        return in != null && in.getDictionaryObject(name(key)) instanceof COSArray found ? found : null;
    }

    static COSBase get(COSDictionary in, String key) {
        return in == null ? null : in.getDictionaryObject(name(key));
    }

    static String nameOf(COSDictionary in, String key) {
        return get(in, key) instanceof COSName found ? found.getName() : null;
    }

    static boolean flag(COSDictionary in, String key) {
        return in.getBoolean(name(key), false);
    }

    /** Numbers of an array; entries of another kind read as 0. Null when there is no array. */
    static double[] numbers(COSBase base) {
        if (!(resolve(base) instanceof COSArray array)) {
            return null;
        }
        double[] out = new double[array.size()];
        for (int i = 0; i < out.length; i++) {
            out[i] = array.getObject(i) instanceof COSNumber n ? n.floatValue() : 0;
        }
        return out;
    }

    /** Numbers under a key, or {@code missing} when there are fewer than it has. */
    static double[] numbers(COSDictionary in, String key, double... missing) {
        double[] found = numbers(get(in, key));
        return found != null && found.length >= missing.length ? found : missing;
    }

    static double[] required(COSDictionary in, String key, int count) throws IOException {
        double[] found = numbers(get(in, key));
        if (found == null || found.length < count) {
            throw new IOException("entry " + key + " needs " + count + " numbers");
        }
        return found;
    }

    static List<Double> list(double... values) {
        List<Double> out = new ArrayList<>(values.length);
        for (double v : values) {
            out.add(v);
        }
        return List.copyOf(out);
    }

    /** The rectangle under a key, its corners in any order; null when there is none. */
    static Box box(COSDictionary in, String key) {
        return box(numbers(get(in, key)));
    }

    static Box box(double[] edges) {
        if (edges == null || edges.length < 4) {
            return null;
        }
        return Box.ofCorners(edges[0], edges[1], edges[2], edges[3]);
    }

    /** The matrix under a key; the identity when there is none. */
    static Matrix matrix(COSDictionary in, String key) {
        double[] m = numbers(in, key, 1, 0, 0, 1, 0, 0);
        return new Matrix(m[0], m[1], m[2], m[3], m[4], m[5]);
    }

    static Matrix matrix(org.apache.pdfbox.util.Matrix m) {
        return new Matrix(
                m.getScaleX(), m.getShearY(), m.getShearX(), m.getScaleY(), m.getTranslateX(), m.getTranslateY());
    }

    static org.apache.pdfbox.util.Matrix matrix(Matrix m) {
        return new org.apache.pdfbox.util.Matrix(
                (float) m.a(), (float) m.b(), (float) m.c(), (float) m.d(), (float) m.e(), (float) m.f());
    }
}
