package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.appearance.InkLibrary;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkLibrariesTest {
    @TempDir
    Path folder;

    @Test
    void json_colours_are_related_to_the_papers() throws Exception {
        InkLibrary library =
                read("{\"paper\": [90, 0, 5], \"inks\": [{\"name\": \"Weir Green\", \"lab\": [90, 0, 5]}]}");
        InkLibrary.Entry entry = library.find("Weir Green").orElseThrow();
        assertThat(Cie.deltaE00(entry.solid(), new Lab(100, 0, 0))).isLessThan(1e-6);
        assertThat(entry.opacity()).isEmpty();
        assertThat(entry.source()).contains("inks").contains("source not stated");
        assertThat(library.find("weir green")).isEmpty();
    }

    @Test
    void cgats_samples_are_inks_and_the_paper_is_none() throws Exception {
        InkLibrary library = read("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_NAME LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n"
                + "BEGIN_DATA\nPaper 95 0 -2\n\"Weir Green\" 50 -40 20\nEND_DATA\n");
        assertThat(library.entries()).containsOnlyKeys("Weir Green");
        assertThat(library.find("Weir Green").orElseThrow().solid().L()).isBetween(51.0, 54.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"inks\": []} | 'inks'",
                "{\"inks\": [{\"name\": \"A\"}]} | inks[0].lab",
                "{\"inks\": [{\"name\": \"A\", \"lab\": [50, 0]}]} | inks[0].lab",
                "{\"inks\": [{\"name\": \"A\", \"lab\": [50, 0, 900]}]} | inks[0].lab",
                "{\"inks\": [{\"name\": \"A\", \"lab\": [50, 0, 0], \"opacity\": 2}]} | inks[0].opacity",
                "{\"inks\": [{\"name\": \"A\", \"lab\": [50, 0, 0], \"colour\": 2}]} | inks[0].colour",
                "{\"inks\": [{\"name\": \"A\", \"lab\": [50,0,0]}, {\"name\": \"A\", \"lab\": [1,0,0]}]} | A twice",
                "{\"inks\": [ | line 1",
                "nothing | BEGIN_DATA"
            })
    void what_is_wrong_is_named_with_file_and_field(String text, String named) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks")
                .hasMessageContaining(named);
    }

    private InkLibrary read(String text) throws IOException, Refusal {
        return InkLibraries.read(Files.writeString(folder.resolve("inks"), text));
    }
}
