package inkground.colour;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * A many-dimensional table of an ICC profile, its first input the slowest. Between its nodes it is linear: along each input in turn
 * where the inputs are Lab, whose axes mean different things; and in tetrahedra along the diagonal where they are a device's last three
 * channels, which keeps greys grey. That is the reading common to colour engines; [ICC1] leaves it open. Immutable.
 */
final class IccTable {
    /** Most values of a table, 64 MB in memory: four times the finest usual one. Tags may overlap, so the profile's size is no bound. */
    private static final int MAX_VALUES = 16 << 20;

    private final int inputs;
    private final int outputs;
    private final int[] nodes;
    private final int[] strides;
    private final float[] values; // 0 to 1
    private final boolean lab;

    private IccTable(int[] nodes, int outputs, float[] values, boolean lab) {
        this.inputs = nodes.length;
        this.outputs = outputs;
        this.nodes = nodes;
        this.values = values;
        this.lab = lab;
        this.strides = new int[inputs];
        int stride = outputs;
        for (int i = inputs - 1; i >= 0; i--) {
            strides[i] = stride;
            stride *= nodes[i];
        }
    }

    /**
     * @param in set to the first value; afterwards set to what follows
     * @param nodes along each input
     * @param bytes of one value, 1 or 2
     * @param lab whether the inputs are Lab
     * @throws BrokenTag if the table is larger than what is left
     */
    static IccTable read(ByteBuffer in, int[] nodes, int outputs, int bytes, boolean lab) throws BrokenTag {
        long count = outputs;
        String what = "a table of " + Arrays.toString(nodes) + " nodes";
        for (int n : nodes) {
            count *= n;
            if (n < 1 || count * bytes > in.remaining()) {
                throw new BrokenTag(what + ", which it does not hold");
            }
        }
        if (count > MAX_VALUES) {
            throw new BrokenTag(what + ", above the limit of " + MAX_VALUES + " values");
        }
        float[] values = new float[(int) count];
        for (int i = 0; i < values.length; i++) {
            values[i] = bytes == 1 ? (in.get() & 255) / 255f : (in.getShort() & 0xffff) / 65535f;
        }
        return new IccTable(nodes.clone(), outputs, values, lab);
    }

    /** @return outputs at inputs, each clipped to 0 to 1 */
    double[] at(double[] in) {
        int[] step = new int[inputs];
        double[] rest = new double[inputs];
        int base = 0;
        for (int i = 0; i < inputs; i++) {
            double place = (in[i] > 0 ? Math.min(1, in[i]) : 0) * (nodes[i] - 1);
            int node = Math.max(0, Math.min(nodes[i] - 2, (int) place));
            rest[i] = place - node;
            base += node * strides[i];
            step[i] = nodes[i] > 1 ? strides[i] : 0;
        }
        double[] out = new double[outputs];
        add(0, base, 1, step, rest, out);
        return out;
    }

    /** Adds the part of the table from one input on. */
    private void add(int input, int at, double weight, int[] step, double[] rest, double[] out) {
        if (weight == 0) {
            return;
        }
        if (!lab && inputs - input == 3) {
            tetrahedron(input, at, weight, step, rest, out);
        } else if (input == inputs) {
            for (int o = 0; o < outputs; o++) {
                out[o] += weight * values[at + o];
            }
        } else {
            add(input + 1, at, weight * (1 - rest[input]), step, rest, out);
            add(input + 1, at + step[input], weight * rest[input], step, rest, out);
        }
    }

    private void tetrahedron(int input, int from, double weight, int[] step, double[] rest, double[] out) {
        int a = input;
        int b = input + 1;
        int c = input + 2;
        // sorted by what is left, largest first
        if (rest[a] < rest[b]) {
            int keep = a;
            a = b;
            b = keep;
        }
        if (rest[b] < rest[c]) {
            int keep = b;
            b = c;
            c = keep;
        }
        if (rest[a] < rest[b]) {
            int keep = a;
            a = b;
            b = keep;
        }
        int first = from + step[a];
        int second = first + step[b];
        int third = second + step[c];
        for (int o = 0; o < outputs; o++) {
            out[o] += weight
                    * ((1 - rest[a]) * values[from + o]
                            + (rest[a] - rest[b]) * values[first + o]
                            + (rest[b] - rest[c]) * values[second + o]
                            + rest[c] * values[third + o]);
        }
    }
}
