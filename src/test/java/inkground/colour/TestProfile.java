package inkground.colour;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Profiles of our own invention, of versions 2 and 4, matrix and table, of process inks, displays and greys. Where a profile has
 * tables, those of the intents differ by more than a reader of the wrong one could hide.
 */
public final class TestProfile {
    private static final int TINT_NODES = 5;
    private static final int LAB_NODES = 9;

    private TestProfile() {}

    /** @param args the file to write, for making the references */
    public static void main(String[] args) throws java.io.IOException {
        java.nio.file.Files.write(java.nio.file.Path.of(args[0]), bytes());
    }

    /** A profile and its number of components. */
    public record Named(byte[] bytes, int components) {}

    /** @return all of them by name */
    public static Map<String, Named> all() {
        Map<String, Named> out = new LinkedHashMap<>();
        out.put("cmyk-lut-v2", new Named(bytes(), 4));
        out.put("cmyk-lut-v4", new Named(cmyk4(), 4));
        out.put("rgb-matrix-v2", new Named(rgbMatrix2(), 3));
        out.put("rgb-matrix-v4", new Named(rgbMatrix4(), 3));
        out.put("rgb-lut-v2", new Named(rgbLut(2), 3));
        out.put("rgb-lut-v4", new Named(rgbLut(4), 3));
        out.put("grey-v2", new Named(grey2(), 1));
        out.put("grey-v4", new Named(grey4(), 1));
        return out;
    }

    /** @return a press of version 2 on a yellowish paper */
    public static byte[] bytes() {
        ProfileMaker maker = new ProfileMaker(2, "prtrCMYKLab ").tag("wtpt", ProfileMaker.xyz(0.86, 0.89, 0.66));
        for (int intent = 0; intent < 3; intent++) {
            int of = intent;
            maker.tag("A2B" + of, ProfileMaker.lut16(4, 3, TINT_NODES, in -> lab2(press(of, in))));
            maker.tag("B2A" + of, ProfileMaker.lut16(3, 4, LAB_NODES, in -> tints(of, labOf2(in))));
        }
        return maker.bytes();
    }

    private static byte[] cmyk4() {
        ProfileMaker maker = new ProfileMaker(4, "prtrCMYKLab ").tag("wtpt", ProfileMaker.xyz(0.86, 0.89, 0.66));
        for (int intent = 0; intent < 3; intent++) {
            int of = intent;
            maker.tag("A2B" + of, ProfileMaker.lutAtoB("mAB ", 4, 3, TINT_NODES, in -> lab4(press(of, in))));
            maker.tag("B2A" + of, ProfileMaker.lutAtoB("mBA ", 3, 4, LAB_NODES, in -> tints(of, labOf4(in))));
        }
        return maker.bytes();
    }

    /** @return a display wider than sRGB, of version 2, each primary with an exponent of its own */
    public static byte[] rgbMatrix2() {
        return new ProfileMaker(2, "mntrRGB XYZ ")
                .tag("wtpt", ProfileMaker.xyz(0.9505, 1, 1.089))
                .tag("rXYZ", ProfileMaker.xyz(0.6097, 0.3111, 0.0195))
                .tag("gXYZ", ProfileMaker.xyz(0.2053, 0.6257, 0.0609))
                .tag("bXYZ", ProfileMaker.xyz(0.1492, 0.0632, 0.7446))
                .tag("rTRC", ProfileMaker.gamma(2.2))
                .tag("gTRC", ProfileMaker.gamma(2.0))
                .tag("bTRC", ProfileMaker.gamma(1.9))
                .bytes();
    }

    private static byte[] rgbMatrix4() {
        byte[] curve = ProfileMaker.parametric(2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045);
        return new ProfileMaker(4, "mntrRGB XYZ ")
                .tag("wtpt", ProfileMaker.xyz(0.9642, 1, 0.8249))
                .tag("rXYZ", ProfileMaker.xyz(0.5151, 0.2412, -0.0011))
                .tag("gXYZ", ProfileMaker.xyz(0.2920, 0.6922, 0.0419))
                .tag("bXYZ", ProfileMaker.xyz(0.1571, 0.0666, 0.7841))
                .tag("rTRC", curve)
                .tag("gTRC", curve)
                .tag("bTRC", curve)
                .bytes();
    }

