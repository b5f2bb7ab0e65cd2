package inkground.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a resolution in pixels per inch. */
final class Resolution implements ITypeConverter<Double> {
    /** Lowest that still shows something. */
    static final double MIN_DPI = 1;
    /** Highest of film and plate setters in common use; common practice, no source. */
    static final double MAX_DPI = 4800;

    @Override
    public Double convert(String word) {
        double dpi;
        try {
            dpi = Double.parseDouble(word);
        } catch (NumberFormatException e) {
            throw new TypeConversionException("'" + word + "' is no number");
        }
        if (!(dpi >= MIN_DPI && dpi <= MAX_DPI)) {
            throw new TypeConversionException(
                    word + " is out of range; write a resolution from 1 to 4800 pixels per inch");
        }
        return dpi;
    }
}
