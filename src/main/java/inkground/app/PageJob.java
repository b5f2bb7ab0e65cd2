package inkground.app;

import inkground.appearance.InkColour;
import inkground.artwork.Approximation;
import inkground.artwork.DisplayList;
import inkground.artwork.PageInfo;
import inkground.colour.PrintCondition;
import inkground.ink.InkSet;
import inkground.plate.Plate;
import java.util.List;

/**
 * One page ready for every use: its operations, its plate, and the colour of its inks.
 *
 * @param plate rasterises the page
 * @param inkColours one per ink, in plane order
 * @param condition how the process inks are printed
 */
public record PageJob(Plate plate, List<InkColour> inkColours, PrintCondition condition) {
    /** Copies the list. */
    public PageJob {
        inkColours = List.copyOf(inkColours);
    }

    /** @return geometry of the page */
    public PageInfo info() {
        return displayList().page();
    }

    /** @return what it paints */
    public DisplayList displayList() {
        return plate.list();
    }

    /** @return its inks, in plane order */
    public InkSet inks() {
        return plate.mapping().inks();
    }

    /** @return one line for each thing that is not shown exactly, known so far; rasterising may add some */
    public List<String> notes() {
        return plate.approximations().stream()
                .map(Approximation::message)
                .distinct()
                .toList();
    }
}
