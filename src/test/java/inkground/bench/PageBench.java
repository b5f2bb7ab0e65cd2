package inkground.bench;

import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.PageBox;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintConditions;
import inkground.plate.InkMapping;
import inkground.plate.InkPlanes;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A whole demo page, media box, at 300 dpi: ink planes beside PDFBox's RGB picture of the same page. Both start from an
 * opened file and interpret the page anew; {@link #planesOfARecordedPage} leaves the interpretation out, which is what a
 * viewer does on each zoom.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Djava.awt.headless=true", "-Xmx3g"})
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class PageBench {
    private static final double DPI = 300;

    /** The demo file. */
    @Param({"regatta-shirt.pdf", "regatta-poster.pdf"})
    public String file;

    private Artwork artwork;
    private DisplayList list;
    private InkMapping mapping;
    private PDDocument document;
    private PDFRenderer renderer;

    /** Opens the file both ways. */
    @Setup(Level.Trial)
    public void open() throws Refusal, IOException {
        Path path = Path.of("demo", file);
        artwork = PdfArtwork.open(path, new Cancel(), Progress.NONE);
        list = artwork.record(1, new Cancel(), Progress.NONE);
        mapping = InkMapping.of(artwork.declaredColorants(1), list, PrintConditions.bundled("FOGRA39L"));
        document = Loader.loadPDF(path.toFile());
        renderer = new PDFRenderer(document);
    }

    /** Closes it. */
    @TearDown(Level.Trial)
    public void close() throws IOException {
        artwork.close();
        document.close();
    }

    /** Ink planes, the page interpreted anew. */
    @Benchmark
    public InkPlanes planes() throws Refusal {
        return paint(artwork.record(1, new Cancel(), Progress.NONE));
    }

    /** Ink planes of a page that is already a display list. */
    @Benchmark
    public InkPlanes planesOfARecordedPage() throws Refusal {
        return paint(list);
    }

    /** PDFBox's own renderer. */
    @Benchmark
    public BufferedImage pdfBoxRgb() throws IOException {
        return renderer.renderImageWithDPI(0, (float) DPI, ImageType.RGB);
    }

    private InkPlanes paint(DisplayList page) throws Refusal {
        PlateRequest request = PlateRequest.of(page.page().box(PageBox.MEDIA), DPI, true, page.defaultLayers());
        return new Plate(page, mapping).render(request, new Cancel(), Progress.NONE);
    }
}
