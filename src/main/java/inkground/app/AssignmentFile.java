package inkground.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Family;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Source;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.substrate.JsonFields;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The file a colour assignment is kept in, by custom {@code ART.pdf.inkground.json} next to the artwork ART.pdf. JSON:
 *
 * <pre>
 * {
 *   "version": 1,
 *   "rules": [
 *     {"from": {"kind": "seen", "colour": "#1C304F", "toleranceDe00": 1}, "to": {"print": "bare"}},
 *     {"from": {"kind": "ink", "name": "Cream"}, "to": {"print": "ink", "name": "Lock Gate Cream", "tint": 1}},
 *     {"from": {"kind": "stated", "space": "cmyk", "components": [0, 0, 0, 0]}, "to": {"print": "white"}},
 *     {"from": {"kind": "stated", "space": "rgb", "components": [0, 0, 0]}, "to": {"print": "process"}}
 *   ]
 * }
 * </pre>
 *
 * <p>The first rule that fits a colour counts. A "seen" colour is sRGB and fits paint of any space that names no ink; a
 * "stated" one (grey, rgb, cmyk: components 0 to 1; lab) fits by its numbers; an "ink" fits everything of that colorant. A
 * {@link SessionFile} is such a file with more fields.
 */
public final class AssignmentFile {
    private static final int VERSION = 1;
    private static final int MOST_RULES = 500;
    private static final long MOST_BYTES = 1 << 20;

    private AssignmentFile() {}

    private enum From {
        SEEN,
        INK,
        STATED
    }

    private enum To {
        INK,
        WHITE,
        BARE,
        PROCESS
    }

    /** How the names of kept files end by custom. */
    public static final String ENDING = ".inkground.json";

    /** @return where the assignment of an artwork is kept by custom: ART.pdf and ART.svg have one each */
    public static Path beside(Path artwork) {
        return artwork.resolveSibling(artwork.getFileName() + ENDING);
    }

