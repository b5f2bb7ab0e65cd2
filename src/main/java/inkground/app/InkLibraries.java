package inkground.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import inkground.appearance.InkLibrary;
import inkground.appearance.InkLibrary.Entry;
import inkground.appearance.MeasuredInk;
import inkground.base.Refusal;
import inkground.colour.Cgats;
import inkground.colour.Characterisation;
import inkground.colour.Cie;
import inkground.colour.Cxf;
import inkground.colour.Lab;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Reads the user's library of ink colours. What kind of file it is, its contents say:
 *
 * <ul>
 *   <li>JSON: {@code {"paper": [L, a, b], "inks": [{"name": "…", "lab": [L, a, b], "opacity": 0.8, "source": "…"}]}}; paper, opacity and
 *       source may be left out;
 *   <li>CxF 3 (ISO 17972), its spot inks measured on their substrate and over black (CxF/X-4), then its other objects with a spectrum
 *       or a Lab value; an object named Paper is the paper of these;
 *   <li>CGATS text with a column SAMPLE_NAME and Lab or X, Y, Z columns; a sample named Paper is the paper.
 * </ul>
 *
 * <p>Colours are of solids, absolute for D50. Where the paper is given they are related to it; else the paper is taken for the
 * perfect white, and the source says so.
 */
public final class InkLibraries {
    private static final long MAX_BYTES = 16 << 20;
    private static final Lab WHITE = new Lab(100, 0, 0);
    private static final Set<String> PAPER_WORDS = Set.of("paper", "substrate", "media");
    private static final Set<String> INK_FIELDS = Set.of("name", "lab", "opacity", "source");
    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private InkLibraries() {}

    /**
     * @param file of one of the kinds above
     * @throws Refusal naming the file and the field or row
     */
    public static InkLibrary read(Path file) throws Refusal {
        String name = String.valueOf(file.getFileName());
        byte[] bytes;
        try {
            if (!Files.isRegularFile(file)) {
                throw new Refusal("There is no file " + file + ". Check the name of the ink library.");
            }
            if (Files.size(file) > MAX_BYTES) {
                throw new Refusal(name + " is larger than " + (MAX_BYTES >> 20) + " MB, the limit for an ink library.");
            }
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that you may open it.", e);
        }
        String start = new String(bytes, 0, Math.min(bytes.length, 200), StandardCharsets.UTF_8)
                .replace("\ufeff", "")
                .stripLeading();
        if (start.startsWith("{")) {
            return json(bytes, name);
        }
        if (start.startsWith("<")) {
            return cxf(bytes, name);
        }
        return cgats(new String(bytes, StandardCharsets.UTF_8), name);
    }

