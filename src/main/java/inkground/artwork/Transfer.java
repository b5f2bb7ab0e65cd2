package inkground.artwork;

import java.util.List;

/**
 * What becomes of the process tints of an object on their way to the device: ISO 32000-2 §10.5. Deprecated in PDF 2.0, and
 * still done by printers that are not told otherwise.
 *
 * @param functions for cyan, magenta, yellow and black, from and to the component as light: 1 is no ink. Four of them
 */
public record Transfer(List<TintTransform> functions) {
    /** Copies the list and rejects any but four functions. */
    public Transfer {
        functions = List.copyOf(functions);
        if (functions.size() != 4) {
            throw new IllegalArgumentException(functions.size() + " transfer functions");
        }
    }
}
