package inkground.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.BlackPointCompensation;
import inkground.substrate.JsonFields;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/**
 * The file of an approval record: a ZIP archive, by custom {@code ART.approved.zip}.
 *
 * <pre>
 * record.json            what was approved, by whom, when; the size and SHA-256 of every other part
 * session.json           colour rules, print order, opacities, underbase, placement, page ({@link SessionFile})
 * substrate.json         the paper or garment, as a file of the substrates folder
 * artwork/NAME           the artwork, byte for byte; pictures it links to lie beside it as they did
 * condition/NAME         the chosen print condition, where it was a file
 * inks/NAME              the chosen ink colours, where there were any
 * proof.png, worn.png    the picture that was approved: flat, and on the garment where it was seen there
 * </pre>
 *
 * <p>{@code record.json}:
 *
 * <pre>
 * {
 *   "format": "inkground approval record",
 *   "version": 1,
 *   "approved": "2026-11-26T14:03:00+01:00",
 *   "by": "Ada Reach",
 *   "note": "Approximate: … Not a contract proof (ISO 12647-7).",
 *   "artwork": "artwork/regatta-shirt.pdf",
 *   "page": 1,
 *   "condition": "FOGRA39L",
 *   "inks": "inks/club.json",
 *   "pictureWidthMm": 280, "pictureDpi": 0,
 *   "blackPoint": "on",
 *   "printing": "screen printing, plastisol",
 *   "underbaseOpacity": 0.9,
 *   "overprint": true,
 *   "layersOn": [1, 2],
 *   "parts": [{"path": "artwork/regatta-shirt.pdf", "bytes": 81234, "sha256": "9f86d0…"}]
 * }
 * </pre>
 *
 * <p>{@code by}, {@code condition}, {@code inks}, {@code blackPoint}, {@code printing} and {@code underbaseOpacity} may be left out. The sums tell of
 * damage and of a part that was exchanged; they are no signature.
 */
final class ApprovalFile {
    static final String RECORD = "record.json";
    static final String SESSION = "session.json";
    static final String SUBSTRATE = "substrate.json";
    static final String PROOF = "proof.png";
    static final String WORN = "worn.png";

    /** Most parts: an artwork that links to more pictures is no file to be approved as one. */
    static final int MOST_PARTS = 500;
    /** Most bytes of all parts together, unpacked. */
    static final long MOST_BYTES = 2L << 30;

    private static final String FORMAT = "inkground approval record";
    private static final int VERSION = 1;
    private static final int MOST_RECORD_BYTES = 1 << 20;
    private static final int MOST_LAYERS = 10_000;
    private static final int LONGEST_PATH = 300;
    private static final byte[] HEAD = {'P', 'K', 3, 4};
    private static final int COPIED_AT_ONCE = 1 << 16;
    private static final Pattern PART =
            Pattern.compile("session\\.json|substrate\\.json|proof\\.png|worn\\.png|(artwork|condition|inks)(/[^/]+)+");
    /** What some system reads as more than a name: signs, an ending dot or space, names of devices. */
    private static final Pattern UNSAFE = Pattern.compile(
            ".*[\\\\:*?\"<>|\\p{Cntrl}].*|.*[. ]|(?i)(con|prn|aux|nul|com\\d|lpt\\d)(\\..*)?", Pattern.DOTALL);

    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private ApprovalFile() {}

    /** One part as the record states it. */
    private record Part(String path, long bytes, String sha256) {
        Map<String, Object> json() {
            Map<String, Object> out = new LinkedHashMap<>();
            out.put("path", path);
            out.put("bytes", bytes);
            out.put("sha256", sha256);
            return out;
        }
    }

    /** @return whether a name is safe in a path on every system, and does not lead out of its folder */
    static boolean safeName(String name) {
        return !name.isEmpty() && !UNSAFE.matcher(name).matches();
    }

    private static boolean safe(String path) {
        return path.length() <= LONGEST_PATH
                && PART.matcher(path).matches()
                && List.of(path.split("/", -1)).stream().allMatch(ApprovalFile::safeName);
    }