    private static InkLibrary json(byte[] bytes, String file) throws Refusal {
        JsonNode root;
        try {
            root = JSON.readTree(bytes);
        } catch (JsonProcessingException e) {
            String line =
                    e.getLocation() == null ? "" : ", line " + e.getLocation().getLineNr();
            throw new Refusal(file + line + ": not valid JSON: " + e.getOriginalMessage() + ". Correct that line.", e);
        } catch (IOException e) {
            throw new Refusal(file + " cannot be read.", e);
        }
        onlyFields(root, Set.of("paper", "inks"), file, "");
        Lab paper = root.has("paper") ? lab(root.get("paper"), file, "paper") : null;
        JsonNode inks = root.get("inks");
        if (inks == null || !inks.isArray() || inks.isEmpty() || inks.size() > InkLibrary.MAX_INKS) {
            throw new Refusal(file + ", field 'inks': must be a list of 1 to " + InkLibrary.MAX_INKS + " inks.");
        }
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < inks.size(); i++) {
            entries.add(ink(inks.get(i), paper, file, "inks[" + i + "]"));
        }
        return distinct(entries, file);
    }

    private static Entry ink(JsonNode node, Lab paper, String file, String where) throws Refusal {
        onlyFields(node, INK_FIELDS, file, where + ".");
        JsonNode name = node.get("name");
        if (name == null || !name.isTextual() || name.asText().isBlank()) {
            throw new Refusal(file + ", field '" + where + ".name': must be the ink's name, as the artwork has it.");
        }
        OptionalDouble opacity = OptionalDouble.empty();
        if (node.has("opacity")) {
            JsonNode value = node.get("opacity");
            if (!value.isNumber() || !(value.asDouble() >= 0 && value.asDouble() <= 1)) {
                throw new Refusal(file + ", field '" + where + ".opacity': must be a number from 0 to 1.");
            }
            opacity = OptionalDouble.of(value.asDouble());
        }
        Lab solid = lab(node.get("lab"), file, where + ".lab");
        JsonNode stated = node.get("source");
        String source = "ink library " + file
                + (stated != null && stated.isTextual() ? " (" + stated.asText() + ")" : ", source not stated");
        return entry(name.asText(), solid, paper, opacity, source);
    }

    private static void onlyFields(JsonNode node, Set<String> known, String file, String path) throws Refusal {
        if (!node.isObject()) {
            throw new Refusal(file + (path.isEmpty() ? "" : ", field '" + path + "'") + ": must be a JSON object.");
        }
        for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!known.contains(name)) {
                throw new Refusal(file + ", field '" + path + name + "': there is no such field; known here: "
                        + String.join(", ", known.stream().sorted().toList()) + ".");
            }
        }
    }

    private static Lab lab(JsonNode node, String file, String where) throws Refusal {
        boolean three = node != null && node.isArray() && node.size() == 3;
        for (int i = 0; three && i < 3; i++) {
            double value = node.get(i).asDouble(Double.NaN);
            three = node.get(i).isNumber() && (i == 0 ? value >= 0 && value <= 110 : Math.abs(value) <= 200);
        }
        if (!three) {
            throw new Refusal(file + ", field '" + where + "': must be three numbers L*, a*, b* for D50.");
        }
        return new Lab(
                node.get(0).asDouble(), node.get(1).asDouble(), node.get(2).asDouble());
    }

    private static InkLibrary cxf(byte[] bytes, String file) throws Refusal {
        Cxf document = Cxf.read(bytes, file);
        Lab paper = null;
        for (Cxf.Sample sample : document.samples()) {
            paper = isPaper(sample.name()) ? sample.lab() : paper;
        }
        List<Entry> entries = new ArrayList<>();
        for (Cxf.SpotInk ink : document.spotInks()) {
            entries.add(MeasuredInk.of(ink, "ink library " + file));
        }
        for (Cxf.Sample sample : document.samples()) {
            if (!isPaper(sample.name())) {
                String source = (sample.spectral() ? "spectrum in " : "Lab value in ") + file;
                entries.add(entry(sample.name(), sample.lab(), paper, OptionalDouble.empty(), source));
            }
        }
        return distinct(entries, file);
    }

    private static InkLibrary cgats(String text, String file) throws Refusal {
        Cgats table = Cgats.parse(text, file);
        int names = Math.max(table.indexOf("SAMPLE_NAME"), table.indexOf("NAME"));
        if (names < 0) {
            throw new Refusal(file + " has no SAMPLE_NAME column, so its colours have no ink names; it has "
                    + table.fields() + ".");
        }
        List<Lab> labs = Characterisation.colours(table, file);
        Lab paper = null;
        for (int i = 0; i < labs.size(); i++) {
            paper = isPaper(table.rows().get(i).get(names)) ? labs.get(i) : paper;
        }
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < labs.size(); i++) {
            String name = table.rows().get(i).get(names);
            if (!isPaper(name) && !name.isBlank()) {
                entries.add(entry(name, labs.get(i), paper, OptionalDouble.empty(), "ink library " + file));
            }
        }
        return distinct(entries, file);
    }

    private static boolean isPaper(String name) {
        return PAPER_WORDS.contains(name.strip().toLowerCase(Locale.ROOT));
    }

    private static InkLibrary distinct(List<Entry> entries, String file) throws Refusal {
        InkLibrary library = InkLibrary.of(entries);
        if (library.entries().size() < entries.size()) {
            List<String> names =
                    new ArrayList<>(entries.stream().map(Entry::name).toList());
            library.entries().keySet().forEach(names::remove);
            throw new Refusal(file + " holds the ink " + names.get(0) + " twice. Remove one of them.");
        }
        if (entries.isEmpty() || entries.size() > InkLibrary.MAX_INKS) {
            throw new Refusal(
                    file + " holds " + entries.size() + " inks; a library has 1 to " + InkLibrary.MAX_INKS + ".");
        }
        return library;
    }

    private static Entry entry(String name, Lab absolute, Lab paper, OptionalDouble opacity, String source) {
        double[] white = Cie.labToXyz(paper == null ? WHITE : paper);
        double[] xyz = Cie.labToXyz(absolute);
        Lab solid = Cie.xyzToLab(
                xyz[0] / white[0] * Cie.D50_X, xyz[1] / white[1] * Cie.D50_Y, xyz[2] / white[2] * Cie.D50_Z);
        return new Entry(name, solid, opacity, source + (paper == null ? "; its paper is taken for white" : ""));
    }
}
