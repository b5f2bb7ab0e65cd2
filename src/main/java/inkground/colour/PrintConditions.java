package inkground.colour;

import inkground.base.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Where print conditions come from. */
public final class PrintConditions {
    /** Names of the bundled conditions, the usual one first. */
    public static final List<String> BUNDLED = List.of("FOGRA39L", "TR006");

    private static final Map<String, PrintCondition> CACHE = new ConcurrentHashMap<>();

    private PrintConditions() {}

    /**
     * A condition that comes with the program; built once, when its first colour is asked for: many jobs never need one.
     *
     * @param name one of {@link #BUNDLED}
     * @throws IllegalArgumentException for another name
     */
    public static PrintCondition bundled(String name) {
        if (!BUNDLED.contains(name)) {
            throw new IllegalArgumentException("no bundled print condition " + name + "; there are " + BUNDLED);
        }
        return CACHE.computeIfAbsent(name, Deferred::new);
    }

    private static PrintCondition build(String name) {
        try {
            return MeasuredCondition.of(bundledData(name));
        } catch (Refusal e) {
            throw new IllegalStateException("the bundled data " + name + " is damaged", e);
        }
    }

    /** @return the measurements of a bundled condition, under its short name */
    public static Characterisation bundledData(String name) {
        String resource = name + ".ti3";
        try (InputStream in = PrintConditions.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its file " + resource);
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Characterisation data = Characterisation.of(Cgats.parse(text, resource), resource);
            return new Characterisation(name, data.source(), data.inks(), data.patches());
        } catch (IOException | Refusal e) {
            throw new IllegalStateException("the program's file " + resource + " cannot be read", e);
        }
    }

    /**
     * Reads a user's characterisation file.
     *
     * @throws Refusal if it cannot be read or used; the message names file, row and column
     */
    public static PrintCondition read(Path file) throws Refusal {
        return MeasuredCondition.of(readData(file));
    }

    /** As {@link #read}, the measurements only. */
    public static Characterisation readData(Path file) throws Refusal {
        String name = String.valueOf(file.getFileName());
        try {
            long size = Files.size(file);
            if (size > Cgats.MAX_CHARS) {
                throw new Refusal(name + " is larger than " + (Cgats.MAX_CHARS >> 20)
                        + " MB, the limit for characterisation data.");
            }
            String text = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
            return Characterisation.of(Cgats.parse(text, name), name);
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that it exists and that you may open it.", e);
        }
    }

    /** Builds a bundled condition at its first use. */
    private static final class Deferred implements PrintCondition {
        private final String name;
        private volatile PrintCondition built;

        Deferred(String name) {
            this.name = name;
        }

        private PrintCondition built() {
            PrintCondition ready = built;
            if (ready == null) {
                synchronized (this) {
                    if (built == null) {
                        built = build(name);
                    }
                    ready = built;
                }
            }
            return ready;
        }

        @Override
        public String name() {
            return name;
        }

        @Override
        public String source() {
            return built().source();
        }

        @Override
        public Lab paper() {
            return built().paper();
        }

        @Override
        public void cmykToXyz(float[] cmyk, double[] xyz) {
            built().cmykToXyz(cmyk, xyz);
        }

        @Override
        public void labToCmyk(double L, double a, double b, float[] cmyk) {
            built().labToCmyk(L, a, b, cmyk);
        }
    }
}
