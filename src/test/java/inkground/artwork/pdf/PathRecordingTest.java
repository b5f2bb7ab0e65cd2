package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PathRecordingTest {
    @TempDir
    Path dir;

    private List<Op> ops(String content) throws Exception {
        return new PdfText().content(content).ops(dir);
    }

    @Test
    void aFilledRectangleIsRecordedInPageSpace() throws Exception {
        Op.Fill fill = (Op.Fill) ops("10 20 30 40 re f").get(0);
        assertThat(fill.path())
                .isEqualTo(new Outline.Builder()
                        .move(10, 80)
                        .line(40, 80)
                        .line(40, 40)
                        .line(10, 40)
                        .close()
                        .build());
        assertThat(fill.rule()).isEqualTo(FillRule.NON_ZERO);
        assertThat(fill.paint()).isEqualTo(new Paint.Flat(Colour.BLACK));
        assertThat(fill.style()).isSameAs(Style.PLAIN);
        assertThat(fill.text()).isNull();
        assertThat(fill.clip()).isNull();
        assertThat(fill.origin().object()).isEqualTo("page");
        assertThat(fill.origin().place()).isEqualTo(1);
    }

    @Test
    void curvesAndTheirShortFormsAreKept() throws Exception {
        Op.Fill fill =
                (Op.Fill) ops("0 0 m 1 2 3 4 5 6 c 7 8 9 10 v 11 12 13 14 y f").get(0);
        assertThat(fill.path())
                .isEqualTo(new Outline.Builder()
                        .move(0, 100)
                        .curve(1, 98, 3, 96, 5, 94)
                        .curve(5, 94, 7, 92, 9, 90)
                        .curve(11, 88, 13, 86, 13, 86)
                        .build());
    }

    @Test
    void evenOddAndNonZeroRulesAreTold() throws Exception {
        List<Op> ops = ops("0 0 9 9 re f* 0 0 9 9 re f 0 0 9 9 re F");
        assertThat(ops)
                .extracting(op -> ((Op.Fill) op).rule())
                .containsExactly(FillRule.EVEN_ODD, FillRule.NON_ZERO, FillRule.NON_ZERO);
    }

    @Test
    void aStrokeKeepsItsPenInUserSpace() throws Exception {
        Op.Stroke stroke = (Op.Stroke) ops("2 0 0 3 10 20 cm 4 w 1 J 2 j 7 M [3 1.5] 0.75 d 0 0 m 10 0 l S")
                .get(0);
        assertThat(stroke.pen().width()).isEqualTo(4);
        assertThat(stroke.pen().cap()).isEqualTo(Pen.Cap.ROUND);
        assertThat(stroke.pen().join()).isEqualTo(Pen.Join.BEVEL);
        assertThat(stroke.pen().miterLimit()).isEqualTo(7);
        assertThat(stroke.pen().dash()).containsExactly(3, 1.5);
        assertThat(stroke.pen().dashPhase()).isEqualTo(0.75);
        Box inPenSpace = stroke.path().bounds();
        assertThat(inPenSpace.x1()).isCloseTo(10, within(1e-6));
        assertThat(stroke.penToPage().x(10, 0)).isCloseTo(30, within(1e-6));
        assertThat(stroke.penToPage().y(10, 0)).isCloseTo(80, within(1e-6));
        assertThat(stroke.penToPage().d()).isEqualTo(-3);
    }

    @Test
    void aLineWidthOfZeroStaysZero() throws Exception {
        assertThat(((Op.Stroke) ops("0 w 0 0 m 10 0 l S").get(0)).pen().width()).isZero();
    }

    @Test
    void degeneratePathsThatTheStandardPaintsAreKept() throws Exception {
        List<Op> ops = ops("1 J 5 w 50 50 m 50 50 l S 10 10 0 30 re f 20 20 m h f");
        assertThat(ops).hasSize(3);
        assertThat(((Op.Fill) ops.get(1)).path().bounds().width()).isZero();
    }

    @Test
    void fillAndStrokeGivesTwoOperationsInThatOrder() throws Exception {
        assertThat(ops("0 0 9 9 re B")).hasExactlyElementsOfTypes(Op.Fill.class, Op.Stroke.class);
        Op.Stroke closed = (Op.Stroke) ops("0 0 m 9 0 l 9 9 l b*").get(1);
        assertThat(closed.path().size()).isEqualTo(4);
    }

    @Test
    void aTransparentFillAndStrokeKnocksTheFillOutUnderTheStroke() throws Exception {
        Op.Group group = new PdfText()
                .resources("/ExtGState << /G << /CA 0.5 /ca 0.25 >> >>")
                .content("/G gs 0 0 9 9 re B")
                .only(Op.Group.class, dir);
        assertThat(group.knockout()).isTrue();
        assertThat(group.isolated()).isFalse();
        assertThat(group.ops()).extracting(op -> op.style().alpha()).containsExactly(0.25, 0.5);
    }

    @Test
    void clipsNarrowAndAreRestored() throws Exception {
        List<Op> ops =
                ops("q 10 10 50 50 re W n q 20 0 100 100 re W* n 0 0 200 100 re f Q 0 0 9 9 re f Q 0 0 9 9 re f");
        assertThat(ops.get(0).clip().bounds()).isEqualTo(new Box(20, 40, 60, 90));
        assertThat(ops.get(0).clip().rule()).isEqualTo(FillRule.EVEN_ODD);
        assertThat(ops.get(1).clip()).isSameAs(ops.get(0).clip().parent());
        assertThat(ops.get(2).clip()).isNull();
    }

    @Test
    void aPathThatClipsAndPaintsIsPaintedBeforeItClips() throws Exception {
        List<Op> ops = ops("10 10 50 50 re W f 0 0 9 9 re f");
        assertThat(ops.get(0).clip()).isNull();
        assertThat(ops.get(1).clip()).isNotNull();
    }

    @Test
    void aPenOfNoAreaLeavesAHairline() throws Exception {
        Op.Stroke stroke =
                (Op.Stroke) ops("1 0 0 0 0 0 cm 4 w 10 10 m 50 50 l S").get(0);
        assertThat(stroke.pen().width()).isZero();
        assertThat(stroke.path().bounds()).isEqualTo(new Box(10, 100, 50, 100));
    }

    @Test
    void graphicsStateParametersReachTheStyle() throws Exception {
        PdfText pdf = new PdfText()
                .resources("/ExtGState << /A << /ca 0.4 /CA 0.8 /BM /Multiply /OP true /OPM 1 /AIS true >>"
                        + " /B << /op false /BM [/Unknown /Screen] >> /C << /BM /Normal /op true /OP false >> >>")
                .content("/A gs 0 0 9 9 re f 0 0 9 9 re S /B gs 0 0 9 9 re f 0 0 m 9 9 l S /C gs 0 0 9 9 re f");
        List<Style> styles = pdf.ops(dir).stream().map(Op::style).toList();
        assertThat(styles.get(0).alpha()).isCloseTo(0.4, within(1e-6));
        assertThat(styles.get(0).blend()).isEqualTo(BlendMode.MULTIPLY);
        assertThat(styles.get(0).overprint()).as("op follows OP where absent").isTrue();
        assertThat(styles.get(0).overprintMode()).isEqualTo(1);
        assertThat(styles.get(0).alphaIsShape()).isTrue();
        assertThat(styles.get(1).alpha()).isCloseTo(0.8, within(1e-6));
        assertThat(styles.get(1).overprint()).isTrue();
        assertThat(styles.get(2).overprint()).isFalse();
        assertThat(styles.get(2).blend()).isEqualTo(BlendMode.SCREEN);
        assertThat(styles.get(3).overprint()).as("op leaves OP alone").isTrue();
        assertThat(styles.get(4).overprint()).isTrue();
    }

    @Test
    void malformedOperatorsCostOnlyThemselves() throws Exception {
        DisplayList list = new PdfText()
                .content("0 0 9 9 re f (x) w 1 cm /Nope Do /Nope gs Q Q nonsense (x) 0 d 20 20 9 9 re f")
                .record(dir);
        assertThat(list.ops()).hasSize(2);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("damaged content (operator Do)"));
        assertThat(PdfText.messages(list)).noneMatch(m -> m.contains("Exception"));
    }

    @Test
    void contentCutShortKeepsWhatWasRead() throws Exception {
        DisplayList list =
                new PdfText().content("0 0 9 9 re f 5 5 20 20 re f <</A [").record(dir);
        assertThat(list.ops()).hasSize(2);
    }
}
