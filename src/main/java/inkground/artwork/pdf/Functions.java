package inkground.artwork.pdf;

import inkground.artwork.TintTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.common.function.PDFunction;

/**
 * Functions of ISO 32000-2 §7.10 as pure transforms. Everything a function reads lazily from the file is read when it is
 * made, so that afterwards it may be used by any thread and after the file is closed.
 */
final class Functions {
    private static final int MAX_DEPTH = 16;
    private static final long MAX_TABLE = 16_000_000;

    private Functions() {}

    /**
     * @param base a function, or an array of functions of one output each
     * @param inputs number of inputs it must take
     * @param outputs number of outputs wanted
     */
    static TintTransform of(COSBase base, int inputs, int outputs) throws IOException {
        TintTransform made;
        if (Cos.resolve(base) instanceof COSArray array) {
            List<TintTransform> parts = new ArrayList<>();
            for (int i = 0; i < Math.min(array.size(), outputs); i++) {
                parts.add(one(array.getObject(i), inputs, 0));
            }
            made = parts.size() == 1 ? parts.get(0) : new Side(List.copyOf(parts));
        } else {
            made = one(base, inputs, 0);
        }
        if (made.outputs() < outputs) {
            throw new IOException("a function gives " + made.outputs() + " values where " + outputs + " are needed");
        }
        return made.outputs() == outputs ? made : new First(made, outputs);
    }

    private static TintTransform one(COSBase base, int inputs, int depth) throws IOException {
        COSBase object = Cos.resolve(base);
        if (depth > MAX_DEPTH) {
            throw new IOException("functions nested too deeply");
        }
        if (object instanceof COSName) {
            return new Identity(inputs);
        }
        if (!(object instanceof COSDictionary dict)) {
            throw new IOException("no function");
        }
        double[] domain = Cos.required(dict, "Domain", 2 * inputs);
        if (domain.length != 2 * inputs) {
            throw new IOException("a function takes " + domain.length / 2 + " values instead of " + inputs);
        }
        int type = dict.getInt(COSName.FUNCTION_TYPE);
        return type == 3 ? stitching(dict, domain, depth) : library(dict, type, domain);
    }

    private static TintTransform stitching(COSDictionary dict, double[] domain, int depth) throws IOException {
        COSArray functions = Cos.array(dict, "Functions");
        int count = functions == null ? 0 : functions.size();
        if (count == 0) {
            throw new IOException("a stitching function without parts");
        }
        double[] bounds = Cos.required(dict, "Bounds", count - 1);
        double[] encode = Cos.required(dict, "Encode", 2 * count);
        List<TintTransform> parts = new ArrayList<>();
        int outputs = Integer.MAX_VALUE;
        for (int i = 0; i < count; i++) {
            TintTransform part = one(functions.getObject(i), 1, depth + 1);
            outputs = Math.min(outputs, part.outputs());
            parts.add(part);
        }
        return new Stitching(List.copyOf(parts), domain, bounds, encode, Cos.numbers(Cos.get(dict, "Range")), outputs);
    }

    private static TintTransform library(COSDictionary dict, int type, double[] domain) throws IOException {
        if (type == 0) {
            checkTable(dict);
        }
        PDFunction function = PDFunction.create(dict);
        try {
            float[] middle = new float[domain.length / 2];
            for (int i = 0; i < middle.length; i++) {
                middle[i] = (float) ((domain[2 * i] + domain[2 * i + 1]) / 2);
            }
            // The first evaluation makes the library read tables and ranges from the file.
            int outputs = function.eval(middle).length;
            return new Library(function, domain, outputs);
        } catch (RuntimeException e) {
            throw new IOException("a function that cannot be evaluated", e);
        }
    }

    private static void checkTable(COSDictionary dict) throws IOException {
        double[] range = Cos.required(dict, "Range", 2);
        double entries = range.length / 2;
        for (double size : Cos.required(dict, "Size", 1)) {
            entries *= Math.max(0, size);
        }
        if (!(entries > 0 && entries <= MAX_TABLE)) {
            throw new IOException("a sampled function with a table of " + entries + " values");
        }
    }

    private static float clip(double v, double low, double high) {
        return (float) Math.max(low, Math.min(high, v));
    }

    /** Evaluates with the library; see the class comment for why this is safe from any thread. */
    private record Library(PDFunction function, double[] domain, int outputs) implements TintTransform {
        @Override
        public void apply(float[] in, float[] out) {
            float[] clipped = new float[domain.length / 2];
            for (int i = 0; i < clipped.length; i++) {
                clipped[i] = clip(in[i], domain[2 * i], domain[2 * i + 1]);
            }
            float[] result;
            try {
                result = function.eval(clipped);
            } catch (IOException | RuntimeException e) {
                // A calculator program may fail at single points (a division by zero); it then gives nothing there.
                result = new float[outputs];
            }
            for (int i = 0; i < outputs; i++) {
                out[i] = i < result.length && !Float.isNaN(result[i]) ? result[i] : 0;
            }
        }
    }

    /** Functions joined end to end over one input: §7.10.4. */
    private record Stitching(
            List<TintTransform> parts, double[] domain, double[] bounds, double[] encode, double[] range, int outputs)
            implements TintTransform {
        @Override
        public void apply(float[] in, float[] out) {
            double x = clip(in[0], domain[0], domain[1]);
            int k = 0;
            while (k < parts.size() - 1 && x >= bounds[k]) {
                k++;
            }
            double low = k == 0 ? domain[0] : bounds[k - 1];
            double high = k == parts.size() - 1 ? domain[1] : bounds[k];
            double e0 = encode[2 * k];
            double e1 = encode[2 * k + 1];
            float[] full = new float[parts.get(k).outputs()];
            parts.get(k)
                    .apply(new float[] {(float) (high > low ? e0 + (x - low) * (e1 - e0) / (high - low) : e0)}, full);
            for (int i = 0; i < outputs; i++) {
                boolean limited = range != null && range.length >= 2 * i + 2;
                out[i] = limited ? clip(full[i], range[2 * i], range[2 * i + 1]) : full[i];
            }
        }
    }

    /** Functions side by side, each giving one output. */
    private record Side(List<TintTransform> parts) implements TintTransform {
        @Override
        public int outputs() {
            return parts.size();
        }

        @Override
        public void apply(float[] in, float[] out) {
            for (int i = 0; i < parts.size(); i++) {
                float[] one = new float[parts.get(i).outputs()];
                parts.get(i).apply(in, one);
                out[i] = one[0];
            }
        }
    }

    /** The first outputs of a function that gives more. */
    private record First(TintTransform whole, int outputs) implements TintTransform {
        @Override
        public void apply(float[] in, float[] out) {
            float[] full = new float[whole.outputs()];
            whole.apply(in, full);
            System.arraycopy(full, 0, out, 0, outputs);
        }
    }

    /** Gives what it gets. */
    private record Identity(int outputs) implements TintTransform {
        @Override
        public void apply(float[] in, float[] out) {
            System.arraycopy(in, 0, out, 0, outputs);
        }
    }
}