    /** @return whether a file is an archive as records are */
    static boolean isArchive(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(HEAD.length), HEAD);
        }
    }

    /**
     * Writes a record.
     *
     * @param folder that holds the parts
     * @param parts their paths in it
     * @param file to write over
     */
    static void pack(Approval approval, Path folder, List<String> parts, Path file, Cancel cancel, Progress progress)
            throws IOException, Refusal {
        List<Part> stated = new ArrayList<>();
        long sum = 0;
        for (String path : parts) {
            if (!safe(path)) {
                throw new Refusal("The file name '" + path.substring(path.indexOf('/') + 1)
                        + "' cannot be kept in a record that every system opens. Give it a plainer name.");
            }
            long bytes = Files.size(folder.resolve(path));
            sum += bytes;
            stated.add(new Part(path, bytes, ""));
        }
        if (sum > MOST_BYTES || stated.size() > MOST_PARTS) {
            throw new Refusal("The artwork and what belongs to it are " + stated.size() + " files of " + (sum >> 20)
                    + " MB; a record holds " + MOST_PARTS + " files of " + (MOST_BYTES >> 20)
                    + " MB. Link to fewer or smaller pictures.");
        }
        List<Part> summed = new ArrayList<>();
        for (Part part : stated) {
            try (InputStream in = Files.newInputStream(folder.resolve(part.path()))) {
                summed.add(new Part(
                        part.path(), part.bytes(), copy(in, OutputStream.nullOutputStream(), MOST_BYTES, cancel)));
            }
        }
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            zip.putNextEntry(new ZipEntry(RECORD));
            zip.write((JsonText.of(json(approval, summed)) + "\n").getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
            long done = 0;
            for (Part part : summed) {
                progress.report("keeping as approved", (double) done / Math.max(1, sum));
                zip.putNextEntry(new ZipEntry(part.path()));
                try (InputStream in = Files.newInputStream(folder.resolve(part.path()))) {
                    copy(in, zip, MOST_BYTES, cancel);
                }
                zip.closeEntry();
                done += part.bytes();
            }
        }
    }

    private static Map<String, Object> json(Approval approval, List<Part> parts) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("format", FORMAT);
        out.put("version", VERSION);
        out.put("approved", approval.when().toString());
        approval.by().ifPresent(by -> out.put("by", by));
        out.put("note", Proofs.CAUTION);
        out.put("artwork", approval.artwork());
        out.put("page", approval.page());
        approval.condition().ifPresent(condition -> out.put("condition", condition));
        approval.inks().ifPresent(inks -> out.put("inks", inks));
        out.put("pictureWidthMm", approval.size().widthMm());
        out.put("pictureDpi", approval.size().dpi());
        if (approval.black() != BlackPointCompensation.DEFAULT) {
            out.put("blackPoint", approval.black().name().toLowerCase(Locale.ROOT));
        }
        approval.printing().ifPresent(printing -> out.put("printing", printing));
        approval.underbaseOpacity().ifPresent(opacity -> out.put("underbaseOpacity", opacity));
        out.put("overprint", approval.overprint());
        out.put("layersOn", approval.layersOn().stream().sorted().toList());
        out.put("parts", parts.stream().map(Part::json).toList());
        return out;
    }

    /**
     * Unpacks a record and compares every part with its sum. Nothing is written outside {@code folder}, and no more than the record
     * states, which is bounded before anything is unpacked.
     *
     * @param folder empty
     * @throws Refusal if it is no record, of an unknown version, damaged, changed, or larger than it states
     */
    static Approval unpack(Path file, Path folder, Cancel cancel, Progress progress) throws Refusal {
        String name = file.getFileName().toString();
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8)) {
            ZipEntry entry = zip.getEntry(RECORD);
            if (entry == null) {
                throw new Refusal(name + " is no approval record: it holds no " + RECORD + ". Choose another file.");
            }
            byte[] text;
            try (InputStream in = zip.getInputStream(entry)) {
                text = in.readNBytes(MOST_RECORD_BYTES + 1);
            }
            if (text.length > MOST_RECORD_BYTES) {
                throw new Refusal(name + ", " + RECORD + " is larger than 1 MB, the limit. Is it an approval record?");
            }
            List<Part> parts = new ArrayList<>();
            Approval approval = approval(fields(text, name), parts, name);
            long sum = parts.stream().mapToLong(Part::bytes).sum();
            long done = 0;
            for (Part part : parts) {
                progress.report("reading " + name, (double) done / Math.max(1, sum));
                unpack(zip, part, folder, name, cancel);
                done += part.bytes();
            }
            return approval;
        } catch (ZipException | IllegalArgumentException e) {
            throw new Refusal(name + " is damaged or no approval record. Take it from where it was kept safe.", e);
        } catch (IOException e) {
            throw new Refusal(
                    name
                            + " cannot be unpacked. Check that you may read it, that it is whole, and that there is room in "
                            + "the temporary folder.",
                    e);
        }
    }

    private static void unpack(ZipFile zip, Part part, Path folder, String name, Cancel cancel)
            throws IOException, Refusal {
        ZipEntry entry = zip.getEntry(part.path());
        if (entry == null || entry.isDirectory()) {
            throw new Refusal(
                    name + ": the part " + part.path() + " is missing. Take the record from where it was kept safe.");
        }
        Path target = folder.resolve(part.path()).normalize();
        if (!target.startsWith(folder)) {
            throw unsafe(name, part.path());
        }
        Files.createDirectories(target.getParent());
        String sum;
        try (InputStream in = zip.getInputStream(entry);
                OutputStream out = Files.newOutputStream(target, StandardOpenOption.CREATE_NEW)) {
            sum = copy(in, out, part.bytes(), cancel);
        }
        if (Files.size(target) != part.bytes() || !sum.equals(part.sha256())) {
            throw new Refusal(name + ": the part " + part.path() + " was changed since it was approved: its SHA-256 is "
                    + sum.substring(0, 8) + "…, and "
                    + part.sha256().substring(0, 8)
                    + "… was approved. Take the record from where it was kept safe.");
        }
    }

    /**
     * Copies no more than one byte beyond {@code most}.
     *
     * @return SHA-256 of what was copied (FIPS 180-4), as 64 hexadecimal digits
     */
    private static String copy(InputStream in, OutputStream out, long most, Cancel cancel) throws IOException {
        MessageDigest digest = sha256();
        byte[] buffer = new byte[COPIED_AT_ONCE];
        long left = most + 1;
        int read;
        while (left > 0 && (read = in.read(buffer, 0, (int) Math.min(buffer.length, left))) > 0) {
            cancel.check();
            out.write(buffer, 0, read);
            digest.update(buffer, 0, read);
            left -= read;
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static JsonFields fields(byte[] text, String name) throws IOException, Refusal {
        try {
            return new JsonFields(JSON.readTree(text), name + ", " + RECORD, "");
        } catch (JsonProcessingException e) {
            throw new Refusal(
                    name + ", " + RECORD + " is damaged: it is not JSON. Take the record from where it was kept"
                            + " safe.",
                    e);
        }
    }

    private static Approval approval(JsonFields fields, List<Part> parts, String name) throws Refusal {
        if (!fields.has("format") || !fields.text("format").equals(FORMAT)) {
            throw new Refusal(name + " is no approval record: " + RECORD + " does not say so. Choose another file.");
        }
        int version = fields.whole("version", 1, 1_000_000);
        if (version != VERSION) {
            throw new Refusal(name + " is an approval record of version " + version + "; this program reads version "
                    + VERSION + ". Use a newer Inkground.");
        }
        fields.text("note");
        OffsetDateTime when = time(fields.text("approved"), fields.where("approved"));
        Optional<String> by = textIfThere(fields, "by");
        String artwork = fields.text("artwork");
        int page = fields.whole("page", 1, 1_000_000);
        Optional<String> condition = textIfThere(fields, "condition");
        Optional<String> inks = textIfThere(fields, "inks");
        PictureSize size = size(fields);
        BlackPointCompensation black = fields.has("blackPoint")
                ? fields.word("blackPoint", BlackPointCompensation.class)
                : BlackPointCompensation.DEFAULT;
        Optional<String> printing = textIfThere(fields, "printing");
        OptionalDouble opacity = fields.has("underbaseOpacity")
                ? OptionalDouble.of(fields.number("underbaseOpacity", 0, 1))
                : OptionalDouble.empty();
        boolean overprint = fields.yesNo("overprint");
        Set<Integer> layers = Set.copyOf(fields.wholes("layersOn", MOST_LAYERS));
        for (JsonFields part : fields.objects("parts", 1, MOST_PARTS)) {
            parts.add(part(part, name));
            part.end();
        }
        fields.end();
        check(parts, artwork, condition, inks, name);
        return new Approval(
                artwork, page, condition, inks, size, black, printing, opacity, overprint, layers, by, when);
    }

    private static Optional<String> textIfThere(JsonFields fields, String field) throws Refusal {
        return fields.has(field) ? Optional.of(fields.text(field)) : Optional.empty();
    }

    private static PictureSize size(JsonFields fields) throws Refusal {
        double wide = fields.number("pictureWidthMm", 0, PictureSize.MOST_MM);
        double dpi = fields.number("pictureDpi", 0, PictureSize.MOST_DPI);
        if (wide > 0 && dpi > 0) {
            throw new Refusal(fields.where("pictureDpi") + ": a picture has a width or a resolution, not both."
                    + " Set one of them to 0.");
        }
        return new PictureSize(wide, dpi);
    }

    private static OffsetDateTime time(String text, String where) throws Refusal {
        try {
            return OffsetDateTime.parse(text);
        } catch (DateTimeParseException e) {
            throw new Refusal(
                    where + ": '" + text + "' is no time as ISO 8601 has it. Write it as 2026-11-26T14:03:00+01:00.",
                    e);
        }
    }

    private static Part part(JsonFields fields, String name) throws Refusal {
        String path = fields.text("path");
        if (!safe(path)) {
            throw unsafe(name, path);
        }
        long bytes = (long) fields.number("bytes", 0, MOST_BYTES);
        String sum = fields.text("sha256").toLowerCase(Locale.ROOT);
        if (!sum.matches("[0-9a-f]{64}")) {
            throw new Refusal(fields.where("sha256") + ": this is no SHA-256. It has 64 hexadecimal digits.");
        }
        return new Part(path, bytes, sum);
    }

    private static Refusal unsafe(String name, String path) {
        return new Refusal(name + " names a part '" + path
                + "', which is not a place inside a record. Nothing was unpacked; do not trust this file.");
    }

    private static void check(
            List<Part> parts, String artwork, Optional<String> condition, Optional<String> inks, String name)
            throws Refusal {
        Set<String> paths = new HashSet<>();
        long sum = 0;
        for (Part part : parts) {
            if (!paths.add(part.path())) {
                throw new Refusal(name + " names the part " + part.path() + " twice. Do not trust this file.");
            }
            sum += part.bytes();
        }
        if (sum > MOST_BYTES) {
            throw new Refusal(name + " would unpack to " + (sum >> 20) + " MB; the limit is " + (MOST_BYTES >> 20)
                    + " MB. Nothing was unpacked.");
        }
        List<String> needed = new ArrayList<>(List.of(SESSION, SUBSTRATE, PROOF, artwork));
        condition.filter(path -> path.contains("/")).ifPresent(needed::add);
        inks.ifPresent(needed::add);
        for (String path : needed) {
            if (!paths.contains(path)) {
                throw new Refusal(name + ", " + RECORD + " lists no part '" + path
                        + "'. Take the record from where it was kept safe.");
            }
        }
    }
}
