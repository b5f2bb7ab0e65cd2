package inkground.handoff;

import inkground.artwork.ColourSpace;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import inkground.plate.ClearedGradient;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * Shadings of a PDF without their bare colours: the shading with the other colours carried on, and a soft mask of the same
 * geometry. Parts that are kept whole keep the file's own function.
 */
final class CleanGradients {
    private static final int SAMPLES = 257;
    /** The ends of a part belong to its neighbours, which may be of quite another colour. */
    private static final double INSET = 1e-6;

    private static final COSName FUNCTION = COSName.FUNCTION;
    private static final COSName BACKGROUND = COSName.getPDFName("Background");

    private CleanGradients() {}

    /** @return a copy of a shading dictionary that has the colours of what is kept */
    static COSDictionary shading(COSDictionary original, ColourSpace space, ClearedGradient gradient)
            throws IOException {
        COSDictionary out = new COSDictionary(original);
        COSBase function = original.getDictionaryObject(FUNCTION);
        if (function instanceof COSArray each) {
            COSArray functions = new COSArray();
            for (int c = 0; c < each.size(); c++) {
                functions.add(colours(each.get(c), space, gradient, c, c + 1));
            }
            out.setItem(FUNCTION, functions);
        } else {
            out.setItem(FUNCTION, colours(original.getItem(FUNCTION), space, gradient, 0, space.components()));
        }
        if (!gradient.backgroundKept()) {
            out.removeItem(BACKGROUND);
        }
        return out;
    }

