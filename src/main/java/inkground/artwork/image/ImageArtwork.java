package inkground.artwork.image;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.OutputIntent;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.artwork.Style;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** An open file of pictures: a page for each, as large as the picture at the resolution that the file states. */
public final class ImageArtwork implements Artwork {
    /** Taken where the file states no resolution: common practice for print, no source. */
    public static final double DEFAULT_DPI = 300;

    private static final double LEAST_DPI = 1;
    private static final double MOST_DPI = 100_000;
    /** As for PDF pages: 20 m. */
    private static final double MOST_PT = 20_000 / Box.MM_PER_PT;

    private final Path file;
    private final List<Frame> frames;
    private final PictureSize size;
    private final List<PageInfo> pages = new ArrayList<>();

    private ImageArtwork(Path file, List<Frame> frames, PictureSize size) throws Refusal {
        this.file = file;
        this.frames = frames;
        this.size = size;
        for (int i = 0; i < frames.size(); i++) {
            Frame frame = frames.get(i);
            Box page = sizing(frame).page(size, file.getFileName().toString());
            Map<PageBox, Box> boxes = new EnumMap<>(PageBox.class);
            for (PageBox box : PageBox.values()) {
                boxes.put(box, page);
            }
            pages.add(new PageInfo(i + 1, boxes, Set.of(PageBox.MEDIA), 0, 1));
        }
    }

    /**
     * Opens a file of pictures: PNG, JPEG, TIFF, WebP, GIF, BMP. Only headers are read.
     *
     * @param file to open; must stay in place while samples are still to be decoded
     * @param cancel checked before and after
     * @param progress told when opening starts and ends
     * @throws Refusal if it is no such file, is damaged, or holds an image of no size or of more than 400 million values
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Artwork open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, PictureSize.STATED, cancel, progress);
    }

    /**
     * Opens a file of pictures as above.
     *
     * @param size chosen by the user for all its pictures; goes before what the file states
     */
    public static Artwork open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal {
        String name = file.getFileName().toString();
        cancel.check();
        progress.report("opening " + name, 0);
        ImageArtwork artwork = new ImageArtwork(file, RasterFile.read(file), size);
        cancel.check();
        progress.report("opening " + name, 1);
        return artwork;
    }

    private static Sizing sizing(Frame frame) {
        boolean stated = stated(frame);
        return new Sizing(
                Sizing.Unit.SAMPLE,
                stated,
                frame.source().width(),
                frame.source().height(),
                stated ? frame.dpiX() : DEFAULT_DPI,
                stated ? frame.dpiY() : DEFAULT_DPI);
    }

    private static boolean stated(Frame frame) {
        return usable(frame.dpiX(), frame.source().width())
                && usable(frame.dpiY(), frame.source().height());
    }

    private static boolean usable(double dpi, int samples) {
        return dpi >= LEAST_DPI && dpi <= MOST_DPI && samples * 72 / dpi <= MOST_PT;
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public List<PageInfo> pages() {
        return List.copyOf(pages);
    }

    @Override
    public Optional<Sizing> sizing(int page) {
        return Optional.of(sizing(frames.get(page - 1)));
    }

    @Override
    public List<Layer> layers() {
        return List.of();
    }

    @Override
    public Optional<OutputIntent> outputIntent() {
        return Optional.empty();
    }

    @Override
    public List<ColourSpace.Separation> declaredColorants(int page) {
        return frames.get(page - 1).spots();
    }

    @Override
    public DisplayList record(int page, Cancel cancel, Progress progress) throws Refusal {
        cancel.check();
        if (page < 1 || page > frames.size()) {
            throw new IllegalArgumentException("page " + page);
        }
        Frame frame = frames.get(page - 1);
        PageInfo info = pages.get(page - 1);
        Box box = info.box(PageBox.MEDIA);
        Origin origin = new Origin("picture " + page, 0, Visibility.ALWAYS);
        // the unit square's top is y = 1, the page's is y = 0
        Matrix unitToPage = new Matrix(box.width(), 0, 0, -box.height(), 0, box.height());
        List<Approximation> notes = new ArrayList<>();
        sizeNote(frame, box, origin).ifPresent(notes::add);
        for (Frame.Note note : frame.notes()) {
            notes.add(new Approximation(note.feature(), note.shownAs(), origin));
        }
        Op image = new Op.Image(frame.source(), unitToPage, Style.PLAIN, null, origin);
        progress.report("reading " + file.getFileName(), 1);
        return new DisplayList(info, List.of(image), List.of(), null, notes);
    }

    private Optional<Approximation> sizeNote(Frame frame, Box box, Origin origin) {
        String taken = String.format(
                Locale.ROOT,
                "taken as %.1f × %.1f mm, %.0f samples per inch",
                box.widthMm(),
                box.heightMm(),
                sizing(frame).perInch(size));
        if (!stated(frame)) {
            String why = size.chosen() ? ", as chosen" : "; choose another size if it is not";
            return Optional.of(new Approximation("a picture whose file states no size", taken + why, origin));
        } else if (size.chosen()) {
            String said = String.format(Locale.ROOT, "a picture that states %.0f samples per inch", frame.dpiX());
            return Optional.of(new Approximation(said, taken + ", as chosen", origin));
        }
        return Optional.empty();
    }

    @Override
    public void close() {
        // every reading opens and closes the file by itself
    }
}
