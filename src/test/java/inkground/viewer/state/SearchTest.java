package inkground.viewer.state;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SearchTest {
    private static SubstrateCard card(Substrate s) {
        return new SubstrateCard(
                s.id(),
                s.name(),
                s.kind() == Substrate.Kind.GARMENT,
                s.lab(),
                Srgb.labToArgb(s.lab()),
                s.texture().kind().name().toLowerCase(Locale.ROOT),
                s.source(),
                List.of());
    }

    @ParameterizedTest
    @CsvSource({
        "kraft, kraft-brown",
        "paper white, coated-white",
        "GARMENT jersey black, tee-black",
        "blue, tee-royal",
        "blue, tee-sky",
        "dark blue, tee-navy",
        "green, tee-bottle",
        "green dark, tee-bottle",
        "grey fleece, hoodie-ash",
        "yellow, tee-lemon",
        "pink, tee-blossom",
        "violet, tee-violet",
        "brown, kraft-brown",
        "red, tee-red",
        "orange, tee-orange",
        "beige, tee-natural"
    })
    void aSubstrateIsFoundByNameKindTextureAndColour(String query, String id) throws Refusal {
        Search search = new Search(query);
        assertThat(Substrates.load().all().stream()
                        .map(SearchTest::card)
                        .filter(search::finds)
                        .map(SubstrateCard::id))
                .contains(id);
    }

    @Test
    void aWordThatFitsNothingFindsNothingAndNoWordFindsAll() throws Refusal {
        SubstrateCard navy = card(Substrates.load().byId("tee-navy").orElseThrow());
        assertThat(new Search("navy paper").finds(navy)).isFalse();
        assertThat(new Search("avy").finds(navy)).isFalse();
        assertThat(new Search("  ").finds(navy)).isTrue();
        assertThat(new Search("écru")
                        .finds(new SubstrateCard(
                                "e", "Écru canvas", true, new Lab(88, 1, 10), 0, "woven", "test", List.of())))
                .isTrue();
    }
}
