package inkground.app;

import inkground.base.Refusal;
import inkground.colour.Cgats;
import inkground.colour.Characterisation;
import inkground.colour.Cxf;
import inkground.colour.Lab;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads named, measured colours: CxF 3 (ISO 17972), or CGATS text with a column SAMPLE_NAME. */
public final class ColourSamples {
    private static final long MAX_BYTES = 16 << 20;

    private ColourSamples() {}

    /**
     * A measured colour.
     *
     * @param name of the sample
     * @param lab absolute, D50
     * @param from what it was computed from, such as "spectrum"
     */
    public record Sample(String name, Lab lab, String from) {}

    /**
     * @param file of one of the kinds above
     * @return its colours in file order, at least one
     * @throws Refusal naming the file and the object, line or column
     */
    public static List<Sample> read(Path file) throws Refusal {
        byte[] bytes = bytes(file, "a file of measured colours");
        String name = String.valueOf(file.getFileName());
        List<Sample> samples = of(bytes, name);
        if (samples.isEmpty()) {
            throw new Refusal(name + " holds no named colour. Export it again with sample names.");
        }
        return samples;
    }

    /**
     * @param what it should be, for messages
     * @return all bytes of a file of at most 16 MB
     */
    static byte[] bytes(Path file, String what) throws Refusal {
        try {
            if (!Files.isRegularFile(file)) {
                throw new Refusal("There is no file " + file + ". Check the name of " + what + ".");
            }
            if (Files.size(file) > MAX_BYTES) {
                throw new Refusal(file.getFileName() + " is larger than " + (MAX_BYTES >> 20) + " MB, the limit for "
                        + what + ".");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new Refusal(file.getFileName() + " cannot be read. Check that you may open it.", e);
        }
    }

    /** @return the start of a text, to tell its kind by */
    static String start(byte[] bytes) {
        return new String(bytes, 0, Math.min(bytes.length, 200), StandardCharsets.UTF_8)
                .replace("\ufeff", "")
                .stripLeading();
    }

    /** @return the named colours of a CxF document; its spot inks are none */
    static List<Sample> of(Cxf document) {
        return document.samples().stream()
                .map(s -> new Sample(s.name(), s.lab(), from(s)))
                .toList();
    }

    private static String from(Cxf.Sample sample) {
        return (sample.spectral() ? "spectrum" : "Lab value")
                + (sample.condition().isEmpty() ? "" : " (" + sample.condition() + ")");
    }

    /**
     * @param file its name, for messages
     */
    static List<Sample> of(byte[] bytes, String file) throws Refusal {
        if (start(bytes).startsWith("<")) {
            return of(Cxf.read(bytes, file));
        }
        Cgats table = Cgats.parse(new String(bytes, StandardCharsets.UTF_8), file);
        int names = Math.max(table.indexOf("SAMPLE_NAME"), table.indexOf("NAME"));
        if (names < 0) {
            throw new Refusal(
                    file + " has no SAMPLE_NAME column, so its colours have no names; it has " + table.fields() + ".");
        }
        List<Lab> labs = Characterisation.colours(table, file);
        List<Sample> out = new ArrayList<>();
        for (int i = 0; i < labs.size(); i++) {
            String name = table.rows().get(i).get(names);
            if (!name.isBlank()) {
                out.add(new Sample(name, labs.get(i), "measured colour"));
            }
        }
        return out;
    }
}
