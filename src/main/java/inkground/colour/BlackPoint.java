package inkground.colour;

import inkground.colour.IccReader.BrokenProfile;
import java.util.Arrays;

/**
 * Black point compensation [ISO18619]: the darkest colour of one medium becomes that of another, and all between is scaled along, in X,
 * Y, Z and with white at rest: {@code v' = w − (w − v)(w − to) / (w − from)} for each of them, w being that of the D50 white. Steps from
 * and to a black of 0 make up a step between any two blacks.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>X, Y, Z</td><td>media-relative, D50, 0 to 1; below 0 for colours darker than the black they come from</td></tr>
 * <tr><td>black</td><td>X, Y, Z of a neutral, L* 0 to 50; tables of version 4 state theirs, which is not quite neutral</td></tr>
 * </table>
 *
 * <p>Example: for a black of Y 0.02, {@link #compress} brings Y 0 to 0.02, 0.5 to 0.51 and 1 to 1; {@link #expand} takes them back.
 *
 * <p>How a profile's black is found follows the standard as Little CMS understands it (the standard itself from memory): its darkest
 * components' L*; for the relative intent of a press, what its perceptual tables print for L* 0; for colours that go to a table, where
 * the way there and back leaves a straight line, by a parabola through the shadows.
 */
final class BlackPoint {
    // Of the reference medium of version 4's perceptual and saturation intents [ICC1].
    private static final double[] REFERENCE = {0.00336, 0.0034731, 0.00287};
    private static final double MOST_L = 50;
    private static final int RAMP = 256;
    // The way there and back counts as straight where it is this close in L*, above this share of its range.
    private static final double STRAIGHT_L = 4;
    private static final double STRAIGHT_FROM = 0.2;
    private static final int LEAST_POINTS = 4;

    private BlackPoint() {}

    /** Brings X, Y, Z from a black of 0 to another, in place. */
    static void compress(double[] xyz, double[] black) {
        for (int i = 0; i < 3; i++) {
            xyz[i] = xyz[i] * (1 - black[i] / Cie.D50[i]) + black[i];
        }
    }

    /** The inverse of {@link #compress}: from a black to 0. */
    static void expand(double[] xyz, double[] black) {
        for (int i = 0; i < 3; i++) {
            xyz[i] = (xyz[i] - black[i]) / (1 - black[i] / Cie.D50[i]);
        }
    }

    /** @return whether an intent's colours go to a device by tables made for a medium whose black is stated */
    static boolean isStated(IccTags tags, RenderingIntent intent) {
        return pleasing(tags, intent) && IccWay.byTable(tags, intent);
    }

    private static boolean pleasing(IccTags tags, RenderingIntent intent) {
        return tags.version() >= 4 && (intent == RenderingIntent.PERCEPTUAL || intent == RenderingIntent.SATURATION);
    }

    /** @return the black of colours that come from a device */
    static double[] ofSource(IccTags tags, RenderingIntent intent, int components) throws BrokenProfile {
        if (intent == RenderingIntent.ABSOLUTE) {
            return new double[3];
        }
        if (pleasing(tags, intent)) {
            return matrix(tags) ? darkest(tags, RenderingIntent.RELATIVE, components) : REFERENCE.clone();
        }
        boolean press = tags.deviceClass().equals("prtr") && tags.space().equals("CMYK");
        return press && intent == RenderingIntent.RELATIVE
                ? perceptualBlack(tags, components)
                : darkest(tags, intent, components);
    }

    /** @return the black of colours that go to a device */
    static double[] ofDevice(IccTags tags, RenderingIntent intent, int components) throws BrokenProfile {
        boolean table = tags.has("B2A" + intent.ordinal());
        boolean usual = tags.space().equals("GRAY")
                || tags.space().equals("RGB ")
                || tags.space().equals("CMYK");
        if (intent == RenderingIntent.ABSOLUTE || pleasing(tags, intent) || !table || !usual) {
            return ofSource(tags, intent, components);
        }
        boolean relative = intent == RenderingIntent.RELATIVE;
        double[] first = relative ? ofSource(tags, intent, components) : new double[3];
        IccWay there = IccWay.toDevice(tags, intent, components);
        IccWay back = IccWay.toConnection(tags, RenderingIntent.RELATIVE, components);
        double[] out = new double[RAMP];
        for (int i = 0; i < RAMP; i++) {
            out[i] = lightness(back.apply(there.apply(Cie.labToXyz(new Lab(inL(i), 0, 0)))));
        }
        for (int i = RAMP - 2; i > 0; i--) {
            out[i] = Math.min(out[i], out[i + 1]);
        }
        if (!(out[0] < out[RAMP - 1])) {
            return new double[3];
        }
        return relative && straight(out) ? first : neutral(corner(out, relative ? 0.1 : 0.03, relative ? 0.5 : 0.25));
    }

