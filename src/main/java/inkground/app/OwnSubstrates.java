package inkground.app;

import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.colour.Lab;
import inkground.substrate.PrintArea;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.substrate.Texture;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The user's own papers and garments: one JSON file each, of the same form as the program's, in a folder of their own. A file
 * that cannot be read costs itself alone.
 */
public final class OwnSubstrates {
    /** System property that names another folder. */
    public static final String FOLDER_PROPERTY = "inkground.own.substrates";

    /** Most files read: a rack of more helps no one. */
    public static final int MOST = 2_000;
    /** Longest name, in characters. */
    public static final int LONGEST_NAME = 60;

    /** As wide as the garments of the demo; the printer's platen decides. */
    private static final List<PrintArea> GARMENT_AREAS = List.of(
            new PrintArea("front chest", 320, 400),
            new PrintArea("left chest", 100, 100),
            new PrintArea("back", 350, 420));

    private static final double STRENGTH = 0.5;
    private static final int LONGEST_ID = 50;

    private final Path folder;

    /**
     * @param folder where they are kept; made when the first is kept
     */
    public OwnSubstrates(Path folder) {
        this.folder = folder;
    }

    /** @return those of this user of the machine */
    public static OwnSubstrates ofUser() {
        String named = System.getProperty(FOLDER_PROPERTY);
        return new OwnSubstrates(
                named == null || named.isBlank() ? UserFolder.data().resolve("substrates") : Path.of(named));
    }

    /** @return where they are kept */
    public Path folder() {
        return folder;
    }

    /** @return the file of one, whether it is there or not */
    public Path file(String id) {
        return folder.resolve(id + ".json");
    }

    /**
     * What could be read.
     *
     * @param substrates in order of name
     * @param faults one line for each file that could not be read
     */
    public record Shelf(List<Substrate> substrates, List<String> faults) {
        /** Copies the lists. */
        public Shelf {
            substrates = List.copyOf(substrates);
            faults = List.copyOf(faults);
        }
    }

