package inkground.artwork.pdf;

import inkground.artwork.TintTransform;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * Functions of ISO 32000-2 §7.10 as pure transforms. They are read whole when made and never change, so that any thread may
 * use them, and after the file is closed; the library's own functions read the file as they go and promise neither.
 */
final class Functions {
    private static final int MAX_DEPTH = 16;
    private static final int MAX_PROGRAM_BYTES = 1 << 20;

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
        return switch (type) {
            case 0 -> Sampled.read(dict, domain);
            case 2 -> exponential(dict, domain);
            case 3 -> stitching(dict, domain, depth);
            case 4 -> calculator(dict, domain);
            default -> throw new IOException("a function of type " + type);
        };
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

    private static TintTransform exponential(COSDictionary dict, double[] domain) throws IOException {
        double[] c0 = Cos.numbers(dict, "C0", 0);
        double[] c1 = Cos.numbers(dict, "C1", 1);
        double[] range = Cos.numbers(Cos.get(dict, "Range"));
        int outputs = Math.min(c0.length, c1.length);
        if (range != null && range.length < 2 * outputs) {
            throw new IOException("a function whose range has too few entries");
        }
        return new Exponential(domain, range, c0, c1, dict.getFloat(Cos.name("N"), 1), outputs);
    }

    private static TintTransform calculator(COSDictionary dict, double[] domain) throws IOException {
        if (!(dict instanceof COSStream stream)) {
            throw new IOException("a calculator function without a program");
        }
        String program = new String(StreamData.all(stream, MAX_PROGRAM_BYTES), StandardCharsets.ISO_8859_1);
        return Calculator.parse(program, domain, Cos.required(dict, "Range", 2));
    }

    static float clip(double v, double low, double high) {
        return (float) Math.max(low, Math.min(high, v));
    }

    /** C0 + x^N (C1 - C0): §7.10.3. */
    private record Exponential(double[] domain, double[] range, double[] c0, double[] c1, double exponent, int outputs)
            implements TintTransform {
        @Override
        public void apply(float[] in, float[] out) {
            double x = clip(in[0], domain[0], domain[1]);
            double power = exponent == 1 ? x : Math.pow(x, exponent);
            for (int i = 0; i < outputs; i++) {
                double value = c0[i] + power * (c1[i] - c0[i]);
                value = Double.isFinite(value) ? value : c0[i]; // 0 to a negative power, a negative base
                out[i] = range == null ? (float) value : clip(value, range[2 * i], range[2 * i + 1]);
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
