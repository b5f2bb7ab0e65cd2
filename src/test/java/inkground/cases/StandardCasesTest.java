package inkground.cases;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Refusal;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Pages whose ink planes were worked out by hand from ISO 32000-2; see {@code cases/README.txt}. */
class StandardCasesTest {
    private static final List<String> FILES = List.of(
            "colour-spaces",
            "overprint",
            "blend-modes",
            "groups",
            "soft-masks",
            "images",
            "image-filters",
            "shadings",
            "patterns",
            "text",
            "composite-fonts",
            "lines",
            "transfer-functions",
            "layers",
            "pages");

    private static final int LEAST = 80;

    @TempDir
    Path dir;

    @TestFactory
    Stream<DynamicContainer> thePlanesAreWhatTheStandardSays() throws IOException {
        Stream.Builder<DynamicContainer> out = Stream.builder();
        for (String file : FILES) {
            Stream<DynamicTest> tests = read(file).stream()
                    .map(one ->
                            DynamicTest.dynamicTest(one.name(), source(one), () -> assertThat(CasePage.faults(one, dir))
                                    .as("%s (%s; %s)", one.name(), one.clause(), one.place())
                                    .isEmpty()));
            out.add(DynamicContainer.dynamicContainer(file, tests));
        }
        return out.build();
    }

    /** A case here that passes has been mended: it belongs in the file of its subject. */
    @TestFactory
    Stream<DynamicTest> theKnownFailuresStillFail() throws IOException {
        return read("known-failures").stream()
                .map(one -> DynamicTest.dynamicTest(one.name(), source(one), () -> {
                    assertThat(one.reason()).as("reason of the failure").isNotEmpty();
                    assertThat(faultsOrRefusal(one))
                            .as("%s (%s; %s) passes now: move it", one.name(), one.clause(), one.place())
                            .isNotEmpty();
                }));
    }

    private List<String> faultsOrRefusal(InkCase one) throws IOException {
        try {
            return CasePage.faults(one, dir);
        } catch (Refusal e) {
            return List.of(e.getMessage());
        }
    }

    @Test
    void thereAreEnoughCasesAndNoTwoOfOneName() throws IOException {
        List<String> names = new ArrayList<>();
        for (String file : FILES) {
            read(file).forEach(one -> names.add(one.name()));
        }
        assertThat(names).doesNotHaveDuplicates();
        assertThat(names.size()).isGreaterThanOrEqualTo(LEAST);
    }

    /** The comparison itself: every number moved by a little more than its tolerance must be noticed. */
    @Test
    void aWrongNumberIsNoticedInEveryCase() throws IOException, Refusal {
        for (InkCase one : read("overprint")) {
            for (InkCase.Expectation expectation : one.expectations()) {
                InkCase wrong = one.expecting(List.of(moved((InkCase.At) expectation)));
                assertThat(CasePage.faults(wrong, dir)).as(one.name()).isNotEmpty();
            }
        }
    }

    private static InkCase.At moved(InkCase.At at) {
        Map<String, InkCase.Span> inks = new LinkedHashMap<>(at.inks());
        inks.replaceAll((ink, span) -> new InkCase.Span(span.low() + 4, span.high() + 4));
        inks.putIfAbsent("mark", new InkCase.Span(1, 100)); // for those that expect no ink and say nothing of the mark
        return new InkCase.At(at.x(), at.y(), inks, at.othersFree(), at.why());
    }

    private static List<InkCase> read(String file) throws IOException {
        return CaseReader.read("/cases/" + file + ".txt");
    }

    private static URI source(InkCase one) {
        String[] place = one.place().split(":");
        return URI.create("classpath:/cases/" + place[0] + "?line=" + place[1]);
    }
}
