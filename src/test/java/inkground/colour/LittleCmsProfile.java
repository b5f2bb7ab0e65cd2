package inkground.colour;

import java.io.IOException;

/** The CMYK profile that comes with a library of the program, for tests of other packages. */
public final class LittleCmsProfile {
    private LittleCmsProfile() {}

    /** @return its bytes */
    public static byte[] bytes() throws IOException {
        return LittleCmsTest.profile();
    }
}
