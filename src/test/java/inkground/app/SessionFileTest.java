package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.app.Arrangement.WhiteBase;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import inkground.garment.Placement;
import inkground.substrate.Cut;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SessionFileTest {
    private static final ColourAssignment NAVY_IS_BARE =
            new ColourAssignment(List.of(new Rule(new Seen(0x1c304f, 2.5), new Bare())));

    @TempDir
    Path folder;

    @Test
    void whatIsSavedIsReadBack() throws Refusal {
        Session session = new Session(
                new Arrangement(
                        NAVY_IS_BARE,
                        List.of("White", "Reach Red"),
                        Map.of("Reach Red", 0.25, "White", 1.0),
                        Optional.of(new WhiteBase(0.8, 1, 0.2, Set.of("Reach Red"), Set.of("Black"))),
                        Placement.USUAL
                                .wearing("t-shirt")
                                .sized("XL")
                                .on(Cut.Side.BACK)
                                .at(112.5, -20)
                                .wide(Optional.of(240.0))
                                .measuredTo(Placement.Measured.INK),
                        PictureSize.wide(280)),
                Optional.of(new Session.View("tee-navy", 3, Set.of("Black"))),
                true,
                Optional.of(new Session.Extent(1200, 800.5)));
        Path file = folder.resolve("shirt.inkground.json");
        SessionFile.save(session, file, false);
        assertThat(SessionFile.load(file)).isEqualTo(session);
    }

    @Test
    void aSessionServesAsAColourAssignmentAndTheOtherWayRound() throws Refusal {
        Path session = folder.resolve("session.json");
        SessionFile.save(new Session(Arrangement.AS_FILED.assigning(NAVY_IS_BARE), Optional.empty()), session, false);
        assertThat(SessionFile.load(session).arrangement().assignment()).isEqualTo(NAVY_IS_BARE);
        Path rules = folder.resolve("rules.json");
        AssignmentFile.save(NAVY_IS_BARE, rules, false);
        assertThat(SessionFile.load(rules).arrangement()).isEqualTo(Arrangement.AS_FILED.assigning(NAVY_IS_BARE));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"arrangement\": {\"opacities\": []} | field 'arrangement.printOrder'",
                "\"arrangement\": {\"printOrder\": [], \"opacities\": [], \"size\": {\"widthMm\": 0}}"
                        + " | field 'arrangement.size.widthMm'",
                "\"arrangement\": {\"printOrder\": [], \"opacities\": [], \"size\": {\"widthMm\": 9, \"dpi\": 9}}"
                        + " | field 'arrangement.size.dpi'",
                "\"sizeAsked\": {\"across\": 4, \"down\": 0} | field 'sizeAsked.down'",
                "\"arrangement\": {\"printOrder\": [], \"opacities\": [{\"ink\": \"A\", \"opacity\": 2}]}"
                        + " | field 'arrangement.opacities[0].opacity'",
                "\"arrangement\": {\"printOrder\": [], \"opacities\": [], \"underbase\": {\"tint\": 1, \"chokeMm\": -9}}"
                        + " | field 'arrangement.underbase.chokeMm'",
                "\"arrangement\": {\"printOrder\": [], \"opacities\": [], \"placement\": {\"side\": \"sleeve\"}}"
                        + " | field 'arrangement.placement.side'",
                "\"view\": {\"substrate\": \"tee-navy\", \"page\": 0, \"hiddenInks\": []} | field 'view.page'",
                "\"veiw\": {} | field 'veiw'"
            })
    void aFaultIsNamedByItsField(String fields, String expected) throws Exception {
        Path file = Files.writeString(folder.resolve("bad.json"), "{\"version\": 1, \"rules\": [], " + fields + "}");
        assertThatThrownBy(() -> SessionFile.load(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("bad.json")
                .hasMessageContaining(expected);
    }
}
