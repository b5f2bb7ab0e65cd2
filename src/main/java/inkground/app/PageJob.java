package inkground.app;

import inkground.appearance.InkColour;
import inkground.appearance.InkColours;
import inkground.appearance.InkLibrary;
import inkground.appearance.Stack;
import inkground.artwork.Approximation;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.MixingHints;
import inkground.artwork.PageInfo;
import inkground.colour.PrintCondition;
import inkground.findings.Hairlines;
import inkground.ink.InkSet;
import inkground.plate.Plate;
import inkground.substrate.Substrate;
import java.util.List;
import java.util.stream.Stream;

/** One page ready for every use: its operations, its plate, and the colour of its inks. Thread-safe. */
public final class PageJob {
    private final Plate plate;
    private final List<ColourSpace.Separation> declared;
    private final MixingHints hints;
    private final ColourAssignment assignment;
    private final InkLibrary library;
    private final List<String> conditionNotes;
    private List<InkColour> inkColours;

    /**
     * @param plate rasterises the page
     * @param declared colorants the file declares for the page
     * @param hints what the file says of how its inks mix
     * @param assignment by which rules its colours are printed
     * @param library ink colours that are better known than by the artwork
     * @param conditionNotes what is to be said of the print condition
     */
    PageJob(
            Plate plate,
            List<ColourSpace.Separation> declared,
            MixingHints hints,
            ColourAssignment assignment,
            InkLibrary library,
            List<String> conditionNotes) {
        this.plate = plate;
        this.declared = List.copyOf(declared);
        this.hints = hints;
        this.assignment = assignment;
        this.library = library;
        this.conditionNotes = List.copyOf(conditionNotes);
    }

    /** @return what rasterises the page */
    public Plate plate() {
        return plate;
    }

    /** @return the colour of each ink, in plane order; computed at the first call, since separations never need it */
    public synchronized List<InkColour> inkColours() {
        if (inkColours == null) {
            inkColours =
                    List.copyOf(InkColours.hinted(hints, InkColours.of(inks(), colorants(), condition(), library)));
        }
        return inkColours;
    }

    /** @return plane indices, first printed first: as the file states it, else white before all others */
    public List<Integer> printOrder() {
        return Stack.order(inkColours(), hints.printingOrder());
    }

    /** @return the page's inks on a substrate, all shown but technical ones, without an underbase */
    public Stack stackOn(Substrate substrate) {
        return Stack.of(substrate, inkColours(), condition()).inOrder(printOrder());
    }

    private List<ColourSpace.Separation> colorants() {
        return Stream.concat(declared.stream(), plate.mapping().newColorants().stream())
                .toList();
    }

    /** @return colorants the file declares for the page */
    public List<ColourSpace.Separation> declared() {
        return declared;
    }

    /** @return by which rules its colours are printed */
    public ColourAssignment assignment() {
        return assignment;
    }

    /** @return how the process inks are printed */
    public PrintCondition condition() {
        return plate.mapping().condition();
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
        Stream<String> unused = plate.mapping().unusedRules().stream()
                .map(rule -> "nothing on this page is painted in " + AssignmentFile.words(rule.from())
                        + ", which a colour assignment names");
        Stream<String> colourless = InkColours.unknown(inks(), colorants(), library).stream()
                .map(name -> "nothing tells the colour of the ink '" + name
                        + "'; it is shown as a mid grey. Give its colour in an ink library");
        Stream<String> inexact = plate.approximations().stream().map(Approximation::message);
        return Stream.of(conditionNotes.stream(), colourless, inexact, Hairlines.note(displayList()).stream(), unused)
                .flatMap(notes -> notes)
                .distinct()
                .toList();
    }
}
