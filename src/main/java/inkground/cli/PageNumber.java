package inkground.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a page number, from 1. */
final class PageNumber implements ITypeConverter<Integer> {
    @Override
    public Integer convert(String word) {
        if (!word.matches("[1-9][0-9]{0,6}")) {
            throw new TypeConversionException("'" + word + "' is no page number; pages count from 1");
        }
        return Integer.valueOf(word);
    }
}
