package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.app.OwnSubstrates.Draft;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.substrate.Texture;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OwnSubstratesTest {
    @TempDir
    Path folder;

    private static Draft draft(String name, double l) {
        return new Draft(name, Substrate.Kind.GARMENT, new Lab(l, -20, 12), "measured", Texture.Kind.JERSEY);
    }

    @Test
    void whatIsKeptIsReadAgainAsItWas() throws Refusal {
        OwnSubstrates own = new OwnSubstrates(folder.resolve("not/there/yet"));
        assertThat(own.read().substrates()).isEmpty();
        Substrate kept = own.add(draft("Moosgrün, schwer", 35.5), Set.of());
        assertThat(kept.id()).isEqualTo("moosgrun-schwer");
        assertThat(own.read().substrates()).containsExactly(kept);
        assertThat(Substrates.read(own.file(kept.id()))).isEqualTo(kept);
    }

    @Test
    void namesThatAreTakenGetANumberAndNamesWithoutLettersAnId() throws Refusal {
        OwnSubstrates own = new OwnSubstrates(folder);
        assertThat(own.add(draft("Tee navy", 20), Set.of("tee-navy")).id()).isEqualTo("tee-navy-2");
        assertThat(own.add(draft("Tee navy", 20), Set.of("tee-navy")).id()).isEqualTo("tee-navy-3");
        assertThat(own.add(draft("???", 20), Set.of()).id()).isEqualTo("own");
        assertThat(own.add(draft("x".repeat(60), 20), Set.of()).id()).hasSize(50);
    }

    @Test
    void anotherNameKeepsTheIdAnotherColourDoesNot() throws Refusal {
        OwnSubstrates own = new OwnSubstrates(folder);
        Substrate first = own.add(draft("Moss", 35), Set.of());
        Substrate renamed = own.replace(first, draft("Moss green", 35), Set.of("moss"));
        assertThat(renamed.id()).isEqualTo("moss");
        Substrate lighter = own.replace(renamed, draft("Moss green", 40), Set.of("moss"));
        assertThat(lighter.id()).isEqualTo("moss-green");
        assertThat(own.read().substrates()).containsExactly(lighter);
    }

    @Test
    void aBrokenFileCostsItselfAlone() throws Exception {
        OwnSubstrates own = new OwnSubstrates(folder);
        Substrate good = own.add(draft("Moss", 35), Set.of());
        Files.writeString(folder.resolve("broken.json"), "{\"id\": ");
        Files.copy(own.file("moss"), folder.resolve("copy.json"));
        OwnSubstrates.Shelf shelf = own.read();
        assertThat(shelf.substrates()).containsExactly(good);
        assertThat(shelf.faults()).hasSize(2);
        assertThat(shelf.faults().get(0)).startsWith("broken.json, line 1: not valid JSON");
        assertThat(shelf.faults().get(1)).startsWith("copy.json: its id is 'moss'");
    }

    @Test
    void aFolderThatCannotBeMadeIsRefusedInOneLine() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "");
        assertThatThrownBy(() -> new OwnSubstrates(file.resolve("sub")).add(draft("Moss", 35), Set.of()))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Cannot make the folder");
    }

    @Test
    void hidingPowerFollowsTheProgramsOwnGarments() throws Refusal {
        for (Substrate garment : Substrates.load().ofKind(Substrate.Kind.GARMENT)) {
            if (garment.lab().L() < 95) {
                assertThat(OwnSubstrates.hidingPower(garment.lab()))
                        .as(garment.id())
                        .isCloseTo(garment.hidingPower(), within(0.4));
            }
        }
    }

    @Test
    void dataLieWhereEachSystemWantsThem() {
        Path home = folder.toAbsolutePath();
        assertThat(UserFolder.data("Linux", home, Map.of())).isEqualTo(home.resolve(".local/share/inkground"));
        assertThat(UserFolder.data("Linux", home, Map.of("XDG_DATA_HOME", "relative")))
                .isEqualTo(home.resolve(".local/share/inkground"));
        assertThat(UserFolder.data(
                        "Linux",
                        home,
                        Map.of("XDG_DATA_HOME", home.resolve("data").toString())))
                .isEqualTo(home.resolve("data/inkground"));
        assertThat(UserFolder.data("Mac OS X", home, Map.of()))
                .isEqualTo(home.resolve("Library/Application Support/Inkground"));
        assertThat(UserFolder.data("Windows 11", home, Map.of())).isEqualTo(home.resolve("AppData/Roaming/Inkground"));
    }
}
