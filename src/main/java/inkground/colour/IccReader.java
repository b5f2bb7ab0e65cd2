package inkground.colour;

import java.awt.color.CMMException;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;

/**
 * Colours of an ICC profile as Lab for D50 and back, through the Java platform's colour engine, without black point
 * compensation [ICC1]. The engine knows only the relative colorimetric tables; for another intent the profile is handed to it with
 * that intent's tables in their place, and the absolute one is the relative one on the media white. Thread-safe.
 */
public final class IccReader {
    /** Largest profile that is read, in bytes: ten times the usual output profile. */
    public static final int MAX_BYTES = 32 << 20;

    private static final int HEADER_BYTES = 128;
    // Largest X, Y, Z that the profile format's 16-bit numbers hold.
    private static final double MAX_XYZ = 1 + 32767.0 / 32768;

    private final ICC_ColorSpace space;
    private final int components;
    private final float[] min;
    private final float[] span;
    private final double[] white; // of the medium by D50; 1, 1, 1 for all but the absolute intent

    private IccReader(ICC_ColorSpace space, double[] white) {
        this.space = space;
        this.white = white;
        this.components = space.getNumComponents();
        this.min = new float[components];
        this.span = new float[components];
        for (int i = 0; i < components; i++) {
            min[i] = space.getMinValue(i);
            span[i] = space.getMaxValue(i) - min[i];
        }
    }

    /** A profile that cannot be used; the message says why, for the user. The caller takes the alternate colour space. */
    public static final class BrokenProfile extends Exception {
        private static final long serialVersionUID = 1L;

        BrokenProfile(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** As {@link #open(byte[], int, RenderingIntent)}, relative colorimetric. */
    public static IccReader open(byte[] profile, int components) throws BrokenProfile {
        return open(profile, components, RenderingIntent.RELATIVE);
    }

    /**
     * @param profile the bytes
     * @param components expected of it
     * @param intent whose tables are used; where the profile lacks them, its relative colorimetric ones
     * @throws BrokenProfile if the engine cannot use it, it is of another number of components, or it is too large
     */
    public static IccReader open(byte[] profile, int components, RenderingIntent intent) throws BrokenProfile {
        if (profile.length < HEADER_BYTES || profile.length > MAX_BYTES) {
            throw new BrokenProfile(
                    "the colour profile has " + profile.length + " bytes; usable are " + HEADER_BYTES + " to "
                            + MAX_BYTES,
                    null);
        }
        try {
            ICC_Profile parsed = ICC_Profile.getInstance(tablesOf(intent, profile));
            int kind = parsed.getProfileClass();
            if (kind == ICC_Profile.CLASS_DEVICELINK
                    || kind == ICC_Profile.CLASS_ABSTRACT
                    || kind == ICC_Profile.CLASS_NAMEDCOLOR) {
                throw new BrokenProfile("the colour profile is not one of a device or colour space", null);
            }
            if (parsed.getNumComponents() != components) {
                throw new BrokenProfile(
                        "the colour profile is for " + parsed.getNumComponents() + " components, the colours have "
                                + components,
                        null);
            }
            IccReader reader = new IccReader(new ICC_ColorSpace(parsed), white(intent, profile));
            reader.toLab(new float[components]); // tables are only looked at on use
            return reader;
        } catch (IllegalArgumentException | CMMException | IndexOutOfBoundsException | NullPointerException e) {
            throw new BrokenProfile("the colour profile is damaged", e);
        }
    }

    // The engine goes from colours to components by the perceptual table, the other way by the relative one, whatever
    // is asked;
    // with both pointing at the wanted table it has no choice.
    private static byte[] tablesOf(RenderingIntent intent, byte[] profile) {
        byte[] copy = profile.clone();
        IccTags tags = new IccTags(copy);
        int table = intent == RenderingIntent.ABSOLUTE ? RenderingIntent.RELATIVE.ordinal() : intent.ordinal();
        for (String direction : new String[] {"A2B", "B2A", "D2B", "B2D"}) {
            for (int i = 0; i < 2; i++) {
                tags.pointAt(direction + i, direction + table);
            }
        }
        return copy;
    }

    private static double[] white(RenderingIntent intent, byte[] profile) {
        if (intent != RenderingIntent.ABSOLUTE) {
            return new double[] {1, 1, 1};
        }
        double[] xyz = Cie.labToXyz(mediaWhite(profile));
        return new double[] {xyz[0] / Cie.D50_X, xyz[1], xyz[2] / Cie.D50_Z};
    }

    /** @return the colour of the profile's medium, absolute; white where the profile does not tell a plausible one */
    static Lab mediaWhite(byte[] profile) {
        double[] xyz = new IccTags(profile).xyz("wtpt");
        boolean plausible = xyz != null
                && xyz[1] > 0.05
                && xyz[1] <= 1.2
                && xyz[0] > 0
                && xyz[0] <= 1.5
                && xyz[2] > 0
                && xyz[2] <= 1.5;
        return plausible ? Cie.xyzToLab(xyz[0], xyz[1], xyz[2]) : new Lab(100, 0, 0);
    }

    /** @return number of components */
    public int components() {
        return components;
    }

    /**
     * @param colour components, each 0 to 1 over its own range
     * @return Lab, media-relative but for the absolute intent
     */
    public Lab toLab(float[] colour) {
        float[] scaled = new float[components];
        for (int i = 0; i < components; i++) {
            scaled[i] = min[i] + span[i] * Math.max(0, Math.min(1, colour[i]));
        }
        float[] xyz = space.toCIEXYZ(scaled);
        return Cie.xyzToLab(xyz[0] * white[0], xyz[1] * white[1], xyz[2] * white[2]);
    }

    /**
     * The way back: the components that the profile gives a colour. Checked against Little CMS for profiles of version 2; for
     * version 4 the engine may move blacks.
     *
     * @param lab media-relative but for the absolute intent
     * @return components, each 0 to 1 over its own range
     * @throws BrokenProfile if the profile has no tables for this way
     */
    public float[] fromLab(Lab lab) throws BrokenProfile {
        double[] xyz = Cie.labToXyz(lab);
        float[] in = new float[3];
        for (int i = 0; i < 3; i++) {
            in[i] = (float) Math.max(0, Math.min(MAX_XYZ, xyz[i] / white[i]));
        }
        try {
            float[] out = space.fromCIEXYZ(in);
            for (int i = 0; i < components; i++) {
                out[i] = (out[i] - min[i]) / span[i];
            }
            return out;
        } catch (CMMException e) {
            throw new BrokenProfile(
                    "the colour profile has no tables from colours to " + components + " components", e);
        }
    }

    /**
     * Converts many colours.
     *
     * @param colours {@code count} × components, each 0 to 1
     * @param lab receives {@code count} × L, a, b
     * @param count number of colours
     */
    public void toLab(float[] colours, float[] lab, int count) {
        float[] one = new float[components];
        for (int i = 0; i < count; i++) {
            System.arraycopy(colours, i * components, one, 0, components);
            Lab out = toLab(one);
            lab[3 * i] = (float) out.L();
            lab[3 * i + 1] = (float) out.a();
            lab[3 * i + 2] = (float) out.b();
        }
    }
}
