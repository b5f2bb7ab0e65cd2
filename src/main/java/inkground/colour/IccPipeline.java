package inkground.colour;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/**
 * One transform tag of an ICC profile [ICC1]: lut8Type, lut16Type (version 2), lutAToBType or lutBToAType (version 4), as stages that
 * follow one another. Values between stages are encoded, 0 to 1. Immutable.
 */
final class IccPipeline {
    private static final int LUT8 = 0x6d667431; // mft1
    private static final int LUT16 = 0x6d667432; // mft2
    private static final int A_TO_B = 0x6d414220; // mAB
    private static final int B_TO_A = 0x6d424120; // mBA

    private final List<Stage> stages;
    private final boolean lut16;

    private interface Stage {
        double[] apply(double[] in);
    }

    private IccPipeline(List<Stage> stages, boolean lut16) {
        this.stages = List.copyOf(stages);
        this.lut16 = lut16;
    }

    /**
     * @param tag data of the tag
     * @param labInput whether its inputs are Lab, which the table is read differently for
     * @param inputs number of channels that it has to take
     * @param outputs number of channels that it has to give
     * @throws BrokenTag if it is none of the known types or damaged
     */
    static IccPipeline read(ByteBuffer tag, boolean labInput, int inputs, int outputs) throws BrokenTag {
        try {
            int type = tag.getInt(0);
            int from = tag.get(8) & 255;
            int to = tag.get(9) & 255;
            if (from != inputs || to != outputs) {
                throw new BrokenTag("a transform of " + from + " to " + to + " channels where " + inputs + " to "
                        + outputs + " are needed");
            }
            List<Stage> stages =
                    switch (type) {
                        case LUT8 -> lut(tag, inputs, outputs, 1, labInput);
                        case LUT16 -> lut(tag, inputs, outputs, 2, labInput);
                        case A_TO_B -> staged(tag, inputs, outputs, true, labInput);
                        case B_TO_A -> staged(tag, inputs, outputs, false, labInput);
                        default -> throw new BrokenTag("a transform of an unknown type");
                    };
            return new IccPipeline(stages, type == LUT16);
        } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException e) {
            throw new BrokenTag("a transform that is cut off", e);
        }
    }

    /** @return whether Lab is in the encoding that version 2 has for 16 bits, which lut16Type keeps in version 4 */
    boolean legacyLab() {
        return lut16;
    }

    double[] apply(double[] in) {
        double[] values = in;
        for (Stage stage : stages) {
            values = stage.apply(values);
        }
        return values;
    }

    private static List<Stage> lut(ByteBuffer tag, int inputs, int outputs, int bytes, boolean labInput)
            throws BrokenTag {
        int nodes = tag.get(10) & 255;
        List<Stage> out = new ArrayList<>();
        double[] matrix = new double[12];
        tag.position(12);
        for (int i = 0; i < 9; i++) {
            matrix[i] = tag.getInt() / 65536.0;
        }
        // It is the identity for all inputs but X, Y, Z.
        if (inputs == 3) {
            out.add(new Linear(matrix));
        }
        int inputEntries = bytes == 1 ? 256 : tag.getShort() & 0xffff;
        int outputEntries = bytes == 1 ? 256 : tag.getShort() & 0xffff;
        out.add(new Curves(tables(tag, inputs, inputEntries, bytes)));
        int[] all = new int[inputs];
        java.util.Arrays.fill(all, nodes);
        IccTable table = IccTable.read(tag, all, outputs, bytes, labInput);
        out.add(table::at);
        out.add(new Curves(tables(tag, outputs, outputEntries, bytes)));
        return out;
    }

    private static List<IccCurve> tables(ByteBuffer in, int channels, int entries, int bytes) throws BrokenTag {
        if (entries < 2 || entries > 4096 || (long) channels * entries * bytes > in.remaining()) {
            throw new BrokenTag("curves of " + entries + " entries");
        }
        List<IccCurve> out = new ArrayList<>();
        for (int c = 0; c < channels; c++) {
            float[] samples = new float[entries];
            for (int i = 0; i < entries; i++) {
                samples[i] = bytes == 1 ? (in.get() & 255) / 255f : (in.getShort() & 0xffff) / 65535f;
            }
            out.add(IccCurve.of(samples));
        }
        return out;
    }

    private static List<Stage> staged(ByteBuffer tag, int inputs, int outputs, boolean fromDevice, boolean labInput)
            throws BrokenTag {
        int device = fromDevice ? inputs : outputs;
        int connection = fromDevice ? outputs : inputs;
        List<Stage> out = new ArrayList<>();
        addCurves(out, tag, 28, device); // A, beside the device
        addTable(out, tag, inputs, outputs, labInput);
        addCurves(out, tag, 20, connection); // M
        int matrix = tag.getInt(16);
        if (matrix != 0) {
            double[] m = new double[12];
            tag.position(matrix);
            for (int i = 0; i < 12; i++) {
                m[i] = tag.getInt() / 65536.0;
            }
            out.add(new Linear(m));
        }
        addCurves(out, tag, 12, connection); // B, beside the connection space
        if (!fromDevice) {
            java.util.Collections.reverse(out);
        }
        if (tag.getInt(24) == 0 && inputs != outputs) {
            throw new BrokenTag("a transform without its table");
        }
        return out;
    }

    private static void addCurves(List<Stage> out, ByteBuffer tag, int pointer, int channels) throws BrokenTag {
        int offset = tag.getInt(pointer);
        if (offset == 0) {
            return;
        }
        List<IccCurve> curves = new ArrayList<>();
        tag.position(offset);
        for (int i = 0; i < channels; i++) {
            curves.add(IccCurve.read(tag));
            tag.position(Math.min(tag.limit(), (tag.position() + 3) / 4 * 4));
        }
        out.add(new Curves(curves));
    }

    private static void addTable(List<Stage> out, ByteBuffer tag, int inputs, int outputs, boolean labInput)
            throws BrokenTag {
        int offset = tag.getInt(24);
        if (offset == 0) {
            return;
        }
        int[] nodes = new int[inputs];
        for (int i = 0; i < inputs; i++) {
            nodes[i] = tag.get(offset + i) & 255;
        }
        int bytes = tag.get(offset + 16);
        if (bytes != 1 && bytes != 2) {
            throw new BrokenTag("table values of " + bytes + " bytes");
        }
        tag.position(offset + 20);
        IccTable table = IccTable.read(tag, nodes, outputs, bytes, labInput);
        out.add(table::at);
    }

    private record Curves(List<IccCurve> curves) implements Stage {
        @Override
        public double[] apply(double[] in) {
            double[] out = new double[curves.size()];
            for (int i = 0; i < out.length; i++) {
                out[i] = curves.get(i).at(in[i]);
            }
            return out;
        }
    }

    /** Three rows of three, then three constants. */
    private record Linear(double[] m) implements Stage {
        @Override
        public double[] apply(double[] in) {
            double[] out = new double[3];
            for (int r = 0; r < 3; r++) {
                out[r] = m[3 * r] * in[0] + m[3 * r + 1] * in[1] + m[3 * r + 2] * in[2] + m[9 + r];
            }
            return out;
        }
    }
}
