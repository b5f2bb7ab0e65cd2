package inkground.colour;

import java.awt.color.CMMException;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;

/**
 * Colours of an ICC profile as media-relative Lab for D50, through the Java platform's colour engine: relative colorimetric,
 * without black point compensation [ICC1]. Thread-safe.
 */
public final class IccReader {
    /** Largest profile that is read, in bytes: ten times the usual output profile. */
    public static final int MAX_BYTES = 32 << 20;

    // ICC_Profile's own constants for profiles that hold no device colours.
    private static final int HEADER_BYTES = 128;

    private final ICC_ColorSpace space;
    private final int components;
    private final float[] min;
    private final float[] span;

    private IccReader(ICC_ColorSpace space) {
        this.space = space;
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

    /**
     * @param profile the bytes
     * @param components expected of it
     * @throws BrokenProfile if the engine cannot use it, it is of another number of components, or it is too large
     */
    public static IccReader open(byte[] profile, int components) throws BrokenProfile {
        if (profile.length < HEADER_BYTES || profile.length > MAX_BYTES) {
            throw new BrokenProfile(
                    "the colour profile has " + profile.length + " bytes; usable are " + HEADER_BYTES + " to "
                            + MAX_BYTES,
                    null);
        }
        try {
            ICC_Profile parsed = ICC_Profile.getInstance(profile);
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
            IccReader reader = new IccReader(new ICC_ColorSpace(parsed));
            reader.toLab(new float[components]); // tables are only looked at on use
            return reader;
        } catch (IllegalArgumentException | CMMException | IndexOutOfBoundsException | NullPointerException e) {
            throw new BrokenProfile("the colour profile is damaged", e);
        }
    }

    /** @return number of components */
    public int components() {
        return components;
    }

    /**
     * @param colour components, each 0 to 1 over its own range
     * @return media-relative Lab
     */
    public Lab toLab(float[] colour) {
        float[] scaled = new float[components];
        for (int i = 0; i < components; i++) {
            scaled[i] = min[i] + span[i] * Math.max(0, Math.min(1, colour[i]));
        }
        float[] xyz = space.toCIEXYZ(scaled);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
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
