package inkground.app;

import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.plate.InkMapping;
import inkground.plate.Plate;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** An opened file and everything computed from it. Thread-safe. */
public final class Job implements AutoCloseable {
    /** The print condition of process inks where the file states none that is usable: coated paper, offset. */
    public static final String DEFAULT_CONDITION = "FOGRA39L";

    private final Artwork artwork;
    private final PrintCondition condition;
    private final Map<Integer, PageJob> pages = new ConcurrentHashMap<>();

    private Job(Artwork artwork, PrintCondition condition) {
        this.artwork = artwork;
        this.condition = condition;
    }

    /**
     * Opens a file of any kind that {@link ArtworkFiles} knows.
     *
     * @throws Refusal if there is no such file or it cannot be used
     */
    public static Job open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return new Job(ArtworkFiles.open(file, cancel, progress), PrintConditions.bundled(DEFAULT_CONDITION));
    }

    /** @return the opened file */
    public Artwork artwork() {
        return artwork;
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
        if (number < 1 || number > pages().size()) {
            throw new Refusal("There is no page " + number + ": " + file().getFileName() + " has "
                    + (pages().size() == 1 ? "one page." : pages().size() + " pages."));
        }
        PageJob ready = pages.get(number);
        if (ready == null) {
            ready = prepare(number, cancel, progress);
            PageJob earlier = pages.putIfAbsent(number, ready);
            ready = earlier == null ? ready : earlier;
        }
        return ready;
    }

    private PageJob prepare(int number, Cancel cancel, Progress progress) throws Refusal {
        DisplayList list = artwork.record(number, cancel, progress);
        List<ColourSpace.Separation> declared = artwork.declaredColorants(number);
        InkMapping mapping = InkMapping.of(declared, list, condition);
        return new PageJob(new Plate(list, mapping), declared);
    }

    @Override
    public void close() {
        artwork.close();
    }
}