    private static double inL(int step) {
        return step * 100.0 / (RAMP - 1);
    }

    private static boolean straight(double[] out) {
        double from = out[0] + STRAIGHT_FROM * (out[RAMP - 1] - out[0]);
        for (int i = 0; i < RAMP; i++) {
            if (inL(i) > from && Math.abs(inL(i) - out[i]) >= STRAIGHT_L) {
                return false;
            }
        }
        return true;
    }

    // Where the parabola through the shadows, from one share of the range to another, meets the bottom of it.
    private static double corner(double[] out, double low, double high) {
        double[][] sums = new double[3][4];
        int points = 0;
        for (int i = 0; i < RAMP; i++) {
            double y = (out[i] - out[0]) / (out[RAMP - 1] - out[0]);
            if (y >= low && y < high) {
                double[] powers = {1, inL(i), inL(i) * inL(i)};
                for (int r = 0; r < 3; r++) {
                    for (int c = 0; c < 3; c++) {
                        sums[r][c] += powers[r] * powers[c];
                    }
                    sums[r][3] += powers[r] * y;
                }
                points++;
            }
        }
        if (points < LEAST_POINTS) {
            return 0;
        }
        double[] flat = new double[9];
        for (int i = 0; i < 9; i++) {
            flat[i] = sums[i / 3][i % 3];
        }
        double[] fit = new double[3];
        Cie.multiply(Cie.inverse(flat), new double[] {sums[0][3], sums[1][3], sums[2][3]}, fit);
        double under = fit[1] * fit[1] - 4 * fit[2] * fit[0];
        double root = Math.abs(fit[2]) < 1e-10 ? -fit[0] / fit[1] : (-fit[1] + Math.sqrt(under)) / (2 * fit[2]);
        return under > 0 && root > 0 ? Math.min(MOST_L, root) : 0;
    }

    private static double[] darkest(IccTags tags, RenderingIntent intent, int components) throws BrokenProfile {
        String space = tags.space();
        boolean inks = space.equals("CMYK") || space.equals("CMY ");
        boolean known = inks || space.equals("RGB ") || space.equals("GRAY");
        if (!known || !tags.has("A2B" + intent.ordinal()) && !matrix(tags)) {
            return new double[3];
        }
        double[] darkest = new double[components];
        Arrays.fill(darkest, inks ? 1 : 0);
        IccWay way = IccWay.toConnection(tags, intent, components);
        return neutral(lightness(way.apply(darkest)));
    }

    private static boolean matrix(IccTags tags) {
        return tags.space().equals("GRAY") ? tags.has("kTRC") : tags.has("rXYZ") && tags.has("rTRC");
    }

    private static double[] perceptualBlack(IccTags tags, int components) throws BrokenProfile {
        if (!tags.has("A2B0") || !tags.has("B2A0")) {
            return new double[3];
        }
        double[] black = pleasing(tags, RenderingIntent.PERCEPTUAL) ? REFERENCE : new double[3];
        double[] tints =
                IccWay.toDevice(tags, RenderingIntent.PERCEPTUAL, components).apply(black);
        IccWay back = IccWay.toConnection(tags, RenderingIntent.RELATIVE, components);
        return neutral(lightness(back.apply(tints)));
    }

    private static double lightness(double[] xyz) {
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]).L();
    }

    private static double[] neutral(double L) {
        return Cie.labToXyz(new Lab(L > 0 ? Math.min(MOST_L, L) : 0, 0, 0));
    }
}