    /**
     * @return where the assignment of an artwork is looked for: {@link #beside}, or else, where one was kept by the name that
     *     files of all kinds once shared, ART.inkground.json, there
     */
    public static Path foundBeside(Path artwork) {
        Path own = beside(artwork);
        String name = artwork.getFileName().toString();
        int dot = name.lastIndexOf('.');
        Path shared = artwork.resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ENDING);
        return !Files.isRegularFile(own) && Files.isRegularFile(shared) ? shared : own;
    }

    /** @return the fields of a file of a version that this program reads */
    static JsonFields root(Path file) throws Refusal {
        String name = file.getFileName().toString();
        JsonFields root = new JsonFields(tree(file, name), name, "");
        int version = root.whole("version", 1, 1_000_000);
        if (version != VERSION) {
            throw new Refusal(name + ", field 'version': this program reads version " + VERSION + ", not " + version
                    + ". Use a newer Inkground.");
        }
        return root;
    }

    /** @return the rules among the fields of a file */
    static ColourAssignment rules(JsonFields root) throws Refusal {
        List<Rule> rules = new ArrayList<>();
        for (JsonFields rule : root.objects("rules", 0, MOST_RULES)) {
            Source from = source(rule.object("from"));
            Target to = target(rule.object("to"));
            rule.end();
            rules.add(new Rule(from, to));
        }
        return new ColourAssignment(rules);
    }

    private static JsonNode tree(Path file, String name) throws Refusal {
        try {
            if (!Files.exists(file)) {
                throw new Refusal("There is no file " + file + ". Check the name.");
            }
            if (Files.size(file) > MOST_BYTES) {
                throw new Refusal(name + " is larger than 1 MB; that is no colour assignment. Check the name.");
            }
            JsonNode tree = new ObjectMapper().readTree(Files.readAllBytes(file));
            if (tree == null || tree.isMissingNode()) {
                throw new Refusal(name + " is empty. Write { \"version\": 1, \"rules\": [] }.");
            }
            return tree;
        } catch (JsonProcessingException e) {
            throw new Refusal(
                    name + ", line "
                            + (e.getLocation() == null ? 1 : e.getLocation().getLineNr())
                            + ": this is not JSON. Check commas, quotes and brackets there.",
                    e);
        } catch (IOException e) {
            throw new Refusal("Cannot read " + file + ". Check that you may open it.", e);
        }
    }

    private static Source source(JsonFields from) throws Refusal {
        Source out =
                switch (from.word("kind", From.class)) {
                    case SEEN ->
                        new Seen(
                                colour(from.text("colour"), from.where("colour")), from.number("toleranceDe00", 0, 50));
                    case INK -> new InkNamed(from.text("name"));
                    case STATED -> stated(from);
                };
        from.end();
        return out;
    }

    private static Stated stated(JsonFields from) throws Refusal {
        Family family = from.word("space", Family.class);
        double[] min = new double[family.components()];
        double[] max = new double[family.components()];
        Arrays.fill(max, 1);
        if (family == Family.LAB) {
            min = new double[] {0, -128, -128};
            max = new double[] {100, 127, 127};
        }
        return new Stated(
                family,
                Arrays.stream(from.numbers("components", min, max)).boxed().toList());
    }

    private static Target target(JsonFields to) throws Refusal {
        Target out =
                switch (to.word("print", To.class)) {
                    case INK -> new InkAt(to.text("name"), to.number("tint", 0.001, 1));
                    case WHITE -> new WhiteInk();
                    case BARE -> new Bare();
                    case PROCESS -> new Process();
                };
        to.end();
        return out;
    }

    private static int colour(String text, String where) throws Refusal {
        if (!text.matches("#[0-9A-Fa-f]{6}")) {
            throw new Refusal(where + ": '" + text + "' is no colour. Write # and six hexadecimal digits.");
        }
        return Integer.parseInt(text.substring(1), 16);
    }

    /**
     * What is nominated as bare on the command line: {@code #RRGGBB}, {@code #RRGGBB~dE} (largest ΔE00 that still counts), or
     * the name of an ink.
     *
     * @throws Refusal if it starts like a colour and is none
     */
    public static Source nominated(String text) throws Refusal {
        if (text.isBlank()) {
            throw new Refusal("A bare colour needs a value: #RRGGBB, #RRGGBB~dE or the name of an ink.");
        }
        if (!text.startsWith("#")) {
            return new InkNamed(text);
        }
        int tilde = text.indexOf('~');
        int rgb = colour(tilde < 0 ? text : text.substring(0, tilde), "The bare colour");
        double tolerance = Seen.DEFAULT_TOLERANCE;
        if (tilde >= 0) {
            String number = text.substring(tilde + 1);
            if (!number.matches("[0-9]{1,2}(\\.[0-9]+)?") || Double.parseDouble(number) > 50) {
                throw new Refusal("The bare colour '" + text + "': after ~ comes a colour difference from 0 to 50.");
            }
            tolerance = Double.parseDouble(number);
        }
        return new Seen(rgb, tolerance);
    }

    /** @return a rule as words for the user */
    static String words(Rule rule) {
        String colour = words(rule.from());
        if (rule.from() instanceof Seen seen && seen.toleranceDe00() != Seen.DEFAULT_TOLERANCE) {
            colour += String.format(Locale.ROOT, " within ΔE00 %.1f", seen.toleranceDe00());
        }
        Target to = rule.to();
        if (to instanceof InkAt at) {
            return colour + String.format(Locale.ROOT, " printed as %.0f %% %s", at.tint() * 100, at.name());
        }
        return colour
                + (to instanceof WhiteInk
                        ? " printed as white ink"
                        : to instanceof Bare ? " bare" : " in process inks");
    }

    /** @return a rule's colour as words for the user */
    public static String words(Source from) {
        if (from instanceof Seen seen) {
            return String.format(Locale.ROOT, "#%06X", seen.rgb());
        } else if (from instanceof InkNamed ink) {
            return "the ink '" + ink.name() + "'";
        }
        Stated stated = (Stated) from;
        return stated.family().name() + " " + stated.components();
    }

    /**
     * Writes a file, whole or not at all.
     *
     * @param replace whether an existing file may be replaced
     */
    public static void save(ColourAssignment assignment, Path file, boolean replace) throws Refusal {
        SafeFiles.file(file, replace, temporary -> Files.writeString(temporary, JsonText.of(json(assignment)) + "\n"));
    }

    /** @return the fields of a file that holds these rules alone; more may be added */
    static Map<String, Object> json(ColourAssignment assignment) {
        Map<String, Object> root = new LinkedHashMap<>();
        root.put("version", VERSION);
        root.put("rules", assignment.rules().stream().map(AssignmentFile::json).toList());
        return root;
    }

    private static Map<String, Object> json(Rule rule) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("from", json(rule.from()));
        out.put("to", json(rule.to()));
        return out;
    }

    private static Map<String, Object> json(Source from) {
        Map<String, Object> out = new LinkedHashMap<>();
        if (from instanceof Seen seen) {
            out.put("kind", "seen");
            out.put("colour", String.format(Locale.ROOT, "#%06X", seen.rgb()));
            out.put("toleranceDe00", seen.toleranceDe00());
        } else if (from instanceof InkNamed ink) {
            out.put("kind", "ink");
            out.put("name", ink.name());
        } else {
            Stated stated = (Stated) from;
            out.put("kind", "stated");
            out.put("space", stated.family().name().toLowerCase(Locale.ROOT));
            out.put("components", stated.components());
        }
        return out;
    }

    private static Map<String, Object> json(Target to) {
        Map<String, Object> out = new LinkedHashMap<>();
        if (to instanceof InkAt at) {
            out.put("print", "ink");
            out.put("name", at.name());
            out.put("tint", at.tint());
        } else {
            out.put("print", to instanceof WhiteInk ? "white" : to instanceof Bare ? "bare" : "process");
        }
        return out;
    }
}
