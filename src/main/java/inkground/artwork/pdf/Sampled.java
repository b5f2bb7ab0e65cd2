package inkground.artwork.pdf;

import inkground.artwork.TintTransform;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSStream;

/**
 * A sampled function: ISO 32000-2 §7.10.2, multilinear between the samples. Order 3 (cubic) is read as 1, as the standard
 * allows.
 *
 * @param domain lowest and highest value of each input
 * @param range lowest and highest value of each output
 * @param size samples along each input
 * @param encode from the domain to sample numbers
 * @param table decoded samples, the first input varying fastest, outputs interleaved
 */
record Sampled(double[] domain, double[] range, int[] size, double[] encode, float[] table) implements TintTransform {
    /** Largest number of values in a table. */
    private static final long MAX_TABLE = 16_000_000;
    /** Largest number of inputs: a point then has up to 65,536 neighbours. */
    private static final int MAX_INPUTS = 16;

    static Sampled read(COSDictionary dict, double[] domain) throws IOException {
        int inputs = domain.length / 2;
        if (!(dict instanceof COSStream stream) || inputs > MAX_INPUTS) {
            throw new IOException("a sampled function without data or with more than " + MAX_INPUTS + " inputs");
        }
        double[] range = Cos.required(dict, "Range", 2);
        int[] size = sizes(dict, inputs);
        int outputs = range.length / 2;
        long values = outputs;
        for (int s : size) {
            values *= s;
            if (values > MAX_TABLE) {
                throw new IOException("a sampled function with a table of more than " + MAX_TABLE + " values");
            }
        }
        double[] encode = Cos.numbers(Cos.get(dict, "Encode"));
        if (encode == null || encode.length < 2 * inputs) {
            encode = new double[2 * inputs];
            for (int i = 0; i < inputs; i++) {
                encode[2 * i + 1] = size[i] - 1;
            }
        }
        double[] decode = Cos.numbers(dict, "Decode", range);
        return new Sampled(domain, range, size, encode, table(stream, (int) values, decode, outputs));
    }

    private static int[] sizes(COSDictionary dict, int inputs) throws IOException {
        double[] stated = Cos.required(dict, "Size", inputs);
        int[] out = new int[inputs];
        for (int i = 0; i < inputs; i++) {
            out[i] = (int) stated[i];
            if (out[i] < 1) {
                throw new IOException("a sampled function of no size");
            }
        }
        return out;
    }

    private static float[] table(COSStream stream, int values, double[] decode, int outputs) throws IOException {
        int bits = stream.getInt(Cos.name("BitsPerSample"), 0);
        if (bits < 1 || bits > 32) {
            throw new IOException("a sampled function of " + bits + " bits");
        }
        byte[] data = StreamData.prefix(stream, (int) (((long) values * bits + 7) / 8));
        Bits reader = new Bits(data);
        double top = (1L << bits) - 1;
        float[] out = new float[values];
        for (int i = 0; i < values; i++) {
            int o = i % outputs;
            out[i] = (float) (decode[2 * o] + reader.read(bits) / top * (decode[2 * o + 1] - decode[2 * o]));
        }
        return out;
    }

    @Override
    public int outputs() {
        return range.length / 2;
    }

    @Override
    public void apply(float[] in, float[] out) {
        int inputs = size.length;
        int[] low = new int[inputs];
        double[] part = new double[inputs];
        for (int i = 0; i < inputs; i++) {
            double d0 = domain[2 * i];
            double d1 = domain[2 * i + 1];
            double x = Functions.clip(in[i], d0, d1);
            double e = d1 > d0
                    ? encode[2 * i] + (x - d0) * (encode[2 * i + 1] - encode[2 * i]) / (d1 - d0)
                    : encode[2 * i];
            e = Math.max(0, Math.min(size[i] - 1, e));
            low[i] = Math.min((int) e, Math.max(0, size[i] - 2));
            part[i] = e - low[i];
        }
        double[] sum = new double[outputs()];
        for (int corner = 0; corner < 1 << inputs; corner++) {
            add(corner, low, part, sum);
        }
        for (int o = 0; o < sum.length; o++) {
            out[o] = Functions.clip(sum[o], range[2 * o], range[2 * o + 1]);
        }
    }

    private void add(int corner, int[] low, double[] part, double[] sum) {
        double weight = 1;
        int at = 0;
        int stride = 1;
        for (int i = 0; i < low.length && weight != 0; i++) {
            int up = corner >> i & 1;
            weight *= up == 1 ? part[i] : 1 - part[i];
            at += (low[i] + up) * stride;
            stride *= size[i];
        }
        if (weight != 0) {
            for (int o = 0; o < sum.length; o++) {
                sum[o] += weight * table[at * sum.length + o];
            }
        }
    }
}
