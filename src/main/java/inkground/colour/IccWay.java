package inkground.colour;

import inkground.colour.IccReader.BrokenProfile;
import java.util.List;

/**
 * One way through an ICC profile: from its device to X, Y, Z for D50, or back [ICC1]. Tables come before matrices. Stateless, so that
 * any thread may use it.
 */
@FunctionalInterface
interface IccWay {
    /**
     * @param in the components, 0 to 1, or X, Y, Z
     * @return X, Y, Z, or the components, which may be a little outside of 0 to 1
     */
    double[] apply(double[] in);

    /** @return from components to X, Y, Z */
    static IccWay toConnection(IccTags tags, RenderingIntent intent, int components) throws BrokenProfile {
        String table = table(tags, "A2B", intent);
        if (table != null) {
            IccPipeline pipeline = tags.read(table, data -> IccPipeline.read(data, false, components, 3));
            boolean lab = tags.connection().equals("Lab ");
            double scale = tags.space().equals("Lab ") && pipeline.legacyLab() ? 65280.0 / 65535 : 1;
            return in -> decoded(pipeline.apply(scaled(in, scale)), lab, pipeline.legacyLab());
        }
        if (components == 1) {
            IccCurve curve = tags.read("kTRC", IccCurve::read);
            boolean lab = tags.connection().equals("Lab ");
            return in -> grey(curve.at(in[0]), lab);
        }
        List<IccCurve> curves = rgbCurves(tags, components);
        double[] matrix = matrix(tags);
        return in -> {
            double[] linear = new double[3];
            for (int i = 0; i < 3; i++) {
                linear[i] = curves.get(i).at(in[i]);
            }
            double[] xyz = new double[3];
            Cie.multiply(matrix, linear, xyz);
            return xyz;
        };
    }

    /** @return from X, Y, Z to components */
    static IccWay toDevice(IccTags tags, RenderingIntent intent, int components) throws BrokenProfile {
        String table = table(tags, "B2A", intent);
        if (table != null) {
            boolean lab = tags.connection().equals("Lab ");
            IccPipeline pipeline = tags.read(table, data -> IccPipeline.read(data, lab, 3, components));
            return xyz -> pipeline.apply(encoded(xyz, lab, pipeline.legacyLab()));
        }
        boolean curvesOnly = components == 1 && tags.has("kTRC") || components == 3 && tags.has("rXYZ");
        if (!curvesOnly) {
            throw new BrokenProfile(
                    "the colour profile has no tables from colours to " + components + " components", null);
        }
        if (components == 1) {
            IccCurve curve = tags.read("kTRC", IccCurve::read);
            boolean lab = tags.connection().equals("Lab ");
            return xyz -> new double[] {curve.inverse(lab ? (116 * Cie.f(xyz[1]) - 16) / 100 : xyz[1])};
        }
        List<IccCurve> curves = rgbCurves(tags, components);
        double[] matrix = Cie.inverse(matrix(tags));
        return xyz -> {
            double[] linear = new double[3];
            Cie.multiply(matrix, xyz, linear);
            for (int i = 0; i < 3; i++) {
                linear[i] = curves.get(i).inverse(linear[i]);
            }
            return linear;
        };
    }

    /** @return whether colours go to the device by a table, not by a matrix or a curve */
    static boolean byTable(IccTags tags, RenderingIntent intent) {
        return table(tags, "B2A", intent) != null;
    }

    private static String table(IccTags tags, String direction, RenderingIntent intent) {
        RenderingIntent of = intent == RenderingIntent.ABSOLUTE ? RenderingIntent.RELATIVE : intent;
        String wanted = direction + of.ordinal();
        if (tags.has(wanted)) {
            return wanted;
        }
        return tags.has(direction + 0) ? direction + 0 : null;
    }

    private static List<IccCurve> rgbCurves(IccTags tags, int components) throws BrokenProfile {
        if (components != 3) {
            throw new BrokenProfile("the colour profile is damaged: it lacks its table A2B0", null);
        }
        return List.of(
                tags.read("rTRC", IccCurve::read),
                tags.read("gTRC", IccCurve::read),
                tags.read("bTRC", IccCurve::read));
    }

    private static double[] matrix(IccTags tags) throws BrokenProfile {
        double[] out = new double[9];
        String[] columns = {"rXYZ", "gXYZ", "bXYZ"};
        for (int c = 0; c < 3; c++) {
            double[] xyz = tags.xyz(columns[c]);
            if (xyz == null) {
                throw new BrokenProfile("the colour profile is damaged: its tag " + columns[c] + " is missing", null);
            }
            for (int r = 0; r < 3; r++) {
                out[3 * r + c] = xyz[r];
            }
        }
        double determinant = out[0] * (out[4] * out[8] - out[5] * out[7])
                - out[1] * (out[3] * out[8] - out[5] * out[6])
                + out[2] * (out[3] * out[7] - out[4] * out[6]);
        if (!(Math.abs(determinant) > 1e-9)) {
            throw new BrokenProfile(
                    "the colour profile is damaged: its primaries rXYZ, gXYZ, bXYZ lie in one plane", null);
        }
        return out;
    }

    private static double[] grey(double value, boolean lab) {
        double[] xyz = new double[3];
        if (lab) {
            Cie.labToXyz(100 * value, 0, 0, xyz);
        } else {
            xyz[0] = value * Cie.D50_X;
            xyz[1] = value;
            xyz[2] = value * Cie.D50_Z;
        }
        return xyz;
    }

    private static double[] scaled(double[] in, double scale) {
        double[] out = in.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] *= scale;
        }
        return out;
    }

    // Sixteen bits hold Lab in two ways: version 2 puts L* 100 at 65280, version 4 at 65535. X, Y, Z of 1 are 32768 in
    // both.
    private static double[] decoded(double[] v, boolean lab, boolean legacy) {
        double[] xyz = new double[3];
        if (!lab) {
            for (int i = 0; i < 3; i++) {
                xyz[i] = v[i] * 65535 / 32768;
            }
        } else if (legacy) {
            Cie.labToXyz(v[0] * 65535 / 652.8, v[1] * 65535 / 256 - 128, v[2] * 65535 / 256 - 128, xyz);
        } else {
            Cie.labToXyz(100 * v[0], 255 * v[1] - 128, 255 * v[2] - 128, xyz);
        }
        return xyz;
    }

    private static double[] encoded(double[] xyz, boolean lab, boolean legacy) {
        double[] out = new double[3];
        if (!lab) {
            for (int i = 0; i < 3; i++) {
                out[i] = xyz[i] * 32768 / 65535;
            }
            return out;
        }
        Lab colour = Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
        if (legacy) {
            out[0] = colour.L() * 652.8 / 65535;
            out[1] = (colour.a() + 128) * 256 / 65535;
            out[2] = (colour.b() + 128) * 256 / 65535;
        } else {
            out[0] = colour.L() / 100;
            out[1] = (colour.a() + 128) / 255;
            out[2] = (colour.b() + 128) / 255;
        }
        return out;
    }
}
