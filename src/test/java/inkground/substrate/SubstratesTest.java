package inkground.substrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.PrintConditions;
import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SubstratesTest {
    private static final String PAPER =
            """
            {
              "id": "test-paper",
              "name": "Test paper",
              "kind": "paper",
              "lab": [95, 0, -2],
              "source": "invented for the test",
              "texture": {"kind": "coated", "strength": 0.2, "seed": 1},
              "printAreas": [],
              "hidingPower": 0,
              "underbaseAdvised": false,
              "order": 1,
              "notes": []
            }
            """;

    @TempDir
    Path folder;

    @Test
    void the_programs_own_folder_is_whole_and_in_order() throws Refusal {
        Library library = Substrates.load();
        assertThat(library.ofKind(Substrate.Kind.PAPER)).hasSizeGreaterThanOrEqualTo(6);
        assertThat(library.ofKind(Substrate.Kind.GARMENT)).hasSizeGreaterThanOrEqualTo(18);
        assertThat(library.processes()).hasSizeGreaterThanOrEqualTo(7);
        assertThat(library.all())
                .isSortedAccordingTo((a, b) ->
                        a.kind() != b.kind() ? a.kind().compareTo(b.kind()) : Integer.compare(a.order(), b.order()));
        assertThat(library.all().get(0).id()).isEqualTo("coated-white");
        assertThat(library.byId("tee-black").orElseThrow().lab().L()).isLessThan(20);
        assertThat(library.byId("none")).isEmpty();
        assertThat(library.processById("sublimation").orElseThrow().inkOpacity())
                .isZero();
    }

    @Test
    void the_coated_paper_has_the_published_white_of_fogra39() throws Refusal {
        Lab published = PrintConditions.bundled("FOGRA39L").paper();
        assertThat(Substrates.load().byId("coated-white").orElseThrow().lab()).isEqualTo(published);
    }

    @Test
    void every_value_says_where_it_comes_from_and_heat_and_skin_have_their_cautions() throws Refusal {
        Library library = Substrates.load();
        assertThat(library.all()).allSatisfy(s -> assertThat(s.source()).containsAnyOf("published", "invented"));
        assertThat(library.processes()).allSatisfy(p -> {
            assertThat(p.source()).contains("common practice, no source");
            assertThat(p.cautions()).isNotEmpty();
            if (p.on().contains(Substrate.Kind.GARMENT)) {
                assertThat(String.join(" ", p.cautions())).contains("skin").contains("local rules");
            }
        });
        assertThat(String.join(
                        " ", library.processById("transfer-film").orElseThrow().cautions()))
                .contains("burns");
    }

    @Test
    void a_folder_of_ones_own_is_read() throws Exception {
        write("papers/a.json", PAPER);
        Library library = Substrates.load(folder);
        assertThat(library.all()).hasSize(1);
        Substrate paper = library.all().get(0);
        assertThat(paper.name()).isEqualTo("Test paper");
        assertThat(paper.texture()).isEqualTo(new Texture(Texture.Kind.COATED, 0.2, 1));
        assertThat(library.processes()).isEmpty();
    }

    @Test
    void the_system_property_names_the_folder() throws Exception {
        write("papers/a.json", PAPER);
        String before = System.getProperty(Substrates.FOLDER_PROPERTY);
        System.setProperty(Substrates.FOLDER_PROPERTY, folder.toString());
        try {
            assertThat(Substrates.load().all()).extracting(Substrate::id).containsExactly("test-paper");
        } finally {
            if (before == null) {
                System.clearProperty(Substrates.FOLDER_PROPERTY);
            } else {
                System.setProperty(Substrates.FOLDER_PROPERTY, before);
            }
        }
    }

    @Test
    void each_fault_is_told_with_file_field_reason_and_remedy() throws Exception {
        refused(PAPER.replace("\"source\"", "\"sauce\""), "a.json", "'source'", "is missing", "Add it");
        refused(PAPER.replace("\"order\": 1", "\"order\": 1, \"price\": 3"), "'price'", "no such field", "Remove it");
        refused(PAPER.replace("[95, 0, -2]", "[950, 0, -2]"), "'lab[0]'", "950 is out of range", "from 0 to 100");
        refused(PAPER.replace("[95, 0, -2]", "[95, 0]"), "'lab'", "list of 3");
        refused(PAPER.replace("[95, 0, -2]", "\"white\""), "'lab'", "list of 3");
        refused(PAPER.replace("\"Test paper\"", "5"), "'name'", "must be text", "quotes");
        refused(PAPER.replace("false", "\"no\""), "'underbaseAdvised'", "true or false");
        refused(PAPER.replace("\"coated\"", "\"velvet\""), "'texture.kind'", "not known", "jersey");
        refused(PAPER.replace("\"seed\": 1", "\"seed\": 1.5"), "'texture.seed'", "not a whole number");
        refused(PAPER.replace("\"seed\": 1", "\"seed\": 1, \"x\": 2"), "'texture.x'", "no such field");
        refused(PAPER.replace("\"hidingPower\": 0", "\"hidingPower\": \"0\""), "'hidingPower'", "must be a number");
        refused(PAPER.replace("test-paper", "Test Paper"), "'id'", "no id", "lower-case");
        refused(PAPER.replace("\"paper\"", "\"garment\""), "'kind'", "does not belong");
        refused(PAPER.replace("\"order\"", "\"name\": \"again\", \"order\""), "not valid JSON", "line");
        refused(PAPER.replace("\"notes\": []", "\"notes\": ["), "not valid JSON", "line");
        refused(PAPER + "{}", "not valid JSON");
        refused("[]", "must be a JSON object");
        refused("", "must be a JSON object");
    }

    @Test
    void two_files_with_one_id_are_refused_and_both_named() throws Exception {
        write("papers/a.json", PAPER);
        write("papers/b.json", PAPER);
        assertThatThrownBy(() -> Substrates.load(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("papers/b.json")
                .hasMessageContaining("papers/a.json");
    }

    @Test
    void a_folder_without_substrates_and_a_missing_one_are_refused() {
        assertThatThrownBy(() -> Substrates.load(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no paper");
        assertThatThrownBy(() -> Substrates.load(folder.resolve("none")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("not a folder");
    }

    @Test
    void a_file_too_large_is_refused() throws Exception {
        write("papers/a.json", " ".repeat(1 << 20) + PAPER);
        assertThatThrownBy(() -> Substrates.load(folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("larger than 1 MB");
    }

    @Test
    void it_works_from_inside_a_jar() throws Exception {
        Path classes = Path.of(Substrates.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        Path jar = folder.resolve("program.jar");
        jar(classes, jar);
        List<URL> urls = new ArrayList<>(List.of(jar.toUri().toURL()));
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            if (entry.contains("jackson")) {
                urls.add(Path.of(entry).toUri().toURL());
            }
        }
        try (URLClassLoader loader =
                new URLClassLoader(urls.toArray(URL[]::new), ClassLoader.getPlatformClassLoader())) {
            Method load = loader.loadClass(Substrates.class.getName()).getMethod("load");
            assertThat(load.getDeclaringClass()).isNotEqualTo(Substrates.class);
            Object library = load.invoke(null);
            Object all = library.getClass().getMethod("all").invoke(library);
            assertThat((List<?>) all).hasSameSizeAs(Substrates.load().all());
        }
    }

    private static void jar(Path classes, Path jar) throws IOException {
        Set<String> wanted = Set.of("base", "colour", "geometry", "substrate");
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream zip = new JarOutputStream(out);
                Stream<Path> walk = Files.walk(classes)) {
            for (Path path : walk.sorted().toList()) {
                String name = classes.relativize(path).toString().replace(File.separatorChar, '/');
                boolean program = name.startsWith("inkground/") && wanted.contains(name.split("/")[1]);
                if (program || name.startsWith("substrates")) {
                    zip.putNextEntry(new JarEntry(Files.isDirectory(path) ? name + "/" : name));
                    if (Files.isRegularFile(path)) {
                        Files.copy(path, zip);
                    }
                    zip.closeEntry();
                }
            }
        }
    }

    private void refused(String json, String... parts) throws IOException {
        write("papers/a.json", json);
        assertThatThrownBy(() -> Substrates.load(folder))
                .isInstanceOf(Refusal.class)
                .message()
                .contains(parts)
                .contains("papers/a.json");
    }

    private void write(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
