package inkground.artwork;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** An opened file. Pages are recorded on demand; closing it invalidates image sources not yet decoded. Thread-safe. */
public interface Artwork extends AutoCloseable {
    /** @return the file */
    Path file();

    /** @return geometry of all pages, at least one */
    List<PageInfo> pages();

    /**
     * How large a page is by itself, where the file can be placed in another size.
     *
     * @param page from 1
     * @return empty for a kind of file that always has its own size
     */
    default Optional<Sizing> sizing(int page) {
        return Optional.empty();
    }

    /** @return optional content groups */
    List<Layer> layers();

    /** @return the output intent, if the file states one */
    Optional<OutputIntent> outputIntent();

    /**
     * The output intent of one page, which may state its own: ISO 32000-2 §14.11.5.
     *
     * @param page from 1
     */
    default Optional<OutputIntent> outputIntent(int page) {
        return outputIntent();
    }

    /**
     * All colorants that the file declares for a page, painted or not, in order of appearance in its resources, each name
     * once; without All, None and the four process names. A colorant known only from a DeviceN space gets that space's tint
     * transform with all other tints 0.
     *
     * @param page from 1
     */
    List<ColourSpace.Separation> declaredColorants(int page);

    /**
     * How the inks of a page mix, as far as the file says: by its DeviceN spaces, then by its output intent.
     *
     * @param page from 1
     */
    default MixingHints mixingHints(int page) {
        return MixingHints.NONE;
    }

    /**
     * Interprets one page.
     *
     * @param page from 1
     * @throws Refusal if the page cannot be read
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    DisplayList record(int page, Cancel cancel, Progress progress) throws Refusal;

    /**
     * @return files beside the artwork that its pages recorded so far have shown, as they are named there: inside its folder or
     *     below; empty for kinds of file that hold everything themselves
     */
    default List<Path> linkedFiles() {
        return List.of();
    }

    @Override
    void close();
}
