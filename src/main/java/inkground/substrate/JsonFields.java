package inkground.substrate;

import com.fasterxml.jackson.databind.JsonNode;
import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Reads the fields of one JSON object strictly: every field read must be there with the right type and range, and every field
 * there must be read. Each message names the file, the field, the reason and what to do.
 */
public final class JsonFields {
    private static final int MAX_TEXT = 2000;

    private final JsonNode node;
    private final String file;
    private final String path;
    private final Set<String> read = new HashSet<>();

    /**
     * @param node what should be an object
     * @param file its name, for messages
     * @param path of the object inside the file, empty or ending in a dot
     */
    public JsonFields(JsonNode node, String file, String path) throws Refusal {
        this.node = node;
        this.file = file;
        this.path = path;
        if (!node.isObject()) {
            throw new Refusal(file + (path.isEmpty() ? "" : ", field '" + path + "'")
                    + " must be a JSON object. Write { … } with the fields that the other files have.");
        }
    }

    /** Refuses what no one has read. To be called last. */
    public void end() throws Refusal {
        Iterator<String> names = node.fieldNames();
        while (names.hasNext()) {
            String name = names.next();
            if (!read.contains(name)) {
                throw new Refusal(file + ", field '" + path + name
                        + "': there is no such field. Remove it or correct its spelling; known here: "
                        + String.join(", ", read.stream().sorted().toList()) + ".");
            }
        }
    }

    /** @return text that is not empty */
    public String text(String name) throws Refusal {
        return text(required(name), path + name);
    }

    private String text(JsonNode value, String where) throws Refusal {
        if (!value.isTextual() || value.asText().isBlank()) {
            throw refusal(where, "must be text that is not empty", "Put the text in double quotes");
        }
        if (value.asText().length() > MAX_TEXT) {
            throw refusal(where, "is longer than " + MAX_TEXT + " characters", "Shorten it");
        }
        return value.asText();
    }

