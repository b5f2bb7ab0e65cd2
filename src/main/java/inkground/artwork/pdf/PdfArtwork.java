package inkground.artwork.pdf;

import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.artwork.MixingHints;
import inkground.artwork.OutputIntent;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Matrix;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/** An open PDF file. */
public final class PdfArtwork implements Artwork {
    private static final int HEADER_WITHIN_BYTES = 1024;
    private static final int MAX_PAGES = 20_000;
    /** Held so that the setting is not lost; the library's warnings reach the user as approximations instead. */
    private static final List<Logger> QUIET =
            List.of(Logger.getLogger("org.apache.pdfbox"), Logger.getLogger("org.apache.fontbox"));

    static {
        QUIET.forEach(logger -> logger.setLevel(Level.OFF));
    }

    private final Path file;
    private final PDDocument document;
    private final DocumentParts parts;
    private final List<PDPage> pages;
    private final List<Boxes> boxes;
    private final Optional<OutputIntent> intent;
    private boolean closed;

    private PdfArtwork(Path file, PDDocument document, Limits limits, Cancel cancel) throws Refusal {
        this.file = file;
        this.document = document;
        this.parts = new DocumentParts(document, limits);
        this.pages = readPages(file, document, cancel);
        this.boxes = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            cancel.check();
            boxes.add(Boxes.of(pages.get(i), i + 1, file.getFileName().toString()));
        }
        this.intent = OutputIntents.of(document.getDocumentCatalog().getCOSObject(), parts.spaces());
    }

    /**
     * Opens a PDF file. A file encrypted with an empty user password opens like any other.
     *
     * @param file to open; kept open until {@link #close}
     * @param cancel checked between pages
     * @param progress told when opening starts and ends
     * @throws Refusal if it is no PDF file, needs a password, is damaged, has no page, or has a page of no size or larger
     *     than 20 m
     * @throws CancellationException if cancelled
     */
    public static Artwork open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, Limits.STANDARD, cancel, progress);
    }

    static Artwork open(Path file, Limits limits, Cancel cancel, Progress progress) throws Refusal {
        String name = file.getFileName().toString();
        progress.report("opening " + name, 0);
        checkHeader(file, name);
        PDDocument document = null;
        try {
            document = Loader.loadPDF(file.toFile());
            PdfArtwork artwork = new PdfArtwork(file, document, limits, cancel);
            document = null;
            progress.report("opening " + name, 1);
            return artwork;
        } catch (InvalidPasswordException e) {
            throw new Refusal(name + " is protected by a password. Save a copy without a password and open that.", e);
        } catch (CancellationException e) {
            throw e;
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw damaged(name, e);
        } catch (OutOfMemoryError e) {
            throw new Refusal(name + " needs more memory than there is. Split it or simplify its artwork.", e);
        } finally {
            closeQuietly(document);
        }
    }

    private static Refusal damaged(String name, Throwable cause) {
        return new Refusal(
                name + " is damaged and cannot be read. Export it again, or repair it with the program that made it.",
                cause);
    }

    private static void checkHeader(Path file, String name) throws Refusal {
        try (InputStream in = Files.newInputStream(file)) {
            String start = new String(in.readNBytes(HEADER_WITHIN_BYTES), StandardCharsets.ISO_8859_1);
            if (!start.contains("%PDF-")) {
                throw new Refusal(name + " is not a PDF file: it does not start like one. Choose a PDF file.");
            }
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that it exists and that you may read it.", e);
        }
    }

    private static void closeQuietly(PDDocument document) {
        if (document != null) {
            try {
                document.close();
            } catch (IOException e) {
                // The file is being refused for a better reason already.
                Logger.getLogger(PdfArtwork.class.getName()).log(Level.FINE, "closing a refused file", e);
            }
        }
    }

    private static List<PDPage> readPages(Path file, PDDocument document, Cancel cancel) throws Refusal {
        List<PDPage> pages = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            cancel.check();
            pages.add(page);
            if (pages.size() > MAX_PAGES) {
                throw new Refusal(file.getFileName() + " has more than " + MAX_PAGES + " pages. Split it.");
            }
        }
        if (pages.isEmpty()) {
            throw new Refusal(file.getFileName() + " has no page. Export it again with at least one page.");
        }
        return List.copyOf(pages);
    }

    @Override
    public Path file() {
        return file;
    }

    /**
     * @param page from 1
     * @return from the page's default user space to page space
     */
    public Matrix userToPage(int page) {
        return boxes.get(page - 1).userToPage();
    }

    @Override
    public List<PageInfo> pages() {
        return boxes.stream().map(Boxes::info).toList();
    }

    @Override
    public List<Layer> layers() {
        return parts.layers().layers();
    }

    @Override
    public Optional<OutputIntent> outputIntent() {
        return intent;
    }

    @Override
    public Optional<OutputIntent> outputIntent(int page) {
        synchronized (parts.lock()) {
            Optional<OutputIntent> own = OutputIntents.of(pages.get(page - 1).getCOSObject(), parts.spaces());
            return own.isPresent() ? own : intent;
        }
    }

    @Override
    public List<ColourSpace.Separation> declaredColorants(int page) {
        return colorants(page).declared();
    }

    @Override
    public MixingHints mixingHints(int page) {
        MixingHints ofIntent = outputIntent(page).map(OutputIntent::hints).orElse(MixingHints.NONE);
        return colorants(page).hints().before(ofIntent);
    }

    private Colorants colorants(int page) {
        PDPage pdPage = pages.get(page - 1);
        synchronized (parts.lock()) {
            COSDictionary resources = org.apache.pdfbox.pdmodel.PDPageTree.getInheritableAttribute(
                                    pdPage.getCOSObject(), COSName.RESOURCES)
                            instanceof COSDictionary dict
                    ? dict
                    : null;
            return Colorants.of(pdPage.getCOSObject(), resources, parts.spaces());
        }
    }

    @Override
    public DisplayList record(int page, Cancel cancel, Progress progress) throws Refusal {
        String name = file.getFileName().toString();
        synchronized (parts.lock()) {
            if (closed) {
                throw new Refusal(name + " has been closed. Open it again.");
            }
            try {
                return recordLocked(page, cancel, progress);
            } catch (Stopped e) {
                throw e.refusal();
            } catch (CancellationException e) {
                throw e;
            } catch (RuntimeException | StackOverflowError e) {
                throw damaged(name + ", page " + page + ",", e);
            } catch (OutOfMemoryError e) {
                throw new Refusal(
                        "Page " + page + " of " + name + " needs more memory than there is. Simplify its artwork.", e);
            }
        }
    }

    private DisplayList recordLocked(int number, Cancel cancel, Progress progress) {
        PDPage page = pages.get(number - 1);
        Boxes geometry = boxes.get(number - 1);
        Recording recording = new Recording("page " + number, parts.limits(), cancel, progress);
        if (geometry.mediaBoxMissing()) {
            recording.approximate("no media box", "a page of 612 × 792 pt, US Letter");
        }
        PageRecorder recorder = new PageRecorder(page, geometry, parts, recording);
        recorder.run();
        ColourSpace[] groupSpace = new ColourSpace[1];
        COSBase stated = Cos.get(Cos.dictionary(page.getCOSObject(), "Group"), "CS");
        if (stated != null) {
            COSDictionary resources =
                    page.getResources() == null ? null : page.getResources().getCOSObject();
            recorder.guarded(
                    "the page group's colour space",
                    () -> groupSpace[0] = parts.spaces().of(stated, resources));
        }
        progress.report("reading page " + number, 1);
        return new DisplayList(geometry.info(), recording.ops(), layers(), groupSpace[0], recording.approximations());
    }

    @Override
    public void close() {
        synchronized (parts.lock()) {
            if (!closed) {
                closed = true;
                try {
                    document.close();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        }
    }
}
