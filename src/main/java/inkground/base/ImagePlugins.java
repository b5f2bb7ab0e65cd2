package inkground.base;

import java.io.IOException;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Spliterators;
import java.util.stream.StreamSupport;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriter;

/**
 * The readers and writers that ImageIO finds, always the same one for a format. Where several libraries bring one, ImageIO
 * gives them in an order that changes from run to run, and they do not write, or forgive, the same things.
 */
public final class ImagePlugins {
    /** Packages in the order in which they are trusted; whatever is in none of them comes last, by name. */
    private static final List<String> TRUSTED = List.of("com.twelvemonkeys.", "com.sun.imageio.");

    private ImagePlugins() {}

    /**
     * @param format name that ImageIO knows the format by, such as {@code jpeg}
     * @return to be disposed of by the caller
     * @throws IOException where no library reads the format
     */
    public static ImageReader reader(String format) throws IOException {
        return first(ImageIO.getImageReadersByFormatName(format), "reader", format);
    }

    /**
     * @param format name that ImageIO knows the format by, such as {@code png}
     * @return to be disposed of by the caller
     * @throws IOException where no library writes the format
     */
    public static ImageWriter writer(String format) throws IOException {
        return first(ImageIO.getImageWritersByFormatName(format), "writer", format);
    }

    private static <T> T first(Iterator<T> found, String what, String format) throws IOException {
        return StreamSupport.stream(Spliterators.spliteratorUnknownSize(found, 0), false)
                .min(Comparator.comparingInt(ImagePlugins::rank)
                        .thenComparing(plugin -> plugin.getClass().getName()))
                .orElseThrow(() -> new IOException("no " + what + " for " + format));
    }

    private static int rank(Object plugin) {
        String name = plugin.getClass().getName();
        for (int i = 0; i < TRUSTED.size(); i++) {
            if (name.startsWith(TRUSTED.get(i))) {
                return i;
            }
        }
        return TRUSTED.size();
    }
}