    String id(String name) throws Refusal {
        String id = text(name);
        if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*") || id.length() > 60) {
            throw refusal(
                    path + name,
                    "'" + id + "' is no id",
                    "Use up to 60 lower-case letters and digits, with single hyphens between");
        }
        return id;
    }

    /** @return a number in a range, ends included */
    public double number(String name, double min, double max) throws Refusal {
        return number(required(name), path + name, min, max);
    }

    private double number(JsonNode value, String where, double min, double max) throws Refusal {
        if (!value.isNumber()) {
            throw refusal(where, "must be a number", "Write it without quotes and with a decimal point");
        }
        double number = value.asDouble();
        if (!(number >= min && number <= max)) {
            throw refusal(
                    where, plain(number) + " is out of range", "Use a value from " + plain(min) + " to " + plain(max));
        }
        return number;
    }

    /** @return a whole number in a range, ends included */
    public int whole(String name, int min, int max) throws Refusal {
        double value = number(name, min, max);
        if (value != Math.rint(value)) {
            throw refusal(path + name, plain(value) + " is not a whole number", "Round it");
        }
        return (int) value;
    }

    /** @return a whole number in a range, or empty where there is none of this name */
    public OptionalInt wholeIfThere(String name, int min, int max) throws Refusal {
        read.add(name);
        return node.has(name) ? OptionalInt.of(whole(name, min, max)) : OptionalInt.empty();
    }

    /** @return whether there is a field of this name that is true */
    public boolean flag(String name) throws Refusal {
        read.add(name);
        return node.has(name) && yesNo(name);
    }

    /** @return a truth value */
    public boolean yesNo(String name) throws Refusal {
        JsonNode value = required(name);
        if (!value.isBoolean()) {
            throw refusal(path + name, "must be true or false", "Write true or false without quotes");
        }
        return value.asBoolean();
    }

    /** @return one of the lower-case words of {@code type} */
    public <E extends Enum<E>> E word(String name, Class<E> type) throws Refusal {
        return word(required(name), path + name, type);
    }

    private <E extends Enum<E>> E word(JsonNode value, String where, Class<E> type) throws Refusal {
        List<String> words = Arrays.stream(type.getEnumConstants())
                .map(e -> e.name().toLowerCase(Locale.ROOT))
                .toList();
        int at = value.isTextual() ? words.indexOf(value.asText()) : -1;
        if (at < 0) {
            throw refusal(where, value + " is not known", "Use one of " + String.join(", ", words));
        }
        return type.getEnumConstants()[at];
    }

    <E extends Enum<E>> Set<E> words(String name, Class<E> type) throws Refusal {
        JsonNode value = array(name, 1, type.getEnumConstants().length);
        Set<E> out = new HashSet<>();
        for (int i = 0; i < value.size(); i++) {
            out.add(word(value.get(i), path + name + "[" + i + "]", type));
        }
        return out;
    }

    List<String> texts(String name) throws Refusal {
        return texts(name, 50);
    }

    /** @return a list of texts, none of them empty */
    public List<String> texts(String name, int atMost) throws Refusal {
        JsonNode value = array(name, 0, atMost);
        List<String> out = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            out.add(text(value.get(i), path + name + "[" + i + "]"));
        }
        return out;
    }

    /** @return a list of whole numbers from 0 */
    public List<Integer> wholes(String name, int atMost) throws Refusal {
        JsonNode value = array(name, 0, atMost);
        List<Integer> out = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            if (!value.get(i).isInt() || value.get(i).asInt() < 0) {
                throw refusal(path + name + "[" + i + "]", "must be a whole number from 0", "Write it without quotes");
            }
            out.add(value.get(i).asInt());
        }
        return out;
    }

    /** @return a list of numbers, each in its own range; as long as {@code min} */
    public double[] numbers(String name, double[] min, double[] max) throws Refusal {
        JsonNode value = array(name, min.length, min.length);
        double[] out = new double[min.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = number(value.get(i), path + name + "[" + i + "]", min[i], max[i]);
        }
        return out;
    }

    /** @return an object */
    public JsonFields object(String name) throws Refusal {
        return new JsonFields(required(name), file, path + name + ".");
    }

    /** @return an object, or empty where there is none of this name */
    public Optional<JsonFields> objectIfThere(String name) throws Refusal {
        read.add(name);
        return node.has(name) ? Optional.of(object(name)) : Optional.empty();
    }

    /** @return whether there is a field of this name; it is still to be read */
    public boolean has(String name) {
        return node.has(name);
    }

    /** @return file and field, for messages about what a field holds */
    public String where(String name) {
        return file + ", field '" + path + name + "'";
    }

    List<JsonFields> objects(String name, int atLeast) throws Refusal {
        return objects(name, atLeast, 50);
    }

    /** @return the objects of a list */
    public List<JsonFields> objects(String name, int atLeast, int atMost) throws Refusal {
        JsonNode value = array(name, atLeast, atMost);
        List<JsonFields> out = new ArrayList<>();
        for (int i = 0; i < value.size(); i++) {
            out.add(new JsonFields(value.get(i), file, path + name + "[" + i + "]."));
        }
        return out;
    }

    private JsonNode array(String name, int atLeast, int atMost) throws Refusal {
        JsonNode value = required(name);
        if (!value.isArray() || value.size() < atLeast || value.size() > atMost) {
            String count = atLeast == atMost ? "" + atLeast : atLeast + " to " + atMost;
            throw refusal(path + name, "must be a list of " + count + " values", "Write [ … ] with commas between");
        }
        return value;
    }

    private JsonNode required(String name) throws Refusal {
        read.add(name);
        JsonNode value = node.get(name);
        if (value == null || value.isNull()) {
            throw refusal(path + name, "is missing", "Add it; see another file of the folder for an example");
        }
        return value;
    }

    /** @return lengths by name: an object of numbers in a range, ends included, at least one */
    Map<String, Double> lengths(String name, double min, double max) throws Refusal {
        JsonNode value = required(name);
        if (!value.isObject() || value.isEmpty() || value.size() > 60) {
            throw refusal(path + name, "must be an object of 1 to 60 lengths", "Write { \"chest\": 520, … }");
        }
        Map<String, Double> out = new TreeMap<>();
        Iterator<String> names = value.fieldNames();
        while (names.hasNext()) {
            String one = names.next();
            if (!one.matches("[a-zA-Z][a-zA-Z0-9]{0,39}")) {
                throw refusal(path + name, "'" + one + "' is no name of a length", "Use letters and digits alone");
            }
            out.put(one, number(value.get(one), path + name + "." + one, min, max));
        }
        return out;
    }

    /**
     * @param parser reads the text, or the number as text; its {@link IllegalArgumentException} becomes the reason
     * @param remedy what to do, without a full stop
     */
    <T> T parsed(String name, Function<String, T> parser, String remedy) throws Refusal {
        JsonNode value = required(name);
        String text = value.isNumber() ? plain(value.asDouble()) : text(value, path + name);
        try {
            return parser.apply(text);
        } catch (IllegalArgumentException e) {
            throw refusal(path + name, e.getMessage(), remedy);
        }
    }

    /** @return what to throw about a field that was read but makes no sense beside the others */
    Refusal bad(String name, String reason, String remedy) {
        return refusal(path + name, reason, remedy);
    }

    private Refusal refusal(String where, String reason, String remedy) {
        return new Refusal(file + ", field '" + where + "': " + reason + ". " + remedy + ".");
    }

    private static String plain(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
