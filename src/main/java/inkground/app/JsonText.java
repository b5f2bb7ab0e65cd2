package inkground.app;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Map;

/**
 * Writes maps, lists, texts, numbers and truth values as JSON (RFC 8259). The streaming writer alone, without data binding:
 * a short command would spend a fifth of its time loading that.
 */
public final class JsonText {
    private JsonText() {}

    /**
     * @param value a map with text keys, an iterable, a text, a number, a truth value or null, nested to any depth
     * @throws IllegalArgumentException for anything else
     */
    public static String of(Object value) {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
            printer.indentArraysWith(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE);
            out.setPrettyPrinter(printer);
            write(value, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a StringWriter does not fail
        }
        return text.toString();
    }

    private static void write(Object value, JsonGenerator out) throws IOException {
        if (value instanceof Map<?, ?> map) {
            out.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.writeFieldName((String) entry.getKey());
                write(entry.getValue(), out);
            }
            out.writeEndObject();
        } else if (value instanceof Iterable<?> list) {
            out.writeStartArray();
            for (Object item : list) {
                write(item, out);
            }
            out.writeEndArray();
        } else if (value == null) {
            out.writeNull();
        } else if (value instanceof String text) {
            out.writeString(text);
        } else if (value instanceof Boolean truth) {
            out.writeBoolean(truth);
        } else if (value instanceof Integer || value instanceof Long) {
            out.writeNumber(((Number) value).longValue());
        } else if (value instanceof Number number) {
            out.writeNumber(number.doubleValue());
        } else {
            throw new IllegalArgumentException("no JSON for " + value.getClass());
        }
    }
}