    /** @return a display by tables, for tests of the screen */
    public static byte[] rgbLut(int version) {
        ProfileMaker maker = new ProfileMaker(version, "mntrRGB Lab ").tag("wtpt", ProfileMaker.xyz(0.9642, 1, 0.8249));
        for (int intent = 0; intent < 3; intent++) {
            int of = intent;
            if (version == 2) {
                maker.tag("A2B" + of, ProfileMaker.lut16(3, 3, LAB_NODES, in -> lab2(screen(of, in))));
                maker.tag("B2A" + of, ProfileMaker.lut16(3, 3, LAB_NODES, in -> levels(of, labOf2(in))));
            } else {
                maker.tag("A2B" + of, ProfileMaker.lutAtoB("mAB ", 3, 3, LAB_NODES, in -> lab4(screen(of, in))));
                maker.tag("B2A" + of, ProfileMaker.lutAtoB("mBA ", 3, 3, LAB_NODES, in -> levels(of, labOf4(in))));
            }
        }
        return maker.bytes();
    }

    private static byte[] grey2() {
        return new ProfileMaker(2, "mntrGRAYXYZ ")
                .tag("wtpt", ProfileMaker.xyz(0.9642, 1, 0.8249))
                .tag("kTRC", ProfileMaker.gamma(1.8))
                .bytes();
    }

    private static byte[] grey4() {
        return new ProfileMaker(4, "prtrGRAYLab ")
                .tag("wtpt", ProfileMaker.xyz(0.87, 0.9, 0.72))
                .tag("kTRC", ProfileMaker.sampled(0, 0.02, 0.1, 0.24, 0.45, 0.7, 1))
                .bytes();
    }

    private static double[] press(int intent, double[] tints) {
        double light = (1 - 0.45 * tints[0]) * (1 - 0.5 * tints[1]) * (1 - 0.08 * tints[2]) * (1 - 0.85 * tints[3]);
        double left = 1 - 0.8 * tints[3];
        double L = 100 * light;
        double a = (-38 * tints[0] + 74 * tints[1] - 6 * tints[2]) * left;
        double b = (-48 * tints[0] - 4 * tints[1] + 90 * tints[2]) * left;
        double strength = intent == 0 ? 0.9 : intent == 1 ? 1 : 1.15;
        return new double[] {intent == 0 ? 6 + 0.94 * L : L, a * strength, b * strength};
    }

    private static double[] tints(int intent, double[] lab) {
        double strength = intent == 0 ? 0.85 : intent == 1 ? 1 : 1.2;
        double dark = (100 - lab[0]) / 100 * (intent == 0 ? 0.9 : 1);
        return new double[] {
            0.6 * dark - strength * (lab[1] + lab[2]) / 200,
            0.5 * dark + strength * lab[1] / 130,
            0.5 * dark + strength * lab[2] / 130,
            dark * dark
        };
    }

    private static double[] screen(int intent, double[] rgb) {
        double strength = intent == 0 ? 0.9 : intent == 1 ? 1 : 1.1;
        double L = 100 * Math.pow(0.25 * rgb[0] + 0.65 * rgb[1] + 0.1 * rgb[2], 1 / 1.1);
        double a = 80 * (rgb[0] - rgb[1]) + 10 * (rgb[2] - rgb[1]);
        double b = 60 * (0.5 * rgb[0] + 0.5 * rgb[1] - rgb[2]) * 1.3;
        return new double[] {L, a * strength, b * strength};
    }

    private static double[] levels(int intent, double[] lab) {
        double strength = intent == 0 ? 1.1 : intent == 1 ? 1 : 0.9;
        double light = lab[0] / 100;
        double a = strength * lab[1] / 90;
        double b = strength * lab[2] / 78;
        return new double[] {light + 0.65 * a + 0.1 * b, light - 0.3 * a + 0.1 * b, light + 0.1 * a - 0.9 * b};
    }

    // Lab of version 2 in 65535ths: L* 100 is 65280, a* and b* 0 are 32768 with 256 a unit.
    private static double[] lab2(double[] lab) {
        return new double[] {lab[0] * 652.8 / 65535, (32768 + 256 * lab[1]) / 65535, (32768 + 256 * lab[2]) / 65535};
    }

    private static double[] labOf2(double[] in) {
        return new double[] {in[0] * 65535 / 652.8, (in[1] * 65535 - 32768) / 256, (in[2] * 65535 - 32768) / 256};
    }

    // Lab of version 4: L* 100 is all, a* and b* go from -128 to 127.
    private static double[] lab4(double[] lab) {
        return new double[] {lab[0] / 100, (lab[1] + 128) / 255, (lab[2] + 128) / 255};
    }

    private static double[] labOf4(double[] in) {
        return new double[] {100 * in[0], 255 * in[1] - 128, 255 * in[2] - 128};
    }
}
