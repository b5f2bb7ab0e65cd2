package inkground.artwork.svg;

import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.artwork.Op;
import inkground.artwork.OutputIntent;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.gvt.GraphicsNode;

/** An open SVG file, packed or not: one page. */
public final class SvgArtwork implements Artwork {
    private static final double PX_PER_INCH = 96;

    static {
        ClosedUrls.close();
    }

    private final Path file;
    private final String name;
    private final byte[] data;
    private final Limits limits;
    private final PageSize size;
    private final PictureSize chosen;
    private final Sizing sizing;
    private final PageInfo page;
    private final Set<Path> linked = ConcurrentHashMap.newKeySet();

    private SvgArtwork(Path file, byte[] data, Limits limits, PageSize size, PictureSize chosen) throws Refusal {
        this.file = file;
        this.name = file.getFileName().toString();
        this.data = data;
        this.limits = limits;
        this.size = size;
        this.chosen = chosen;
        this.sizing =
                new Sizing(Sizing.Unit.PX, size.stated(), size.widthPx(), size.heightPx(), PX_PER_INCH, PX_PER_INCH);
        Box whole = sizing.page(chosen, name);
        Map<PageBox, Box> boxes = new EnumMap<>(PageBox.class);
        for (PageBox box : PageBox.values()) {
            boxes.put(box, whole);
        }
        this.page = new PageInfo(1, boxes, Set.of(PageBox.MEDIA), 0, 1);
    }

    /**
     * Opens an SVG file.
     *
     * @param file to open, as text or packed by gzip; read once
     * @param cancel checked at every element
     * @param progress told when opening starts and ends
     * @throws Refusal if it is not SVG, is damaged, has no size or more than 20 m, or is beyond a limit
     * @throws CancellationException if cancelled
     */
    public static Artwork open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, PictureSize.STATED, cancel, progress);
    }

    /**
     * Opens an SVG file as above.
     *
     * @param size chosen by the user; goes before what the file states
     */
    public static Artwork open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal {
        return open(file, size, Limits.STANDARD, cancel, progress);
    }

    static Artwork open(Path file, Limits limits, Cancel cancel, Progress progress) throws Refusal {
        return open(file, PictureSize.STATED, limits, cancel, progress);
    }

    private static Artwork open(Path file, PictureSize chosen, Limits limits, Cancel cancel, Progress progress)
            throws Refusal {
        String name = file.getFileName().toString();
        cancel.check();
        progress.report("opening " + name, 0);
        try {
            Reading reading = new Reading(name, limits, cancel);
            byte[] data = read(file, reading);
            SVGOMDocument document = SvgXml.parse(data, name, reading);
            UseCount.check(document.getDocumentElement(), reading);
            PageSize size = PageSize.of(document.getDocumentElement(), name);
            progress.report("opening " + name, 1);
            return new SvgArtwork(file, data, limits, size, chosen);
        } catch (Stopped e) {
            throw e.refusal();
        } catch (CancellationException e) {
            throw e;
        } catch (RuntimeException | StackOverflowError e) {
            throw damaged(name, e);
        } catch (OutOfMemoryError e) {
            throw tooLarge(name, e);
        }
    }

    private static byte[] read(Path file, Reading reading) throws Refusal {
        try (InputStream in = Files.newInputStream(file)) {
            return reading.unpack(in);
        } catch (IOException e) {
            throw new Refusal(
                    reading.name + " cannot be read. Check that it exists, is whole, and that you may read it.", e);
        }
    }

    private static Refusal damaged(String name, Throwable cause) {
        return new Refusal(
                name + " is damaged and cannot be read. Export it again, or repair it with the program that made it.",
                cause);
    }

    private static Refusal tooLarge(String name, Throwable cause) {
        return new Refusal(name + " needs more memory than there is. Split it or simplify its artwork.", cause);
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public List<PageInfo> pages() {
        return List.of(page);
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
    public List<ColourSpace.Separation> declaredColorants(int number) {
        return List.of(); // an ink that is named is painted with, or it is not in the file
    }

    @Override
    public List<Path> linkedFiles() {
        return linked.stream().sorted().toList();
    }

    @Override
    public DisplayList record(int number, Cancel cancel, Progress progress) throws Refusal {
        if (number != 1) {
            throw new IllegalArgumentException("page " + number);
        }
        try {
            return record(cancel, progress);
        } catch (Stopped e) {
            throw e.refusal();
        } catch (CancellationException e) {
            throw e;
        } catch (RuntimeException | StackOverflowError e) {
            throw damaged(name, e);
        } catch (OutOfMemoryError e) {
            throw tooLarge(name, e);
        }
    }

    private DisplayList record(Cancel cancel, Progress progress) throws Refusal {
        progress.report("reading " + name, -1);
        Reading reading = new Reading(name, limits, cancel);
        reading.text(data.length);
        if (chosen.chosen() || !size.stated()) {
            reading.notes.add(
                    size.stated()
                            ? "a drawing whose stated size is not taken"
                            : "a drawing that does not say how large it is",
                    sizeWords(),
                    null);
        }
        SVGOMDocument document = SvgXml.parse(data, name, reading);
        PlacedImages images = new PlacedImages(file, reading, linked);
        SvgContext context = new SvgContext(reading, images, images.folder(), size.widthPx(), size.heightPx());
        try {
            GraphicsNode root = context.build(document);
            double ptPerPx = 72 / sizing.perInch(chosen);
            Matrix pxToPage = Matrix.scale(ptPerPx, ptPerPx);
            Box box = page.box(PageBox.MEDIA);
            Shared shared = new Shared(reading, context, box, pxToPage, progress);
            SvgRecorder recorder = new SvgRecorder(shared, false);
            recorder.node(root, pxToPage, null);
            List<Op> ops = recorder.ops();
            // SVG blends in sRGB; where inks are named that would lose them
            ColourSpace space = ops.stream().anyMatch(SvgRecorder::keepsInks) ? null : new ColourSpace.DeviceRgb();
            return new DisplayList(page, ops, List.of(), space, reading.notes.list());
        } finally {
            context.dispose();
        }
    }

    private String sizeWords() {
        if (!chosen.chosen()) {
            return "one unit is taken as 1/96 inch";
        }
        Box whole = sizing.page(chosen);
        return String.format(Locale.ROOT, "taken as %.1f × %.1f mm, as chosen", whole.widthMm(), whole.heightMm());
    }

    @Override
    public Optional<Sizing> sizing(int number) {
        return Optional.of(sizing);
    }

    @Override
    public void close() {
        // the file was read whole; nothing is open
    }
}
