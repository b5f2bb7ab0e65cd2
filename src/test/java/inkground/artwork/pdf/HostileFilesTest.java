package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HostileFilesTest {
    private static final int FILES = 300;
    private static final long SEED = 20_261_125;

    @TempDir
    Path dir;

    /** A page that uses a little of everything. */
    private PdfText rich() {
        return new PdfText()
                        .catalog("/OCProperties << /OCGs [8 0 R] /D << /OFF [8 0 R] >> >>")
                        .page(
                                "/MediaBox [0 0 200 100] /TrimBox [5 5 195 95] /Group << /S /Transparency /CS /DeviceCMYK >>"
                                        + " /Annots [<< /Subtype /Stamp /F 4 /Rect [1 1 9 9] /AP << /N 5 0 R >> >>]")
                        .resources("/XObject << /F 5 0 R /I 6 0 R >> /Pattern << /P 7 0 R >> /Properties << /L 8 0 R >>"
                                + " /ExtGState << /G << /ca 0.5 /BM /Multiply /SMask << /S /Luminosity /G 5 0 R >> >> >>"
                                + " /Font << /T << /Type /Font /Subtype /Type3 /FontBBox [0 0 9 9] /FontMatrix [1 0 0 1 0 0]"
                                + " /FirstChar 97 /LastChar 97 /Widths [9] /Encoding << /Differences [97 /a] >> /CharProcs"
                                + " << /a 7 0 R >> >> >> /Shading << /S << /ShadingType 2 /ColorSpace /DeviceGray"
                                + " /Coords [0 0 9 9] /Function << /FunctionType 2 /Domain [0 1] /N 1 >> >> >>"
                                + " /ColorSpace << /N [/DeviceN [/River /Oar] /DeviceCMYK 9 0 R] >>")
                        .content(
                                "q /G gs /N cs 0.5 0.5 scn 10 10 50 50 re B Q /F Do q 9 0 0 9 0 0 cm /I Do Q /OC /L BDC"
                                        + " /Pattern cs /P scn 0 0 99 99 re f* EMC /S sh BT /T 5 Tf 2 Tr (aa) Tj ET [2 1] 0 d 0 0 m 9 9 l S")
                        .stream(
                                "/Subtype /Form /BBox [0 0 50 50] /Group << /S /Transparency /K true >>",
                                "1 0 0 rg 0 0 5 5 re f")
                        .stream(
                                "/Subtype /Image /Width 2 /Height 2 /ColorSpace /DeviceRGB /BitsPerComponent 4",
                                "abcdefgh")
                        .stream(
                                "/PatternType 1 /PaintType 1 /BBox [0 0 5 5] /XStep 6 /YStep 6 /Resources << >>",
                                "0 0 3 3 re f")
                        .object("<< /Type /OCG /Name (Guides) >>")
                        .stream(
                                "/FunctionType 4 /Domain [0 1 0 1] /Range [0 1 0 1 0 1 0 1]",
                                "{ 2 copy add 2 div exch dup 0.5 gt {pop 1} if }");
    }

    @Test
    void theUndamagedPageIsReadExactly() throws Exception {
        List<Op> ops = rich().ops(dir);
        assertThat(ops).hasSizeGreaterThan(8);
    }

    @Test
    void damagedFilesEndInADisplayListOrARefusal() throws Exception {
        byte[] whole = Files.readAllBytes(rich().write(dir));
        Random random = new Random(SEED);
        int read = 0;
        for (int i = 0; i < FILES; i++) {
            Path file = Files.write(dir.resolve("damaged.pdf"), damaged(whole, random));
            try (Artwork artwork = PdfText.openFile(file)) {
                artwork.declaredColorants(1);
                DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
                for (Op op : list.ops()) {
                    decode(op);
                }
                read++;
            } catch (Refusal refusal) {
                assertThat(refusal.getMessage()).doesNotContain("\n", "Exception", "java.");
            }
        }
        assertThat(read).as("files read of " + FILES).isGreaterThan(FILES / 4);
    }

    private static byte[] damaged(byte[] whole, Random random) {
        byte[] out = whole.clone();
        int changes = 1 + random.nextInt(8);
        for (int i = 0; i < changes; i++) {
            int at = random.nextInt(out.length);
            if (random.nextBoolean()) {
                out[at] = (byte) "0123456789 /<>[]()-.".charAt(random.nextInt(20));
            } else {
                int length = Math.min(random.nextInt(20), out.length - at);
                System.arraycopy(whole, random.nextInt(whole.length - length), out, at, length);
            }
        }
        return out;
    }

    private static void decode(Op op) {
        if (op instanceof Op.Image image
                && (long) image.image().width() * image.image().height() < 1_000_000) {
            try {
                image.image().decode();
            } catch (Refusal refusal) {
                assertThat(refusal.getMessage()).contains("image");
            }
        }
    }

    @Test
    void pagesAreRecordedAlikeFromManyThreads() throws Exception {
        try (Artwork artwork = rich().open(dir)) {
            ExecutorService pool = Executors.newFixedThreadPool(4);
            try {
                List<Callable<Integer>> jobs = new ArrayList<>();
                for (int i = 0; i < 8; i++) {
                    jobs.add(() ->
                            artwork.record(1, new Cancel(), Progress.NONE).ops().size());
                }
                int expected = rich().ops(dir).size();
                for (Future<Integer> result : pool.invokeAll(jobs)) {
                    assertThat(result.get()).isEqualTo(expected);
                }
            } finally {
                pool.shutdownNow();
            }
        }
    }

    @Test
    void aBilevelImageWithAHugePageIsRefusedOrDecodedNeverThrown() throws Exception {
        byte[] pageInformation = {
            0, 0, 0, 0, 0x30, 0, 1, 0, 0, 0, 19, 0x7F, -1, -1, -1, 0x7F, -1, -1, -1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0
        };
        Op.Image op = new PdfText()
                .resources("/XObject << /I 5 0 R >>").content("/I Do").stream(
                                "/Subtype /Image /Width 8 /Height 8 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter"
                                        + " /JBIG2Decode",
                                pageInformation)
                        .only(Op.Image.class, dir);
        assertThatCode(() -> op.image().decode()).isInstanceOf(Refusal.class).hasMessageContaining("image of 8 × 8");
    }
}
