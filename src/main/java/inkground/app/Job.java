package inkground.app;

import inkground.appearance.InkLibrary;
import inkground.artwork.Artwork;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.OutputIntent;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.BlackPointCompensation;
import inkground.colour.IccCondition;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.plate.InkMapping;
import inkground.plate.Plate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** An opened file and everything computed from it. Thread-safe. */
public final class Job implements AutoCloseable {
    /** The print condition of process inks where the file states none that is usable: coated paper, offset. */
    public static final String DEFAULT_CONDITION = "FOGRA39L";

    // More would fill the notes; the report of the condition tells all.
    private static final int GAPS_TOLD = 3;

    private final Artwork artwork;
    private final Choices choices;
    private final Optional<Stamp> stamp;
    private final PrintCondition chosen; // null for what the file says
    private final InkLibrary library;
    private final Stated whole;
    private final Map<Integer, PageJob> pages = new ConcurrentHashMap<>();

    private final Map<OutputIntent, Stated> ofPages = new ConcurrentHashMap<>();

    /** How process inks print, which inks are better known than by the artwork, and what is to be said of both. */
    private record Stated(PrintCondition condition, InkLibrary inks, List<String> notes) {}

    private Job(Artwork artwork, Choices choices, Optional<Stamp> stamp, PrintCondition chosen, InkLibrary library) {
        this.artwork = artwork;
        this.choices = choices;
        this.stamp = stamp;
        this.chosen = chosen;
        this.library = library;
        this.whole = stated(artwork.outputIntent());
    }

    /** By which a file that was written since is told; empty for one that is not there. */
    private record Stamp(long bytes, FileTime modified) {
        static Optional<Stamp> of(Path file) {
            try {
                return Optional.of(new Stamp(Files.size(file), Files.getLastModifiedTime(file)));
            } catch (IOException e) {
                return Optional.empty(); // its reader says what is wrong
            }
        }
    }

    /**
     * What the user chooses in place of what the file says.
     *
     * @param condition how process inks print: a bundled name or a file; null for the file's own output intent
     * @param inks file of the user's ink colours; null for none
     * @param assignment which colours are printed otherwise than stated
     * @param size of a picture or an SVG
     * @param black whether black is matched where colours go to process inks and the file leaves it open
     */
    public record Choices(
            String condition, Path inks, ColourAssignment assignment, PictureSize size, BlackPointCompensation black) {
        /** All as the file has it. */
        public static final Choices NONE = new Choices(null, null);

        /** Of the size the file states. */
        public Choices(String condition, Path inks, ColourAssignment assignment) {
            this(condition, inks, assignment, PictureSize.STATED, BlackPointCompensation.DEFAULT);
        }

        /** @return the same with a picture of another size */
        public Choices sized(PictureSize other) {
            return new Choices(condition, inks, assignment, other, black);
        }

        /** Colours as the file has them. */
        public Choices(String condition, Path inks) {
            this(condition, inks, ColourAssignment.NONE);
        }
    }