    /** @return what the folder holds; nothing when it is not there */
    public Shelf read() {
        List<Substrate> read = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return new Shelf(read, faults);
        }
        try (Stream<Path> list = Files.list(folder)) {
            for (Path file : list.filter(p -> p.toString().endsWith(".json"))
                    .sorted()
                    .limit(MOST)
                    .toList()) {
                try {
                    Substrate one = Substrates.read(file);
                    if (file.equals(file(one.id()))) {
                        read.add(one);
                    } else {
                        faults.add(file.getFileName() + ": its id is '" + one.id() + "'. Name it " + one.id()
                                + ".json, or correct the id.");
                    }
                } catch (Refusal e) {
                    faults.add(e.getMessage());
                }
            }
        } catch (IOException e) {
            faults.add(folder + " cannot be read. Check that you may open it.");
        }
        read.sort(Comparator.comparing(Substrate::name, String.CASE_INSENSITIVE_ORDER)
                .thenComparing(Substrate::id));
        return new Shelf(read, faults);
    }

    /** @return one that could be read */
    public Optional<Substrate> byId(String id) {
        return read().substrates().stream().filter(s -> s.id().equals(id)).findFirst();
    }

    /**
     * @param taken ids of the substrates that come with the program
     * @return what the folder holds and the program does not: an id stands for one substrate
     */
    public Shelf readBeside(Set<String> taken) {
        Shelf all = read();
        List<Substrate> free = new ArrayList<>();
        List<String> faults = new ArrayList<>(all.faults());
        for (Substrate substrate : all.substrates()) {
            if (taken.contains(substrate.id())) {
                faults.add(file(substrate.id()) + ": a substrate of the program has the id '" + substrate.id()
                        + "'. Give it another id and file name.");
            } else {
                free.add(substrate);
            }
        }
        return new Shelf(free, faults);
    }

    /**
     * What the user states of one; the rest follows from it.
     *
     * @param name for the user, up to {@value #LONGEST_NAME} characters
     * @param kind paper or garment
     * @param lab its colour, absolute, D50
     * @param source where the colour comes from
     * @param texture of the surface
     */
    public record Draft(String name, Substrate.Kind kind, Lab lab, String source, Texture.Kind texture) {
        /** Checks the name and the colour. */
        public Draft {
            name = name.strip();
            if (name.isEmpty() || name.length() > LONGEST_NAME || source.isBlank()) {
                throw new IllegalArgumentException("a name of 1 to " + LONGEST_NAME + " characters, and a source");
            }
            if (!(lab.L() >= 0 && lab.L() <= 100 && Math.abs(lab.a()) <= 128 && Math.abs(lab.b()) <= 128)) {
                throw new IllegalArgumentException("no colour of a substrate: " + lab);
            }
        }

        private Substrate as(String id) {
            boolean garment = kind == Substrate.Kind.GARMENT;
            return new Substrate(
                    id,
                    name,
                    kind,
                    lab,
                    source,
                    new Texture(texture, STRENGTH, id.hashCode() & 0xffff),
                    garment ? GARMENT_AREAS : List.of(),
                    hidingPower(lab),
                    lab.L() < 70,
                    0,
                    List.of());
        }
    }

    /**
     * @return opacity an ink should have on this ground: the darker it is, the more; fitted to the program's own garments,
     *     which are common practice without a source
     */
    static double hidingPower(Lab ground) {
        return Math.rint(Math.max(0.3, Math.min(0.95, 1.11 - 0.008 * ground.L())) * 100) / 100;
    }

    /**
     * Keeps a new one.
     *
     * @param taken ids that others have
     * @return what was kept
     * @throws Refusal if it cannot be written
     */
    public Substrate add(Draft draft, Set<String> taken) throws Refusal {
        return write(draft.as(freeId(draft.name(), taken)), false);
    }

    /**
     * Keeps one in place of another. An id stands for one look for good, since saved jobs name it: a change of colour, kind or
     * texture gives it a new one, a change of name does not.
     *
     * @param taken ids that others have
     * @return what was kept
     * @throws Refusal if it cannot be written
     */
    public Substrate replace(Substrate before, Draft draft, Set<String> taken) throws Refusal {
        if (looksAs(before, draft)) {
            return write(draft.as(before.id()), true);
        }
        Substrate kept = add(draft, taken);
        remove(before.id());
        return kept;
    }

    private static boolean looksAs(Substrate before, Draft draft) {
        return before.lab().equals(draft.lab())
                && before.kind() == draft.kind()
                && before.texture().kind() == draft.texture();
    }

    /**
     * Removes one.
     *
     * @throws Refusal if its file cannot be removed
     */
    public void remove(String id) throws Refusal {
        try {
            Files.deleteIfExists(file(id));
        } catch (IOException e) {
            throw new Refusal("Cannot remove " + file(id) + ". Check that you may change its folder.", e);
        }
    }

    private Substrate write(Substrate substrate, boolean replace) throws Refusal {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refusal("Cannot make the folder " + folder + ". Check that you may write there.", e);
        }
        String json = JsonText.of(json(substrate)) + "\n";
        SafeFiles.file(
                file(substrate.id()), replace, temporary -> Files.writeString(temporary, json, StandardCharsets.UTF_8));
        return substrate;
    }

    /** @return an id made of a name, that neither {@code taken} nor a file has */
    private String freeId(String name, Set<String> taken) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
        String cut = plain.substring(0, Math.min(LONGEST_ID, plain.length())).replaceAll("-$", "");
        String stem = cut.isEmpty() ? "own" : cut;
        String id = stem;
        for (int n = 2; taken.contains(id) || Files.exists(file(id)); n++) {
            id = stem + "-" + n;
        }
        return id;
    }

    /** @return the fields of a file that {@link Substrates#read} reads */
    static Map<String, Object> json(Substrate s) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("id", s.id());
        out.put("name", s.name());
        out.put("kind", s.kind().name().toLowerCase(Locale.ROOT));
        out.put("lab", List.of(s.lab().L(), s.lab().a(), s.lab().b()));
        out.put("source", s.source());
        Map<String, Object> texture = new LinkedHashMap<>();
        texture.put("kind", s.texture().kind().name().toLowerCase(Locale.ROOT));
        texture.put("strength", s.texture().strength());
        texture.put("seed", s.texture().seed());
        out.put("texture", texture);
        out.put("printAreas", s.printAreas().stream().map(OwnSubstrates::json).toList());
        out.put("hidingPower", s.hidingPower());
        out.put("underbaseAdvised", s.underbaseAdvised());
        out.put("order", s.order());
        out.put("notes", s.notes());
        return out;
    }

    private static Map<String, Object> json(PrintArea area) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("name", area.name());
        out.put("widthMm", area.widthMm());
        out.put("heightMm", area.heightMm());
        return out;
    }
}
