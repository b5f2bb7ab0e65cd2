package inkground.substrate;

import inkground.colour.Lab;
import java.util.List;

/**
 * Something that can be printed on: one paper, or one garment in one colour.
 *
 * @param id short and unique, of lower-case letters, digits and hyphens; used in commands and saved jobs
 * @param name for the user
 * @param kind paper or garment
 * @param lab its colour, absolute, D50
 * @param source where the colour comes from: measured, published or invented for the demo
 * @param texture of the surface
 * @param printAreas parts that can be printed; empty for papers, which take any size
 * @param hidingPower opacity an ink should have, 0 to 1, so that the substrate does not change its colour in a way that is
 *     easily seen
 * @param underbaseAdvised whether a white underbase is usual under colours
 * @param order place in lists; equal places are sorted by name
 * @param notes plain remarks for the user
 */
public record Substrate(
        String id,
        String name,
        Kind kind,
        Lab lab,
        String source,
        Texture texture,
        List<PrintArea> printAreas,
        double hidingPower,
        boolean underbaseAdvised,
        int order,
        List<String> notes) {
    /** What a substrate is. */
    public enum Kind {
        /** A sheet. */
        PAPER,
        /** Something worn, or made of the same cloth. */
        GARMENT
    }

    /** Copies the lists. */
    public Substrate {
        printAreas = List.copyOf(printAreas);
        notes = List.copyOf(notes);
    }
}
