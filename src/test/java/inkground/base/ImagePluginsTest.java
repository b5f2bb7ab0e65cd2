package inkground.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import org.junit.jupiter.api.Test;

/** One plug-in for a format, whichever order ImageIO finds them in. */
class ImagePluginsTest {
    @Test
    void ofSeveralLibrariesTheMostTrustedIsTaken() throws Exception {
        assertThat(ImagePlugins.writer("tiff").getClass().getName()).startsWith("com.twelvemonkeys.");
        assertThat(ImagePlugins.reader("jpeg").getClass().getName()).startsWith("com.twelvemonkeys.");
        assertThat(ImagePlugins.reader("bmp").getClass().getName()).startsWith("com.sun.imageio.");
        assertThat(ImagePlugins.reader("gif").getClass().getName()).startsWith("com.sun.imageio.");
    }

    @Test
    void aFormatThatOnlyAnotherLibraryKnowsIsItsOwn() throws Exception {
        assertThat(ImagePlugins.writer("jpeg2000")).isNotNull();
    }

    @Test
    void aFormatThatNobodyKnowsIsNamed() {
        assertThatThrownBy(() -> ImagePlugins.reader("papyrus"))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("no reader for papyrus");
        assertThatThrownBy(() -> ImagePlugins.writer("papyrus")).hasMessageContaining("no writer for papyrus");
    }
}
