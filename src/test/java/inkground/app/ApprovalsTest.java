package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.app.Approvals.Approved;
import inkground.app.Arrangement.WhiteBase;
import inkground.appearance.Stack;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.garment.Form;
import inkground.substrate.Cut;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Approval records: what goes in comes out, and nothing that was tampered with does. */
class ApprovalsTest {
    private static final OffsetDateTime WHEN = OffsetDateTime.parse("2026-11-26T14:03:00+01:00");
    private static final Arrangement ARRANGED = Arrangement.AS_FILED
            .withOpacity("Black", Optional.of(0.5))
            .over(Optional.of(new WhiteBase(0.8, 2, 0.1, Set.of("Black"), Set.of("Cyan"))));

    @TempDir
    Path folder;

    private final Cancel cancel = new Cancel();
    private Path artwork;
    private Path record;

    @BeforeEach
    void artworkWithALinkedPicture() throws Exception {
        Files.createDirectories(folder.resolve("pictures"));
        BufferedImage red = new BufferedImage(4, 4, BufferedImage.TYPE_INT_RGB);
        red.setRGB(
                0,
                0,
                4,
                4,
                java.util.Collections.nCopies(16, 0xd03020).stream()
                        .mapToInt(i -> i)
                        .toArray(),
                0,
                4);
        ImageIO.write(red, "png", folder.resolve("pictures/red.png").toFile());
        artwork = Files.writeString(
                folder.resolve("badge.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='40mm' height='40mm' viewBox='0 0 40 40'>"
                        + "<rect x='5' y='5' width='10' height='10'/>"
                        + "<image href='pictures/red.png' x='20' y='20' width='10' height='10'/></svg>");
        record = folder.resolve("badge.approved.zip");
    }

    private static Substrate navy() throws Refusal {
        return Substrates.load().byId("tee-navy").orElseThrow();
    }

    private Approvals.Order order(Job job, boolean replace) throws Refusal {
        return order(job, replace, Optional.empty());
    }

    private Approvals.Order order(Job job, boolean replace, Optional<Approvals.Worn> worn) throws Refusal {
        return new Approvals.Order(
                job,
                1,
                navy(),
                ARRANGED,
                Set.of("Yellow"),
                OptionalDouble.of(0.7),
                Optional.of("screen printing"),
                true,
                Set.of(),
                worn,
                Optional.of("Ada Reach"),
                WHEN,
                record,
                replace);
    }

    private void approve() throws Refusal {
        try (Job job = Job.open(artwork, cancel, Progress.NONE)) {
            Approvals.write(order(job, false), cancel, Progress.NONE);
        }
    }

    private Approved open() throws Refusal {
        return Approvals.open(record, cancel, Progress.NONE);
    }

    /** @return the record's entries, to be changed and written back */
    private Map<String, byte[]> entries() throws Exception {
        Map<String, byte[]> out = new LinkedHashMap<>();
        try (ZipFile zip = new ZipFile(record.toFile())) {
            for (ZipEntry entry : (Iterable<ZipEntry>) zip.stream().map(e -> (ZipEntry) e)::iterator) {
                try (InputStream in = zip.getInputStream(entry)) {
                    out.put(entry.getName(), in.readAllBytes());
                }
            }
        }
        return out;
    }

    private void write(Map<String, byte[]> entries) throws Exception {
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(record))) {
            for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
                zip.putNextEntry(new ZipEntry(entry.getKey()));
                zip.write(entry.getValue());
                zip.closeEntry();
            }
        }
    }

    private void changeRecord(String from, String to) throws Exception {
        Map<String, byte[]> entries = entries();
        String text = new String(entries.get("record.json"), StandardCharsets.UTF_8);
        assertThat(text).containsPattern(from);
        entries.put("record.json", text.replaceFirst(from, to).getBytes(StandardCharsets.UTF_8));
        write(entries);
    }

    private void refused(String... words) {
        assertThatThrownBy(this::open).isInstanceOf(Refusal.class).hasMessageContainingAll(words);
    }

    @Test
    void whatWasApprovedComesBackAsItWas() throws Exception {
        approve();
        byte[] bytes = Files.readAllBytes(artwork);
        Files.delete(artwork);
        Files.delete(folder.resolve("pictures/red.png"));
        Path unpacked;
        try (Approved approved = open()) {
            assertThat(approved.approval().caption()).isEqualTo("approved 26 Nov 2026 by Ada Reach");
            assertThat(approved.approval().when()).isEqualTo(WHEN);
            assertThat(approved.approval().printing()).contains("screen printing");
            unpacked = approved.job().file();
            assertThat(Files.readAllBytes(unpacked)).isEqualTo(bytes);
            assertThat(approved.side().page().notes()).noneMatch(note -> note.contains("not there"));
            var stack = approved.side().stack();
            assertThat(stack.substrate()).isEqualTo(navy());
            assertThat(stack.inks().get(3).opacity()).isEqualTo(0.5);
            assertThat(stack.shown()).doesNotContain(2).contains(0, 1, 3);
            assertThat(stack.underbase().white().opacity()).isEqualTo(0.7);
            assertThat(stack.underbase().hits()).isEqualTo(2);
            assertThat(stack.underbase().under()).containsExactly("Black");
            assertThat(stack.underbase().knockedOutUnder()).containsExactly("Cyan");
        }
        assertThat(unpacked).as("the temporary folder is gone").doesNotExist();
    }

    @Test
    void theRecordHoldsThePictureThatWasSeenAndSaysThatItIsNoContractProof() throws Exception {
        approve();
        Map<String, byte[]> entries = entries();
        assertThat(entries.keySet())
                .containsExactlyInAnyOrder(
                        "record.json",
                        "artwork/pictures/red.png",
                        "artwork/badge.svg",
                        "session.json",
                        "substrate.json",
                        "proof.png");
        BufferedImage proof = ImageIO.read(new java.io.ByteArrayInputStream(entries.get("proof.png")));
        assertThat(proof.getWidth()).isEqualTo(236);
        assertThat(new String(entries.get("record.json"), StandardCharsets.UTF_8))
                .contains(Proofs.CAUTION);
    }

    @Test
    void whatWasSeenOnAGarmentIsInTheRecordAsItWasSeenThere() throws Exception {
        Cut cut = Substrates.load().cuts().stream()
                .filter(c -> c.id().equals("t-shirt"))
                .findFirst()
                .orElseThrow();
        Form form = Form.of(cut, cut.sizes().get(0), cut.faces().get(0));
        try (Job job = Job.open(artwork, cancel, Progress.NONE)) {
            Approvals.write(order(job, false, Optional.of(new Approvals.Worn(form, false))), cancel, Progress.NONE);
            WornProofs.write(
                    new WornProofs.Order(
                            job.page(1, cancel, Progress.NONE),
                            stackAsApproved(),
                            ARRANGED.placement(),
                            form,
                            false,
                            WornProofs.USUAL_DPI,
                            true,
                            Set.of(),
                            folder.resolve("beside.png"),
                            false),
                    cancel,
                    Progress.NONE);
        }
        BufferedImage worn =
                ImageIO.read(new java.io.ByteArrayInputStream(entries().get("worn.png")));
        BufferedImage beside = ImageIO.read(folder.resolve("beside.png").toFile());
        assertThat(worn.getWidth()).isEqualTo(beside.getWidth());
        assertThat(pixels(worn)).isEqualTo(pixels(beside));
        open().close();
    }

    private Stack stackAsApproved() throws Refusal {
        try (Approved approved = open()) {
            return approved.side().stack();
        }
    }

    private static int[] pixels(BufferedImage image) {
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    @Test
    void aChangedPartIsTold() throws Exception {
        approve();
        Map<String, byte[]> entries = entries();
        byte[] changed = entries.get("artwork/badge.svg");
        changed[changed.length - 8] ^= 1;
        write(entries);
        refused("artwork/badge.svg", "was changed since it was approved");
    }

    @Test
    void aPartLongerThanStatedIsNotUnpackedBeyondThat() throws Exception {
        approve();
        Map<String, byte[]> entries = entries();
        entries.put("artwork/badge.svg", new byte[50_000_000]);
        write(entries);
        assertThat(Files.size(record)).isLessThan(200_000);
        refused("artwork/badge.svg", "was changed since it was approved");
    }

    @Test
    void moreThanTheLimitIsRefusedBeforeAnythingIsUnpacked() throws Exception {
        approve();
        Map<String, byte[]> entries = entries();
        String text = new String(entries.get("record.json"), StandardCharsets.UTF_8);
        entries.put(
                "record.json",
                text.replaceAll("\"bytes\" : \\d+", "\"bytes\" : 2147483000").getBytes(StandardCharsets.UTF_8));
        write(entries);
        refused("would unpack to", "Nothing was unpacked");
    }

    @Test
    void pathsThatLeadOutAreRefused() throws Exception {
        approve();
        for (String path : List.of(
                "artwork/../../evil", "/etc/passwd", "artwork/a:b", "artwork//b", "other/x", "artwork/nul.svg")) {
            Map<String, byte[]> entries = entries();
            changeRecord("\"path\" : \"artwork/badge.svg\"", "\"path\" : \"" + path + "\"");
            refused("names a part '" + path + "'");
            write(entries);
        }
    }

    @Test
    void anUnknownVersionIsToldAsSuch() throws Exception {
        approve();
        changeRecord("\"version\" : 1", "\"version\" : 2");
        refused("version 2", "Use a newer Inkground");
    }

    @Test
    void aPartThatIsMissingAndAFieldThatIsWrongAreNamed() throws Exception {
        approve();
        Map<String, byte[]> whole = entries();
        Map<String, byte[]> entries = entries();
        entries.remove("substrate.json");
        write(entries);
        refused("substrate.json", "missing");
        write(whole);
        changeRecord("2026-11-26T14:03[^\"]*", "yesterday");
        refused("approved", "yesterday", "ISO 8601");
    }

    @Test
    void whatIsNoRecordIsRefused() throws Exception {
        Files.writeString(record, "PK\3\4 and nothing else");
        refused("badge.approved.zip is damaged or no approval record");
        write(Map.of("readme.txt", new byte[3]));
        refused("holds no record.json");
        write(Map.of("record.json", "{\"format\": \"other\"}".getBytes(StandardCharsets.UTF_8)));
        refused("no approval record");
        write(Map.of("record.json", "{".getBytes(StandardCharsets.UTF_8)));
        refused("not JSON");
    }

    @Test
    void anExistingRecordIsReplacedOnlyIfAsked() throws Exception {
        Files.writeString(record, "precious");
        assertThatThrownBy(this::approve).isInstanceOf(Refusal.class).hasMessageContaining("exists already");
        assertThat(record).hasContent("precious");
        try (Job job = Job.open(artwork, cancel, Progress.NONE)) {
            Approvals.write(order(job, true), cancel, Progress.NONE);
        }
        open().close();
    }

    @Test
    void anArtworkThatWasWrittenSinceIsNotKeptUnseen() throws Exception {
        try (Job job = Job.open(artwork, cancel, Progress.NONE)) {
            Files.writeString(artwork, Files.readString(artwork).replace("<rect", "<rect id='other'"));
            assertThatThrownBy(() -> Approvals.write(order(job, false), cancel, Progress.NONE))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("was changed since it was opened");
        }
        onlyWhatWasThere();
    }

    @Test
    void nothingIsLeftWhenItIsStopped() throws Exception {
        try (Job job = Job.open(artwork, cancel, Progress.NONE)) {
            job.page(1, cancel, Progress.NONE);
            Cancel stopped = new Cancel();
            stopped.request();
            assertThatThrownBy(() -> Approvals.write(order(job, false), stopped, Progress.NONE))
                    .isInstanceOf(CancellationException.class);
        }
        onlyWhatWasThere();
    }

    private void onlyWhatWasThere() throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("badge.svg", "pictures");
        }
    }
}
