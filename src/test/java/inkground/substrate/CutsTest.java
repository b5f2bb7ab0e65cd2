package inkground.substrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.base.Refusal;
import inkground.geometry.Box;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CutsTest {
    /** A sheet of cloth 400 mm wide at M and 500 mm at L, from 20 mm above the origin, with one seam. */
    private static final String CUT =
            """
            {
              "id": "test-cut", "name": "Test cut", "cloth": ["jersey"], "source": "invented for the test",
              "sizes": [
                {"name": "M", "measures": {"chest": 400, "length": 600}},
                {"name": "L", "measures": {"chest": 500, "length": 640}}
              ],
              "usualSize": "M",
              "faces": [{
                "side": "front", "from": "seam of the collar", "usualBelowMm": 80,
                "outline": "M 0 -20 L 0.5*chest -20 L 0.5*chest length-20 L 0 length-20",
                "parts": [], "folds": [],
                "lines": [{"name": "side seam", "kind": "seam", "path": "M 0.5*chest-10 0 L 0.5*chest-10 length"}],
                "printAreas": [{"name": "chest", "belowMm": 50, "centreMm": 0, "widthMm": "chest-100", "heightMm": 300}]
              }],
              "seed": 1, "cautions": [], "notes": [], "order": 1
            }
            """;

    @TempDir
    Path folder;

    private Cut read(String json) throws IOException, Refusal {
        Files.createDirectories(folder.resolve("cuts"));
        Files.createDirectories(folder.resolve("papers"));
        Files.copy(
                Path.of("substrates/papers/coated-white.json"),
                folder.resolve("papers/paper.json"),
                java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        Files.writeString(folder.resolve("cuts/a.json"), json);
        return Substrates.load(folder).cutById("test-cut").orElseThrow();
    }

    private void refused(String json, String... parts) {
        assertThatThrownBy(() -> read(json))
                .isInstanceOf(Refusal.class)
                .message()
                .startsWith("cuts/a.json")
                .contains(parts);
    }

    @Test
    void a_path_grows_with_the_measures_and_is_mirrored() throws Exception {
        Cut cut = read(CUT);
        Cut.Face face = cut.face(Cut.Side.FRONT).orElseThrow();
        assertThat(face.outline()
                        .closed(cut.size("M").orElseThrow().measuresMm())
                        .bounds())
                .isEqualTo(new Box(-200, -20, 200, 580));
        assertThat(face.outline()
                        .closed(cut.size("L").orElseThrow().measuresMm())
                        .bounds())
                .isEqualTo(new Box(-250, -20, 250, 620));
        Cut.Line seam = face.lines().get(0);
        assertThat(seam.path().open(cut.size("M").orElseThrow().measuresMm()).bounds())
                .isEqualTo(new Box(-190, 0, 190, 600));
        assertThat(face.areas().get(0).widthMm().mm(Map.of("chest", 500.0, "length", 1.0)))
                .isEqualTo(400);
        assertThat(cut.face(Cut.Side.BACK)).isEmpty();
    }

    @Test
    void a_sum_is_read_term_by_term() {
        Set<String> known = Set.of("a", "bee");
        Map<String, Double> mm = Map.of("a", 10.0, "bee", 3.0);
        assertThat(MeasureSum.parse("-a+0.5*bee-2.5+7", known).mm(mm)).isEqualTo(-10 + 1.5 - 2.5 + 7);
        assertThat(MeasureSum.parse("12", known).mm(mm)).isEqualTo(12);
        for (String wrong : new String[] {"", "a*2", "2a", "a b", "a++bee", "(a)", "1e9", "a-"}) {
            assertThatThrownBy(() -> MeasureSum.parse(wrong, known)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void each_fault_is_told_with_file_field_reason_and_remedy() {
        refused(
                CUT.replace("0.5*chest -20 L", "0.5*chets -20 L"),
                "'faces[0].outline'",
                "'chets' is no measure",
                "chest, length");
        refused(CUT.replace("M 0 -20", "M 5 -20"), "'faces[0].outline'", "centre line", "first and last x be 0");
        refused(CUT.replace("M 0 -20 L", "M 0 -20 Q"), "'faces[0].outline'", "'Q' stands where");
        refused(CUT.replace(" length-20 L 0 length-20", " length-20 L 0"), "'faces[0].outline'", "breaks off");
        refused(CUT.replace("M 0 -20 L 0.5*chest", "M 0 -20 M 0.5*chest"), "'faces[0].outline'", "one M");
        refused(CUT.replace("\"chest-100\"", "\"chest-450\""), "'faces[0].printAreas[0].widthMm'", "size M", "-50 mm");
        refused(
                CUT.replace("\"chest-100\"", "\"chest / 2\""),
                "'faces[0].printAreas[0].widthMm'",
                "no sum of lengths",
                "0.5*chest-20");
        refused(CUT.replace("\"usualSize\": \"M\"", "\"usualSize\": \"S\""), "'usualSize'", "no size 'S'");
        refused(CUT.replace("\"name\": \"L\"", "\"name\": \"M\""), "'sizes[1].name'", "two sizes");
        refused(
                CUT.replace("500, \"length\"", "500, \"lenght\""),
                "'sizes[1].measures'",
                "first size",
                "chest, length");
        refused(CUT.replace("\"chest\": 400", "\"chest\": 9000"), "'sizes[0].measures.chest'", "out of range");
        refused(CUT.replace("\"seam\"", "\"zip\""), "'faces[0].lines[0].kind'", "not known", "seam, stitch");
        refused(CUT.replace("\"front\"", "\"sleeve\""), "'faces[0].side'", "front, back");
        refused(CUT.replace("\"parts\"", "\"pats\""), "'faces[0].parts'", "is missing");
        refused(CUT.replace("\"seed\": 1", "\"seed\": 1, \"colour\": 2"), "'colour'", "no such field");
    }

    @Test
    void the_programs_own_cuts_are_whole_and_say_that_they_are_invented() throws Refusal {
        Library library = Substrates.load();
        assertThat(library.cuts())
                .extracting(Cut::id)
                .containsExactly("t-shirt", "t-shirt-fitted", "child-t-shirt", "hooded-sweatshirt", "tote-bag");
        assertThat(library.cuts()).allSatisfy(cut -> {
            assertThat(cut.source()).contains("invented").contains("no source");
            assertThat(cut.sizes()).hasSizeGreaterThan(2);
            assertThat(cut.faces()).hasSize(2);
            assertThat(String.join(" ", cut.cautions())).contains("burns");
            assertThat(String.join(" ", cut.notes())).contains("printer's own frames");
        });
        assertThat(String.join(
                        " ", library.cutById("child-t-shirt").orElseThrow().cautions()))
                .contains("Children's wear")
                .contains("skin");
    }

    @Test
    void larger_sizes_are_larger_in_every_measure_that_grows() throws Refusal {
        for (Cut cut : Substrates.load().cuts()) {
            for (int i = 1; i < cut.sizes().size(); i++) {
                Map<String, Double> smaller = cut.sizes().get(i - 1).measuresMm();
                cut.sizes().get(i).measuresMm().forEach((name, mm) -> assertThat(mm)
                        .as(cut.id() + " " + name)
                        .isGreaterThanOrEqualTo(smaller.get(name)));
            }
        }
    }
}
