package inkground.colour;

import java.util.Set;

/**
 * Colours of an ICC profile as Lab for D50 and back [ICC1]: by tables of version 2 or 4, by matrix and curves, or by a grey curve. The
 * absolute intent is the relative one on the media white. Thread-safe.
 *
 * <p>With black points matched [ISO18619], Lab is for a medium whose black is L* 0, both ways. Of colours that go to a device by the
 * perceptual or the saturation table of version 4, black is always moved to the black of the reference medium that these tables are
 * made for; all others go as they are unless black points are matched.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>components</td><td>0 to 1 over their own range, clipped</td></tr>
 * <tr><td>Lab</td><td>D50, media-relative but for the absolute intent; beyond the profile's encoding (a, b −128 to 127) clipped</td></tr>
 * </table>
 */
public final class IccReader {
    /** Largest profile that is read, in bytes: ten times the usual output profile. */
    public static final int MAX_BYTES = 32 << 20;

    private static final int HEADER_BYTES = 128;
    private static final Set<String> NOT_OF_A_DEVICE = Set.of("link", "abst", "nmcl");

    private final int components;
    private final double[] white; // of the medium by D50; 1, 1, 1 for all but the absolute intent
    private final double[] sourceBlack; // that is moved to 0 on the way from the device
    private final double[] deviceBlack; // where black is moved on the way to the device
    private final boolean statesBlack;
    private final IccWay toConnection;
    private final IccWay toDevice; // null where the profile lacks it
    private final BrokenProfile noWayBack; // why

    private IccReader(
            int components,
            double[] white,
            double[] sourceBlack,
            double[] deviceBlack,
            boolean statesBlack,
            IccWay toConnection,
            IccWay toDevice,
            BrokenProfile noWayBack) {
        this.components = components;
        this.white = white;
        this.sourceBlack = sourceBlack;
        this.deviceBlack = deviceBlack;
        this.statesBlack = statesBlack;
        this.toConnection = toConnection;
        this.toDevice = toDevice;
        this.noWayBack = noWayBack;
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

    /** As {@link #open(byte[], int, RenderingIntent, boolean)}, black points as they are. */
    public static IccReader open(byte[] profile, int components, RenderingIntent intent) throws BrokenProfile {
        return open(profile, components, intent, false);
    }

    /**
     * @param profile the bytes
     * @param components expected of it
     * @param intent whose tables are used; where the profile lacks them, its first ones
     * @param blackMatched whether the profile's black is that of Lab, both ways; without effect on the absolute intent
     * @throws BrokenProfile if it cannot be used, is of another number of components, or is too large
     */
    public static IccReader open(byte[] profile, int components, RenderingIntent intent, boolean blackMatched)
            throws BrokenProfile {
        if (profile.length < HEADER_BYTES || profile.length > MAX_BYTES) {
            throw new BrokenProfile(
                    "the colour profile has " + profile.length + " bytes; usable are " + HEADER_BYTES + " to "
                            + MAX_BYTES,
                    null);
        }
        IccTags tags = new IccTags(profile);
        check(tags, components);
        IccWay back = null;
        BrokenProfile noWayBack = null;
        try {
            back = IccWay.toDevice(tags, intent, components);
        } catch (BrokenProfile e) {
            noWayBack = e; // the way to colours may still be whole, and is all that most profiles are opened for
        }
        IccWay there = IccWay.toConnection(tags, intent, components);
        boolean statesBlack = BlackPoint.isStated(tags, intent);
        return new IccReader(
                components,
                white(tags, intent),
                blackMatched ? BlackPoint.ofSource(tags, intent, components) : new double[3],
                back != null && (blackMatched || statesBlack)
                        ? BlackPoint.ofDevice(tags, intent, components)
                        : new double[3],
                statesBlack,
                there,
                back,
                noWayBack);
    }

    private static void check(IccTags tags, int components) throws BrokenProfile {
        if (!tags.signed()) {
            throw new BrokenProfile("the colour profile is damaged: it does not begin like one", null);
        }
        tags.checkCount();
        if (NOT_OF_A_DEVICE.contains(tags.deviceClass())) {
            throw new BrokenProfile("the colour profile is not one of a device or colour space", null);
        }
        if (!tags.connection().equals("Lab ") && !tags.connection().equals("XYZ ")) {
            throw new BrokenProfile(
                    "the colour profile is damaged: it connects to '" + tags.connection() + "', not to Lab or XYZ",
                    null);
        }
        int own = components(tags.space());
        if (own != components) {
            throw new BrokenProfile(
                    "the colour profile is for " + own + " components, the colours have " + components, null);
        }
    }

    private static int components(String space) {
        return switch (space) {
            case "GRAY" -> 1;
            case "CMYK" -> 4;
            default -> space.endsWith("CLR") ? Character.digit(space.charAt(0), 16) : 3;
        };
    }

    private static double[] white(IccTags tags, RenderingIntent intent) {
        if (intent != RenderingIntent.ABSOLUTE) {
            return new double[] {1, 1, 1};
        }
        double[] xyz = Cie.labToXyz(mediaWhite(tags));
        return new double[] {xyz[0] / Cie.D50_X, xyz[1], xyz[2] / Cie.D50_Z};
    }

    /** @return the colour of the profile's medium, absolute; white where the profile does not tell a plausible one */
    static Lab mediaWhite(byte[] profile) {
        return mediaWhite(new IccTags(profile));
    }

    private static Lab mediaWhite(IccTags tags) {
        // Display profiles of version 2 state the white of the tube there, to which the eye is adapted.
        boolean display = tags.version() < 4 && tags.deviceClass().equals("mntr");
        double[] xyz = display ? null : tags.xyz("wtpt");
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
        double[] in = new double[components];
        for (int i = 0; i < components; i++) {
            in[i] = colour[i] > 0 ? Math.min(1, colour[i]) : 0;
        }
        double[] xyz = toConnection.apply(in);
        BlackPoint.expand(xyz, sourceBlack);
        return Cie.xyzToLab(xyz[0] * white[0], xyz[1] * white[1], xyz[2] * white[2]);
    }

    /**
     * The way back: the components that the profile gives a colour.
     *
     * @param lab media-relative but for the absolute intent
     * @return components, each 0 to 1 over its own range
     * @throws BrokenProfile if the profile has no usable tables for this way
     */
    public float[] fromLab(Lab lab) throws BrokenProfile {
        if (toDevice == null) {
            throw new BrokenProfile(noWayBack.getMessage(), noWayBack);
        }
        double[] xyz = Cie.labToXyz(lab);
        for (int i = 0; i < 3; i++) {
            xyz[i] /= white[i];
        }
        BlackPoint.compress(xyz, deviceBlack);
        double[] device = toDevice.apply(xyz);
        float[] out = new float[components];
        for (int i = 0; i < components; i++) {
            out[i] = (float) (device[i] > 0 ? Math.min(1, device[i]) : 0);
        }
        return out;
    }

    /** @return whether colours go to the device by tables that state their black, which is matched at all times */
    boolean statesBlack() {
        return statesBlack;
    }

    /** @return whether colours can be turned into components */
    public boolean hasWayBack() {
        return toDevice != null;
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
