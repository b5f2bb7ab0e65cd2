package inkground.substrate;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import inkground.base.Refusal;
import inkground.colour.Lab;
import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/**
 * Reads the folder of substrates: {@code papers/*.json}, {@code garments/*.json} and {@code processes/*.json}, one thing a
 * file. The first fault refuses the whole folder, with a message that names file and field.
 */
public final class Substrates {
    /** System property that names a folder to use in place of the program's own. */
    public static final String FOLDER_PROPERTY = "inkground.substrates";

    private static final String RESOURCE = "/substrates";
    private static final List<String> FOLDERS = List.of("papers", "garments", "processes");
    private static final int MAX_BYTES = 1 << 20;
    private static final int MAX_FILES = 10_000;
    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private Substrates() {}

    /**
     * Reads the folder named by the system property {@value #FOLDER_PROPERTY}, or else the one that comes with the program.
     *
     * @throws Refusal naming file, field, reason and remedy
     */
    public static Library load() throws Refusal {
        String folder = System.getProperty(FOLDER_PROPERTY);
        if (folder != null && !folder.isBlank()) {
            return load(Path.of(folder));
        }
        URL url = Substrates.class.getResource(RESOURCE);
        if (url == null) {
            throw new Refusal(
                    "The program's own folder of substrates is missing. Install it again, or name a folder with -D"
                            + FOLDER_PROPERTY + "=FOLDER.");
        }
        try {
            if (url.openConnection() instanceof JarURLConnection jar) {
                jar.setUseCaches(false);
                try (JarFile file = jar.getJarFile()) {
                    return parse(inJar(file));
                }
            }
            return load(Path.of(url.toURI()));
        } catch (IOException | URISyntaxException e) {
            throw new Refusal("The program's own folder of substrates cannot be read. Install it again.", e);
        }
    }

    /**
     * Reads one folder.
     *
     * @throws Refusal naming file, field, reason and remedy
     */
    public static Library load(Path folder) throws Refusal {
        if (!Files.isDirectory(folder)) {
            throw new Refusal(folder + " is not a folder. Name one that holds papers, garments and processes.");
        }
        SortedMap<String, byte[]> files = new TreeMap<>();
        try {
            for (String sub : FOLDERS) {
                if (!Files.isDirectory(folder.resolve(sub))) {
                    continue;
                }
                try (Stream<Path> list = Files.list(folder.resolve(sub))) {
                    for (Path file :
                            list.filter(p -> p.toString().endsWith(".json")).toList()) {
                        String name = sub + "/" + file.getFileName();
                        try (InputStream in = Files.newInputStream(file)) {
                            put(files, name, in);
                        }
                    }
                }
            }
        } catch (IOException e) {
            throw new Refusal(folder + " cannot be read. Check that you may open it and its files.", e);
        }
        return parse(files);
    }

    /**
     * Reads one paper or garment from a file of the same form as those of the folder.
     *
     * @throws Refusal naming file, field, reason and remedy
     */
    public static Substrate read(Path file) throws Refusal {
        String name = String.valueOf(file.getFileName());
        SortedMap<String, byte[]> one = new TreeMap<>();
        if (!Files.isRegularFile(file)) {
            throw new Refusal("There is no file " + file + ". Name the JSON file of one paper or garment.");
        }
        try (InputStream in = Files.newInputStream(file)) {
            put(one, name, in);
        } catch (IOException e) {
            throw new Refusal(file + " cannot be read. Check that you may open it.", e);
        }
        JsonFields fields = new JsonFields(json(name, one.get(name)), name, "");
        Substrate substrate = substrate(fields.id("id"), fields.word("kind", Substrate.Kind.class), name, fields);
        fields.end();
        return substrate;
    }

    private static SortedMap<String, byte[]> inJar(JarFile jar) throws IOException, Refusal {
        SortedMap<String, byte[]> files = new TreeMap<>();
        String prefix = RESOURCE.substring(1) + "/";
        for (JarEntry entry : (Iterable<JarEntry>) jar.stream()::iterator) {
            String name = entry.getName();
            if (name.startsWith(prefix) && name.endsWith(".json")) {
                try (InputStream in = jar.getInputStream(entry)) {
                    put(files, name.substring(prefix.length()), in);
                }
            }
        }
        return files;
    }

    private static void put(Map<String, byte[]> files, String name, InputStream in) throws IOException, Refusal {
        byte[] bytes = in.readNBytes(MAX_BYTES + 1);
        if (bytes.length > MAX_BYTES) {
            throw new Refusal(name + " is larger than 1 MB, the limit for one substrate. Is it the right file?");
        }
        files.put(name, bytes);
        if (files.size() > MAX_FILES) {
            throw new Refusal("More than " + MAX_FILES + " substrate files. Move some to another folder.");
        }
    }

