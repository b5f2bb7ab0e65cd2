package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.IccReader.BrokenProfile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What a screen makes of a colour: sRGB, or any RGB profile of matrix and curves or of tables, of version 2 or 4 [ICC1], by its relative
 * colorimetric intent. Immutable and thread-safe.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>X, Y, Z</td><td>D50, 1 for the screen's white</td></tr>
 * <tr><td>red, green, blue</td><td>coded for the screen; 0 to 1, of sRGB beyond where the screen cannot show the colour</td></tr>
 * <tr><td>missed by</td><td>ΔE00 [SHARMA2005], 0 and up</td></tr>
 * </table>
 *
 * <p>Example: D50 white (0.9642, 1, 0.8249) is red, green, blue 1, 1, 1 on every screen.
 */
public final class DisplayProfile {
    /** An sRGB screen [SRGB]. */
    public static final DisplayProfile SRGB = new DisplayProfile("sRGB", null, null);
    /** A colour that comes back from the screen's numbers this close counts as shown: ΔE00 1 is about what is just seen. */
    public static final double SHOWN_DE00 = 1;

    private final String name;
    private final byte[] bytes;
    private final IccReader reader; // null for sRGB

    private DisplayProfile(String name, byte[] bytes, IccReader reader) {
        this.name = name;
        this.bytes = bytes;
        this.reader = reader;
    }

    /**
     * @param file an ICC profile of a screen
     * @throws Refusal naming the file and what is wrong with it
     */
    public static DisplayProfile read(Path file) throws Refusal {
        String name = String.valueOf(file.getFileName());
        try {
            if (!Files.isRegularFile(file)) {
                throw new Refusal("There is no file " + file + ". Check the name of the screen's profile.");
            }
            if (Files.size(file) > IccReader.MAX_BYTES) {
                throw new Refusal(name + " is larger than " + (IccReader.MAX_BYTES >> 20)
                        + " MB, the limit for a colour profile. Is it the right file?");
            }
            return of(Files.readAllBytes(file), name);
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that you may open it.", e);
        }
    }

    /**
     * @param profile its bytes
     * @param name for the user
     * @throws Refusal if it is no usable RGB profile; the message says why
     */
    public static DisplayProfile of(byte[] profile, String name) throws Refusal {
        try {
            IccReader reader = IccReader.open(profile, 3);
            reader.fromLab(new Lab(50, 0, 0)); // refuses a profile that only goes the other way
            return new DisplayProfile(name, profile.clone(), reader);
        } catch (BrokenProfile e) {
            throw new Refusal(
                    name + " is no usable profile of a screen: " + e.getMessage()
                            + ". Choose another, or none for sRGB.",
                    e);
        }
    }

    /** @return its name for the user */
    public String name() {
        return name;
    }

    /** @return a copy of the profile's bytes, to embed in pictures; empty for sRGB, which pictures name */
    public Optional<byte[]> profile() {
        return Optional.ofNullable(bytes).map(byte[]::clone);
    }

    /** Writes the screen's coded red, green, blue for X, Y, Z; the arrays may be the same. */
    public void toCoded(double[] xyz, double[] rgb) {
        if (reader == null) {
            Srgb.xyzToLinear(xyz.clone(), rgb);
            for (int i = 0; i < 3; i++) {
                rgb[i] = rgb[i] < 0 ? -Srgb.encode(-rgb[i]) : Srgb.encode(rgb[i]);
            }
            return;
        }
        float[] coded = coded(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]));
        for (int i = 0; i < 3; i++) {
            rgb[i] = coded[i];
        }
    }

    private float[] coded(Lab lab) {
        try {
            return reader.fromLab(lab);
        } catch (BrokenProfile e) {
            throw new IllegalStateException("a profile that was whole when it was opened", e);
        }
    }

    /** @return the screen's nearest colour by its profile, packed 0xffRRGGBB */
    public int toArgb(double x, double y, double z) {
        if (reader == null) {
            return Srgb.xyzD50ToArgb(x, y, z);
        }
        float[] coded = coded(Cie.xyzToLab(x, y, z));
        int argb = 0xff;
        for (float c : coded) {
            argb = argb << 8 | Math.round(255 * c);
        }
        return argb;
    }

    /** @return the colour of red, green, blue, coded, 0 to 1 */
    public Lab toLab(float r, float g, float b) {
        return reader == null ? Srgb.toLab(r, g, b) : reader.toLab(new float[] {r, g, b});
    }

    /** @return how far the colour that the screen shows is from the one that is asked for */
    public double missedBy(Lab asked) {
        double[] rgb = Cie.labToXyz(asked);
        toCoded(rgb, rgb);
        float[] clipped = new float[3];
        for (int i = 0; i < 3; i++) {
            clipped[i] = (float) Math.max(0, Math.min(1, rgb[i]));
        }
        return Cie.deltaE00(asked, toLab(clipped[0], clipped[1], clipped[2]));
    }

    /** @return whether the screen can show the colour: sRGB within half a step of its coding, others within {@link #SHOWN_DE00} */
    public boolean shows(double x, double y, double z) {
        return reader == null ? Srgb.shows(x, y, z) : missedBy(Cie.xyzToLab(x, y, z)) < SHOWN_DE00;
    }
}
