package inkground.colour;

import inkground.base.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Where print conditions come from: bundled data [FOGRA39] [TR006], or files. */
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

    private static PrintCondition build(String name, SrgbGrid grid) {
        try {
            return MeasuredCondition.of(bundledData(name)).startingFrom(grid);
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
            return Characterisation.of(Cgats.parse(text, resource), resource).named(name);
        } catch (IOException | Refusal e) {
            throw new IllegalStateException("the program's file " + resource + " cannot be read", e);
        }
    }

    /** @return the ready-made tints of sRGB colours under a bundled condition */
    static SrgbGrid bundledGrid(String name) {
        String resource = name + ".srgb";
        try (InputStream in = PrintConditions.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its file " + resource);
            }
            return SrgbGrid.read(in);
        } catch (IOException e) {
            throw new IllegalStateException("the program's file " + resource + " cannot be read", e);
        }
    }

    /**
     * Finds a condition as a user names it.
     *
     * @param nameOrFile one of {@link #BUNDLED} exactly, or else the path of a characterisation file or a CMYK profile
     * @throws Refusal if there is neither, or the file cannot be used
     */
    public static PrintCondition find(String nameOrFile) throws Refusal {
        return BUNDLED.contains(nameOrFile) ? bundled(nameOrFile) : read(existing(nameOrFile));
    }

    /** As {@link #find}, the measurements: those of the file, or a profile read at the tints of the first bundled data. */
    public static Characterisation findData(String nameOrFile) throws Refusal {
        return BUNDLED.contains(nameOrFile) ? bundledData(nameOrFile) : readData(existing(nameOrFile));
    }

    private static Path existing(String file) throws Refusal {
        try {
            Path path = Path.of(file);
            if (Files.isRegularFile(path)) {
                return path;
            }
        } catch (InvalidPathException e) {
            throw new Refusal("'" + file + "' can be no file name.", e);
        }
        throw new Refusal("There is no print condition and no file " + file + ". Bundled are "
                + String.join(" and ", BUNDLED) + "; give one of these or the path of a CGATS file or ICC profile.");
    }

    /**
     * Reads a user's characterisation file or ICC output profile; which of them it is, its contents say.
     *
     * @throws Refusal if it cannot be read or used; the message names file, row and column
     */
    public static PrintCondition read(Path file) throws Refusal {
        byte[] bytes = bytes(file);
        String name = String.valueOf(file.getFileName());
        return isProfile(bytes) ? IccCondition.of(bytes, name) : MeasuredCondition.of(data(bytes, name));
    }

    /** As {@link #read}, the measurements only; a profile is read at the tints of the first bundled data. */
    public static Characterisation readData(Path file) throws Refusal {
        byte[] bytes = bytes(file);
        String name = String.valueOf(file.getFileName());
        return isProfile(bytes)
                ? bundledData(BUNDLED.get(0)).asPrintedBy(IccCondition.of(bytes, name))
                : data(bytes, name);
    }

    private static Characterisation data(byte[] bytes, String name) throws Refusal {
        return MissingPrimaries.complete(Characterisation.of(Cgats.parse(text(bytes), name), name));
    }

    // UTF-16 files start with a byte order mark; all else is read byte by byte, since numbers and keywords are ASCII.
    private static String text(byte[] bytes) {
        boolean marked = bytes.length >= 2 && ((bytes[0] ^ bytes[1]) & 255) == 1 && (bytes[0] & 254) == 254;
        return new String(bytes, marked ? StandardCharsets.UTF_16 : StandardCharsets.ISO_8859_1);
    }

    private static byte[] bytes(Path file) throws Refusal {
        String name = String.valueOf(file.getFileName());
        try {
            if (Files.size(file) > Cgats.MAX_CHARS) {
                throw new Refusal(name + " is larger than " + (Cgats.MAX_CHARS >> 20)
                        + " MB, the limit for a print condition. Is it the right file?");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that it exists and that you may open it.", e);
        }
    }

    // Every ICC profile has this signature at byte 36 [ICC1].
    private static boolean isProfile(byte[] bytes) {
        return bytes.length >= 40 && bytes[36] == 'a' && bytes[37] == 'c' && bytes[38] == 's' && bytes[39] == 'p';
    }

    /** Builds a bundled condition at its first use. */
    private static final class Deferred implements PrintCondition {
        private final String name;
        private volatile PrintCondition built;
        private volatile SrgbGrid grid;

        Deferred(String name) {
            this.name = name;
        }

        private PrintCondition built() {
            PrintCondition ready = built;
            if (ready == null) {
                synchronized (this) {
                    if (built == null) {
                        built = build(name, grid());
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
        public Optional<SrgbGrid> srgbGrid() {
            return Optional.of(grid());
        }

        // Read twice by two threads it comes out the same.
        private SrgbGrid grid() {
            SrgbGrid ready = grid;
            if (ready == null) {
                ready = bundledGrid(name);
                grid = ready;
            }
            return ready;
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