    private static Library parse(SortedMap<String, byte[]> files) throws Refusal {
        List<Substrate> substrates = new ArrayList<>();
        List<PrintProcess> processes = new ArrayList<>();
        Map<String, String> fileOfId = new HashMap<>();
        for (Map.Entry<String, byte[]> entry : files.entrySet()) {
            String file = entry.getKey();
            JsonFields fields = new JsonFields(json(file, entry.getValue()), file, "");
            String id = fields.id("id");
            String other = fileOfId.put(id, file);
            if (other != null) {
                throw new Refusal(
                        file + ", field 'id': " + id + " is also the id in " + other + ". Give one of them another.");
            }
            if (file.startsWith("processes/")) {
                processes.add(process(id, fields));
            } else {
                Substrate.Kind kind = file.startsWith("papers/") ? Substrate.Kind.PAPER : Substrate.Kind.GARMENT;
                substrates.add(substrate(id, kind, file, fields));
            }
            fields.end();
        }
        if (substrates.isEmpty()) {
            throw new Refusal(
                    "The folder of substrates holds no paper and no garment. Add a file to papers or garments.");
        }
        substrates.sort(Comparator.comparing(Substrate::kind)
                .thenComparingInt(Substrate::order)
                .thenComparing(Substrate::name)
                .thenComparing(Substrate::id));
        processes.sort(Comparator.comparingInt(PrintProcess::order)
                .thenComparing(PrintProcess::name)
                .thenComparing(PrintProcess::id));
        return new Library(substrates, processes);
    }

    private static JsonNode json(String file, byte[] bytes) throws Refusal {
        try {
            return JSON.readTree(bytes);
        } catch (JsonProcessingException e) {
            String where =
                    e.getLocation() == null ? "" : ", line " + e.getLocation().getLineNr();
            throw new Refusal(file + where + ": not valid JSON: " + e.getOriginalMessage() + ". Correct that line.", e);
        } catch (IOException e) {
            throw new Refusal(file + " cannot be read.", e);
        }
    }

    private static Substrate substrate(String id, Substrate.Kind folder, String file, JsonFields f) throws Refusal {
        Substrate.Kind kind = f.word("kind", Substrate.Kind.class);
        if (kind != folder) {
            throw new Refusal(file + ", field 'kind': a " + kind.name().toLowerCase(java.util.Locale.ROOT)
                    + " does not belong in this folder. Move the file or correct the field.");
        }
        double[] lab = f.numbers("lab", new double[] {0, -128, -128}, new double[] {100, 128, 128});
        JsonFields t = f.object("texture");
        Texture texture = new Texture(
                t.word("kind", Texture.Kind.class), t.number("strength", 0, 1), t.whole("seed", 0, Integer.MAX_VALUE));
        t.end();
        List<PrintArea> areas = new ArrayList<>();
        for (JsonFields area : f.objects("printAreas", kind == Substrate.Kind.GARMENT ? 1 : 0)) {
            areas.add(new PrintArea(
                    area.text("name"), area.number("widthMm", 1, 5000), area.number("heightMm", 1, 5000)));
            area.end();
        }
        return new Substrate(
                id,
                f.text("name"),
                kind,
                new Lab(lab[0], lab[1], lab[2]),
                f.text("source"),
                texture,
                areas,
                f.number("hidingPower", 0, 1),
                f.yesNo("underbaseAdvised"),
                f.whole("order", 0, 1_000_000),
                f.texts("notes"));
    }

    private static PrintProcess process(String id, JsonFields f) throws Refusal {
        return new PrintProcess(
                id,
                f.text("name"),
                f.words("on", Substrate.Kind.class),
                f.word("white", PrintProcess.White.class),
                f.number("inkOpacity", 0, 1),
                f.number("whiteOpacity", 0, 1),
                f.number("minLineMm", 0, 50),
                f.number("minGapMm", 0, 50),
                f.number("minTypePt", 0, 200),
                f.number("minImageDpi", 1, 5000),
                f.number("maxTotalInkPercent", 50, 1200),
                f.number("bleedMm", 0, 100),
                f.number("safeMm", 0, 200),
                f.number("registerMm", 0, 20),
                f.whole("maxInks", 1, 64),
                f.text("source"),
                f.texts("cautions"),
                f.texts("notes"),
                f.whole("order", 0, 1_000_000));
    }
}