    /** Opens a file, with nothing chosen. */
    public static Job open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, Choices.NONE, cancel, progress);
    }

    /** Opens a file whose colours are printed by rules. */
    public static Job open(Path file, ColourAssignment assignment, Cancel cancel, Progress progress) throws Refusal {
        return open(file, new Choices(null, null, assignment), cancel, progress);
    }

    /**
     * Opens a file of any kind that {@link ArtworkFiles} knows.
     *
     * @throws Refusal if there is no such file, or it or a chosen file cannot be used
     */
    public static Job open(Path file, Choices choices, Cancel cancel, Progress progress) throws Refusal {
        PrintCondition chosen = choices.condition() == null ? null : PrintConditions.find(choices.condition());
        InkLibrary library = choices.inks() == null ? InkLibrary.EMPTY : InkLibraries.read(choices.inks());
        Optional<Stamp> stamp = Stamp.of(file);
        Artwork artwork = ArtworkFiles.open(file, choices.size(), cancel, progress);
        return new Job(artwork, choices, stamp, chosen, library);
    }

    /** What an output intent says, where the user has not chosen otherwise. */
    private Stated stated(Optional<OutputIntent> intent) {
        List<String> notes = new ArrayList<>();
        PrintCondition condition = chosen == null ? condition(intent, notes) : chosen;
        notes.addAll(gaps(condition));
        InkLibrary inks = intent.map(of -> SpectralInks.of(of, notes))
                .map(measured -> best(measured, library, notes))
                .orElse(library);
        return new Stated(condition, inks, List.copyOf(notes));
    }

    private static List<String> gaps(PrintCondition condition) {
        List<String> gaps = condition.gaps();
        if (gaps.isEmpty()) {
            return gaps;
        }
        String more = gaps.size() > GAPS_TOLD ? "; and " + (gaps.size() - GAPS_TOLD) + " more" : "";
        return List.of("the data of the print condition " + condition.name() + " has gaps: "
                + String.join("; ", gaps.subList(0, Math.min(GAPS_TOLD, gaps.size()))) + more);
    }

    /** What the file measured of its inks on its press comes before what the user's library knows of them in general. */
    private static InkLibrary best(InkLibrary measured, InkLibrary library, List<String> notes) {
        measured.entries().keySet().stream()
                .filter(name -> library.find(name).isPresent())
                .forEach(name -> notes.add("the ink library's colour of '" + name
                        + "' is not used: the file's output intent carries a measurement of it"));
        return measured.before(library);
    }

    /** The condition a file or page was made for; the usual one where none is stated that can be used, and a note says so. */
    private static PrintCondition condition(Optional<OutputIntent> intent, List<String> notes) {
        if (intent.isEmpty()) {
            return usual(notes, "the file states no print condition; process inks are shown as " + DEFAULT_CONDITION);
        }
        String name = intent.get().condition();
        if (intent.get().profile() == null) {
            return PrintConditions.BUNDLED.contains(name)
                    ? PrintConditions.bundled(name)
                    : usual(
                            notes,
                            "the file's print condition '" + name
                                    + "' is only named, without its profile; process inks are shown as "
                                    + DEFAULT_CONDITION
                                    + ". Choose another if you have its data");
        }
        try {
            return IccCondition.of(intent.get().profile().bytes(), name);
        } catch (Refusal e) {
            return usual(
                    notes,
                    "the file's print condition cannot be used (" + e.getMessage() + "); process inks are shown as "
                            + DEFAULT_CONDITION);
        }
    }

    private static PrintCondition usual(List<String> notes, String note) {
        notes.add(note);
        return PrintConditions.bundled(DEFAULT_CONDITION);
    }

    /** A page may have been made for another condition, with inks measured on another press, than the rest of the file. */
    private Stated statedOf(int page) {
        Optional<OutputIntent> intent = artwork.outputIntent(page);
        if (intent.isEmpty() || intent.equals(artwork.outputIntent())) {
            return whole;
        }
        return ofPages.computeIfAbsent(intent.get(), own -> stated(intent));
    }

    /** @return how process inks print, on pages that do not state a condition of their own */
    public PrintCondition condition() {
        return whole.condition();
    }

    /** @return the opened file */
    public Artwork artwork() {
        return artwork;
    }

    /** @return by which rules its colours are printed */
    public ColourAssignment assignment() {
        return choices.assignment();
    }

    /** @return whether the file is as it was when it was opened, by its size and time; not if it is gone */
    public boolean unchanged() {
        return stamp.isPresent() && stamp.equals(Stamp.of(file()));
    }

    /** @return what was chosen in place of what the file says */
    public Choices choices() {
        return choices;
    }

    /**
     * How large a page is by itself; where its file does not say, {@link Choices#size} is worth asking for.
     *
     * @param page from 1
     * @return empty for a kind of file that always has its own size
     */
    public Optional<Sizing> sizing(int page) {
        return artwork.sizing(page);
    }

    /** @return where it lies */
    public Path file() {
        return artwork.file();
    }

    /** @return geometry of all pages, at least one */
    public List<PageInfo> pages() {
        return artwork.pages();
    }

    /**
     * A page made ready; computed at the first call.
     *
     * @param number from 1
     * @throws Refusal if there is no such page or it cannot be read
     */
    public PageJob page(int number, Cancel cancel, Progress progress) throws Refusal {
        return page(number, choices.assignment(), cancel, progress);
    }

    /**
     * A page made ready with other colour rules than the job's; what it paints is read once for all rules, and the page with the
     * rules asked for last is kept.
     *
     * @param number from 1
     * @throws Refusal if there is no such page or it cannot be read
     */
    public PageJob page(int number, ColourAssignment rules, Cancel cancel, Progress progress) throws Refusal {
        checkNumber(number);
        PageJob ready = pages.get(number);
        if (ready == null || !ready.assignment().equals(rules)) {
            DisplayList list = ready == null ? artwork.record(number, cancel, progress) : ready.displayList();
            PageJob prepared = prepare(list, rules);
            ready = pages.merge(number, prepared, (a, b) -> a.assignment().equals(rules) ? a : b);
        }
        return ready;
    }

    /**
     * A page made ready and not kept by the job, for looking through many pages: taken from those kept, if it is there.
     *
     * @param number from 1
     * @throws Refusal if there is no such page or it cannot be read
     */
    public PageJob passing(int number, ColourAssignment rules, Cancel cancel, Progress progress) throws Refusal {
        checkNumber(number);
        PageJob ready = pages.get(number);
        if (ready != null) {
            return ready.assignment().equals(rules) ? ready : prepare(ready.displayList(), rules);
        }
        return prepare(artwork.record(number, cancel, progress), rules);
    }

    private void checkNumber(int number) throws Refusal {
        if (number < 1 || number > pages().size()) {
            throw new Refusal("There is no page " + number + ": " + file().getFileName() + " has "
                    + (pages().size() == 1 ? "one page." : pages().size() + " pages."));
        }
    }

    private PageJob prepare(DisplayList list, ColourAssignment rules) {
        int number = list.page().number();
        List<ColourSpace.Separation> declared = artwork.declaredColorants(number);
        Stated stated = statedOf(number);
        InkMapping mapping = InkMapping.of(declared, list, stated.condition(), choices.black(), rules);
        return new PageJob(
                new Plate(list, mapping), declared, artwork.mixingHints(number), rules, stated.inks(), stated.notes());
    }

    @Override
    public void close() {
        artwork.close();
    }
}
