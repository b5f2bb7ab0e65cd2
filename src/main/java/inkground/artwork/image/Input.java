package inkground.artwork.image;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** Where a picture's bytes come from; opened anew for each reading, so that readings do not disturb one another. */
@FunctionalInterface
interface Input {
    /** @return the bytes from the start; the caller closes it */
    ImageInputStream open() throws IOException;

    /** @return the bytes of a file */
    static Input of(Path file) {
        return () -> new FileImageInputStream(file.toFile());
    }

    /** @return bytes in memory, not to be changed */
    static Input of(byte[] data) {
        return () -> new MemoryCacheImageInputStream(new ByteArrayInputStream(data)) {
            @Override
            public long length() {
                return data.length;
            }
        };
    }
}
