package inkground.cli;

import inkground.artwork.PageBox;
import java.util.Arrays;
import java.util.Iterator;
import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of a page box; also lists the names for the help. */
final class BoxConverter implements ITypeConverter<PageBox>, Iterable<String> {
    @Override
    public PageBox convert(String word) {
        for (PageBox box : PageBox.values()) {
            if (box.word().equals(word.toLowerCase(Locale.ROOT))) {
                return box;
            }
        }
        throw new TypeConversionException("'" + word + "' is no page box; write media, crop, bleed, trim or art");
    }

    @Override
    public Iterator<String> iterator() {
        return Arrays.stream(PageBox.values()).map(PageBox::word).iterator();
    }
}
