package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Artwork;
import inkground.artwork.Layer;
import inkground.artwork.Op;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.geometry.Box;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LayersAndAnnotationsTest {
    private static final String THREE = "/OCProperties << /OCGs [5 0 R 6 0 R 7 0 R] /D << %s >> >>";
    private static final Set<Integer> NONE = Set.of();

    @TempDir
    Path dir;

    private static PdfText layered(String config) {
        return new PdfText()
                .catalog(THREE.formatted(config))
                .object("<< /Type /OCG /Name (Shirt) /Usage << /Print << /PrintState /OFF >> >> >>")
                .object("<< /Type /OCG /Name (Crest) >>")
                .object("<< /Type /OCG /Name (Guides) >>");
    }

    private List<Layer> layers(String config) throws Exception {
        try (Artwork artwork = layered(config).open(dir)) {
            return artwork.layers();
        }
    }

    @Test
    void layersFollowTheDefaultConfiguration() throws Exception {
        assertThat(layers("/OFF [7 0 R]"))
                .containsExactly(
                        new Layer(0, "Shirt", true), new Layer(1, "Crest", true), new Layer(2, "Guides", false));
        assertThat(layers("/BaseState /OFF /ON [6 0 R]")).extracting(Layer::on).containsExactly(false, true, false);
    }

    @Test
    void theUsageForPrintDecidesWhereTheConfigurationSaysSo() throws Exception {
        assertThat(layers("/AS [<< /Event /Print /Category [/Print] /OCGs [5 0 R] >>]"))
                .extracting(Layer::on)
                .containsExactly(false, true, true);
        assertThat(layers("/AS [<< /Event /View /Category [/Print] /OCGs [5 0 R] >>]"))
                .extracting(Layer::on)
                .containsOnly(true);
    }

    private Visibility visibility(String properties) throws Exception {
        return layered("")
                .resources("/Properties << /L " + properties + " >>")
                .content("/OC /L BDC 0 0 9 9 re f EMC")
                .only(Op.Fill.class, dir)
                .origin()
                .visibility();
    }

    @Test
    void markedContentShowsWithItsLayer() throws Exception {
        List<Op> ops = layered("")
                .resources("/Properties << /A 5 0 R /B 6 0 R >>")
                .content("/OC /A BDC /Span BMC /OC /B BDC 0 0 9 9 re f EMC EMC 0 0 9 9 re f EMC 0 0 9 9 re f"
                        + " /OC /Missing BDC 0 0 9 9 re f EMC")
                .ops(dir);
        Visibility both = ops.get(0).origin().visibility();
        assertThat(both.shows(Set.of(0, 1))).isTrue();
        assertThat(both.shows(Set.of(0))).isFalse();
        assertThat(both.shows(Set.of(1))).isFalse();
        assertThat(ops.get(1).origin().visibility()).isEqualTo(new Visibility.Of(0));
        assertThat(ops.get(2).origin().visibility()).isEqualTo(Visibility.ALWAYS);
        assertThat(ops.get(3).origin().visibility()).isEqualTo(Visibility.ALWAYS);
    }

    @Test
    void membershipPoliciesAreKept() throws Exception {
        String two = "<< /Type /OCMD /OCGs [5 0 R 6 0 R] /P /%s >>";
        Visibility anyOn = visibility(two.formatted("AnyOn"));
        Visibility allOn = visibility(two.formatted("AllOn"));
        Visibility anyOff = visibility(two.formatted("AnyOff"));
        Visibility allOff = visibility(two.formatted("AllOff"));
        Set<Integer> one = Set.of(0);
        Set<Integer> all = Set.of(0, 1);
        assertThat(List.of(anyOn.shows(NONE), anyOn.shows(one), anyOn.shows(all)))
                .containsExactly(false, true, true);
        assertThat(List.of(allOn.shows(NONE), allOn.shows(one), allOn.shows(all)))
                .containsExactly(false, false, true);
        assertThat(List.of(anyOff.shows(NONE), anyOff.shows(one), anyOff.shows(all)))
                .containsExactly(true, true, false);
        assertThat(List.of(allOff.shows(NONE), allOff.shows(one), allOff.shows(all)))
                .containsExactly(true, false, false);
        assertThat(visibility("<< /Type /OCMD /OCGs [] >>")).isEqualTo(Visibility.ALWAYS);
    }

    @Test
    void visibilityExpressionsAreKept() throws Exception {
        Visibility v = visibility("<< /Type /OCMD /VE [/And [/Not 5 0 R] [/Or 6 0 R 7 0 R]] >>");
        assertThat(v.shows(Set.of(1))).isTrue();
        assertThat(v.shows(Set.of(2))).isTrue();
        assertThat(v.shows(Set.of(0, 1))).isFalse();
        assertThat(v.shows(NONE)).isFalse();
    }

    @Test
    void anObjectsOwnLayerReachesItsContent() throws Exception {
        Op.Fill fill = layered("").resources("/XObject << /F 8 0 R >>").content("/F Do").stream(
                        "/Subtype /Form /BBox [0 0 9 9] /OC 7 0 R", "0 0 9 9 re f")
                .only(Op.Fill.class, dir);
        assertThat(fill.origin().visibility()).isEqualTo(new Visibility.Of(2));
    }

    private List<Op> annotated(String entries, String formEntries) throws Exception {
        try (Artwork artwork = new PdfText()
                        .page("/MediaBox [0 0 200 100] /Annots [<< /Type /Annot /Subtype /Stamp /Rect [20 10 60 30]"
                                + " /AP << /N 5 0 R >> " + entries + " >>]")
                        .content("0 0 9 9 re f")
                        .stream("/Subtype /Form /BBox [0 0 10 10] " + formEntries, "0 0 5 5 re f")
                        .open(dir)) {
            return artwork.record(1, new Cancel(), Progress.NONE).ops();
        }
    }

    @Test
    void anAnnotationThatPrintsIsFittedToItsRectangleAfterThePage() throws Exception {
        List<Op> ops = annotated("/F 4", "");
        assertThat(ops).hasSize(2);
        assertThat(ops.get(1).bounds()).isEqualTo(new Box(20, 80, 40, 90));
        assertThat(ops.get(1).clip().bounds()).isEqualTo(new Box(20, 70, 60, 90));
        assertThat(ops.get(1).origin().object()).isEqualTo("appearance in annotation 1");
    }

    @Test
    void aTurnedAppearanceIsFittedByItsTurnedBox() throws Exception {
        List<Op> ops = annotated("/F 4", "/Matrix [0 1 -1 0 0 0]");
        // Turned left by 90°, the lower left quarter of the box becomes its lower right quarter.
        assertThat(ops.get(1).bounds()).isEqualTo(new Box(40, 80, 60, 90));
    }

    @Test
    void annotationsThatDoNotPrintAreLeftOut() throws Exception {
        assertThat(annotated("", "")).hasSize(1);
        assertThat(annotated("/F 6", "")).as("hidden").hasSize(1);
    }
}
