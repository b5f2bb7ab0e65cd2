package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Colour spaces of pictures: the device's, or that of the embedded profile. */
final class Spaces {
    private static final int SIGNATURE_AT = 16;
    private static final int HEADER_BYTES = 128;
    private static final int MAX_PROFILE_BYTES = 32 << 20;

    private Spaces() {}

    /** @return the space a picture of so many components has when nothing is said about it */
    static ColourSpace device(int components) {
        return switch (components) {
            case 1 -> new ColourSpace.DeviceGray();
            case 3 -> new ColourSpace.DeviceRgb();
            case 4 -> new ColourSpace.DeviceCmyk();
            default -> throw new IllegalArgumentException(components + " components");
        };
    }

    /**
     * @param profile embedded, or null
     * @param device the space of the samples without it
     * @param notes gets a line when the profile does not fit
     */
    static ColourSpace of(byte[] profile, ColourSpace device, List<Frame.Note> notes) {
        if (profile == null) {
            return device;
        }
        if (!fits(profile, device.components())) {
            notes.add(new Frame.Note(
                    "a colour profile that does not belong to the picture's "
                            + (device.components() == 1
                                    ? "grey"
                                    : device.components() == 3 ? "red, green and blue" : "process inks"),
                    "the profile is set aside"));
            return device;
        }
        return new ColourSpace.Icc(new ColourSpace.Profile(profile), device.components(), device);
    }

    private static boolean fits(byte[] profile, int components) {
        if (profile.length < HEADER_BYTES || profile.length > MAX_PROFILE_BYTES) {
            return false;
        }
        // ICC.1 §7.2.6: the colour space of the data side
        String space = new String(profile, SIGNATURE_AT, 4, StandardCharsets.ISO_8859_1);
        return switch (components) {
            case 1 -> space.equals("GRAY");
            case 3 -> space.equals("RGB ");
            default -> space.equals("CMYK");
        };
    }
}