    /**
     * @param toUser from the shading's coordinates to the user space that the state will be set in
     * @return a graphics state whose soft mask lets through what is kept
     */
    static COSDictionary state(COSDictionary original, ClearedGradient gradient, Matrix toUser, Box everything)
            throws IOException {
        COSDictionary shading = new COSDictionary();
        for (String key : List.of("ShadingType", "Coords", "Domain", "Extend", "AntiAlias")) {
            if (original.containsKey(key)) {
                shading.setItem(COSName.getPDFName(key), original.getItem(COSName.getPDFName(key)));
            }
        }
        shading.setItem(COSName.COLORSPACE, COSName.DEVICEGRAY);
        shading.setItem(FUNCTION, opacities(gradient));
        COSDictionary group = new COSDictionary();
        group.setItem(COSName.S, COSName.TRANSPARENCY);
        group.setItem(COSName.CS, COSName.DEVICEGRAY);
        group.setBoolean(COSName.I, true);
        COSStream form = new COSStream();
        form.setItem(COSName.TYPE, COSName.XOBJECT);
        form.setItem(COSName.SUBTYPE, COSName.FORM);
        Box box = everything.grow(1);
        form.setItem(COSName.BBOX, numbers(box.x0(), box.y0(), box.x1(), box.y1()));
        form.setItem(COSName.MATRIX, numbers(toUser.a(), toUser.b(), toUser.c(), toUser.d(), toUser.e(), toUser.f()));
        form.setItem(COSName.GROUP, group);
        form.setItem(COSName.RESOURCES, holding(COSName.SHADING, holding(COSName.S, shading)));
        try (OutputStream out = form.createOutputStream()) {
            out.write("/S sh".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        }
        COSDictionary mask = new COSDictionary();
        mask.setItem(COSName.TYPE, COSName.MASK);
        mask.setItem(COSName.S, COSName.LUMINOSITY);
        mask.setItem(COSName.G, form);
        boolean background = original.containsKey(BACKGROUND) && gradient.backgroundKept();
        mask.setItem(COSName.BC, numbers(background ? 1 : 0));
        return state(mask);
    }

    /** @return a graphics state without a soft mask */
    static COSDictionary noMask() {
        return state(COSName.NONE);
    }

    private static COSDictionary state(COSBase mask) {
        COSDictionary state = new COSDictionary();
        state.setItem(COSName.TYPE, COSName.EXT_G_STATE);
        state.setItem(COSName.SMASK, mask);
        return state;
    }

    private static COSDictionary holding(COSName key, COSDictionary value) {
        COSDictionary out = new COSDictionary();
        out.setItem(key, value);
        return out;
    }

    private static COSBase colours(COSBase function, ColourSpace space, ClearedGradient gradient, int from, int to)
            throws IOException {
        double[] range = new double[2 * (to - from)];
        for (int c = from; c < to; c++) {
            range[2 * (c - from)] = space.min(c);
            range[2 * (c - from) + 1] = space.max(c);
        }
        float[] colour = new float[space.components()];
        return joined(
                gradient,
                function,
                piece -> sampled(piece, range, (t, out) -> {
                    gradient.at(t, colour);
                    for (int c = from; c < to; c++) {
                        out[c - from] = (colour[c] - space.min(c)) / (space.max(c) - space.min(c));
                    }
                }));
    }

    private static COSBase opacities(ClearedGradient gradient) throws IOException {
        COSDictionary whole = new COSDictionary();
        whole.setInt(COSName.FUNCTION_TYPE, 2);
        whole.setItem(COSName.DOMAIN, numbers(-1e6, 1e6));
        whole.setItem(COSName.C0, numbers(1));
        whole.setItem(COSName.C1, numbers(1));
        whole.setItem(COSName.N, COSInteger.ONE);
        float[] colour = new float[32];
        return joined(
                gradient,
                whole,
                piece -> sampled(piece, new double[] {0, 1}, (t, out) -> out[0] = gradient.at(t, colour)));
    }

    /** Makes the function of a part of a shading. */
    private interface Part {
        COSBase of(ClearedGradient.Piece piece) throws IOException;
    }

    /** Gives values at a parameter, each 0 to 1 of its range. */
    private interface Values {
        void at(double parameter, double[] out);
    }

    /** ISO 32000-2 §7.10.4: parts that are kept whole run through one function, each other through its own. */
    private static COSBase joined(ClearedGradient gradient, COSBase whole, Part part) throws IOException {
        List<ClearedGradient.Piece> pieces =
                gradient.pieces().stream().filter(p -> p.to() > p.from()).toList();
        if (pieces.isEmpty()) {
            return part.of(gradient.pieces().get(0));
        }
        COSArray functions = new COSArray();
        COSArray bounds = new COSArray();
        COSArray encode = new COSArray();
        for (ClearedGradient.Piece piece : pieces) {
            functions.add(piece.whole() ? whole : part.of(piece));
            encode.add(new COSFloat(piece.whole() ? (float) piece.from() : 0));
            encode.add(new COSFloat(piece.whole() ? (float) piece.to() : 1));
            if (functions.size() > 1) {
                bounds.add(new COSFloat((float) piece.from()));
            }
        }
        COSDictionary out = new COSDictionary();
        out.setInt(COSName.FUNCTION_TYPE, 3);
        out.setItem(
                COSName.DOMAIN,
                numbers(pieces.get(0).from(), pieces.get(pieces.size() - 1).to()));
        out.setItem(COSName.FUNCTIONS, functions);
        out.setItem(COSName.BOUNDS, bounds);
        out.setItem(COSName.ENCODE, encode);
        return out;
    }

    /** ISO 32000-2 §7.10.2, 16 bits. */
    private static COSStream sampled(ClearedGradient.Piece piece, double[] range, Values values) throws IOException {
        double[] at = new double[range.length / 2];
        byte[] data = new byte[SAMPLES * at.length * 2];
        for (int i = 0, o = 0; i < SAMPLES; i++) {
            double place = INSET + (1 - 2 * INSET) * i / (SAMPLES - 1);
            values.at(piece.from() + (piece.to() - piece.from()) * place, at);
            for (double value : at) {
                int sample = (int) Math.round(65535 * Math.max(0, Math.min(1, value)));
                data[o++] = (byte) (sample >> 8);
                data[o++] = (byte) sample;
            }
        }
        COSStream out = new COSStream();
        out.setInt(COSName.FUNCTION_TYPE, 0);
        out.setItem(COSName.DOMAIN, numbers(0, 1));
        out.setItem(COSName.RANGE, numbers(range));
        out.setItem(COSName.SIZE, numbers(SAMPLES));
        out.setInt(COSName.BITS_PER_SAMPLE, 16);
        try (OutputStream stream = out.createOutputStream(COSName.FLATE_DECODE)) {
            stream.write(data);
        }
        return out;
    }

    static COSArray numbers(double... values) {
        COSArray out = new COSArray();
        for (double value : values) {
            out.add(value == Math.rint(value) ? COSInteger.get((long) value) : new COSFloat((float) value));
        }
        return out;
    }
}
