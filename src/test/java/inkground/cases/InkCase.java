package inkground.cases;

import java.util.List;
import java.util.Map;

/**
 * One page and what must be on its ink planes, as read from a text file.
 *
 * @param name a sentence
 * @param clause of ISO 32000-2 that it comes from
 * @param width of the page, points, which are pixels
 * @param height of the page, points
 * @param page further entries of the page dictionary, PDF syntax
 * @param catalog further entries of the catalog, PDF syntax
 * @param resources entries of the resource dictionary, PDF syntax
 * @param content operators of the page
 * @param objects further objects by name, in order
 * @param overprint whether overprint is honoured
 * @param layersOn names of the layers that are on; null for those on by default
 * @param inexact whether the page may be recorded inexactly
 * @param reason why the case is known to fail; empty where it is not
 * @param expectations at least one
 * @param place file and line
 */
record InkCase(
        String name,
        String clause,
        int width,
        int height,
        String page,
        String catalog,
        String resources,
        String content,
        Map<String, Body> objects,
        boolean overprint,
        List<String> layersOn,
        boolean inexact,
        String reason,
        List<Expectation> expectations,
        String place) {

    /** @return the same page with other expectations */
    InkCase expecting(List<Expectation> others) {
        return new InkCase(
                name, clause, width, height, page, catalog, resources, content, objects, overprint, layersOn, inexact,
                reason, others, place);
    }

    /**
     * An object of the file.
     *
     * @param dictionary whole object, or the entries of a stream's dictionary, PDF syntax
     * @param data of a stream, one byte per character; null for other objects
     */
    record Body(String dictionary, String data) {}

    /** Something that must hold of the planes. */
    sealed interface Expectation {
        /** @return how the numbers come about */
        String why();
    }

    /**
     * Values at a point.
     *
     * @param x column, from the left
     * @param y row, from the bottom as in page content
     * @param inks what each ink named must have; inks not named must have none
     * @param othersFree whether inks not named may have anything
     */
    record At(int x, int y, Map<String, Span> inks, boolean othersFree, String why) implements Expectation {}

    /**
     * Two points whose inks must agree.
     *
     * @param tolerance largest difference, of 255
     */
    record Same(int x1, int y1, int x2, int y2, int tolerance, String why) implements Expectation {}

    /** Values from {@code low} to {@code high}, both included. */
    record Span(int low, int high) {
        boolean holds(int value) {
            return value >= low && value <= high;
        }

        @Override
        public String toString() {
            return low == high ? "" + low : low + " to " + high;
        }
    }
}
