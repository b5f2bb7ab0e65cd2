package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GroupRecordingTest {
    private static final String FORM = "/Type /XObject /Subtype /Form /BBox [0 0 50 50] ";
    private static final String GROUP = FORM + "/Group << /S /Transparency /I true /CS /DeviceCMYK >> ";

    @TempDir
    Path dir;

    @Test
    void aPlainFormIsRecordedInLineInsideItsBox() throws Exception {
        Op.Fill fill = new PdfText()
                .resources("/XObject << /Fm1 5 0 R >>").content("2 0 0 2 10 0 cm 0 1 0 rg /Fm1 Do").stream(
                                FORM + "/Matrix [1 0 0 1 5 5]", "0 0 100 10 re f")
                        .only(Op.Fill.class, dir);
        assertThat(fill.bounds()).isEqualTo(new Box(20, 70, 220, 90));
        assertThat(fill.clip().bounds()).isEqualTo(new Box(20, -10, 120, 90));
        assertThat(fill.origin().object()).isEqualTo("form Fm1 at operator 2 in page");
        assertThat(fill.origin().place()).isEqualTo(1);
        assertThat(fill.paint())
                .as("a form starts with the colour in force")
                .isEqualTo(new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 0, 1, 0)));
    }

    @Test
    void aTransferFunctionIsNotAppliedAndSaidSo() throws Exception {
        String function = "<< /FunctionType 2 /Domain [0 1] /C0 [1] /C1 [0] /N 1 >>";
        String state = "/ExtGState << /G << /TR " + function + " >> /I << /TR /Identity >> >>";
        assertThat(PdfText.messages(new PdfText()
                        .resources(state)
                        .content("/G gs 0 0 9 9 re f")
                        .record(dir)))
                .anyMatch(message -> message.contains("a transfer function"));
        assertThat(PdfText.messages(new PdfText()
                        .resources(state)
                        .content("/I gs 0 0 9 9 re f")
                        .record(dir)))
                .isEmpty();
    }

    @Test
    void theStateBeforeAFormIsRestoredAfterIt() throws Exception {
        List<Op> ops = new PdfText()
                .resources("/XObject << /Fm1 5 0 R >>").content("/Fm1 Do 0 0 9 9 re f").stream(
                                FORM, "q q 1 0 0 rg 0 0 5 5 re W n 2 0 0 2 0 0 cm 0 0 9 9 re f")
                        .ops(dir);
        assertThat(ops.get(1).clip()).isNull();
        assertThat(ops.get(1).bounds()).isEqualTo(new Box(0, 91, 9, 100));
        assertThat(((Op.Fill) ops.get(1)).paint()).isEqualTo(new Paint.Flat(Colour.BLACK));
    }

    @Test
    void aTransparencyGroupCarriesTheStateAndItsContentStartsAfresh() throws Exception {
        Op.Group group = new PdfText()
                        .resources("/XObject << /G 5 0 R >> /ExtGState << /H << /ca 0.5 /BM /Multiply >> >>")
                        .content("/H gs /G Do")
                        .stream(GROUP, "0 0 9 9 re f")
                        .only(Op.Group.class, dir);
        assertThat(group.style().alpha()).isCloseTo(0.5, within(1e-6));
        assertThat(group.style().blend()).isEqualTo(BlendMode.MULTIPLY);
        assertThat(group.isolated()).isTrue();
        assertThat(group.knockout()).isFalse();
        assertThat(group.space()).isEqualTo(new ColourSpace.DeviceCmyk());
        assertThat(group.bounds()).isEqualTo(new Box(0, 50, 50, 100));
        Op child = group.ops().get(0);
        assertThat(child.style().alpha()).isEqualTo(1);
        assertThat(child.style().blend()).isEqualTo(BlendMode.NORMAL);
        assertThat(child.clip().bounds()).isEqualTo(new Box(0, 50, 50, 100));
    }

    @Test
    void thePageGroupsColourSpaceIsKept() throws Exception {
        DisplayList list = new PdfText()
                .page("/MediaBox [0 0 9 9] /Group << /S /Transparency /CS /DeviceCMYK >>")
                .record(dir);
        assertThat(list.groupSpace()).isEqualTo(new ColourSpace.DeviceCmyk());
    }

    private SoftMask mask(String maskEntries, String content) throws Exception {
        return new PdfText()
                        .resources("/ExtGState << /M << /SMask << /Type /Mask /G 5 0 R " + maskEntries + " >> >> >>")
                        .content(content)
                        .stream(GROUP, "1 g 0 0 10 10 re f")
                        .only(Op.Fill.class, dir)
                        .style()
                        .softMask();
    }

    @Test
    void aSoftMaskIsRecordedUnderTheMatrixItWasSetWith() throws Exception {
        SoftMask mask =
                mask("/S /Luminosity /BC [0 0 0 0.25]", "2 0 0 2 0 0 cm 1 0 0 rg /M gs 3 0 0 3 0 0 cm 0 0 9 9 re f");
        assertThat(mask.luminosity()).isTrue();
        assertThat(mask.backdrop()).isEqualTo(new Colour(new ColourSpace.DeviceCmyk(), 0, 0, 0, 0.25f));
        assertThat(mask.transfer()).isNull();
        assertThat(mask.group().ops().get(0).bounds()).isEqualTo(new Box(0, 80, 20, 100));
        assertThat(mask.group().clip()).isNull();
    }

    @Test
    void anAlphaMaskKeepsItsTransferFunction() throws Exception {
        SoftMask mask =
                mask("/S /Alpha /TR << /FunctionType 2 /Domain [0 1] /N 1 /C0 [1] /C1 [0] >>", "/M gs 0 0 9 9 re f");
        assertThat(mask.luminosity()).isFalse();
        float[] out = new float[1];
        mask.transfer().apply(new float[] {0.25f}, out);
        assertThat(out[0]).isCloseTo(0.75f, within(1e-6f));
        assertThat(mask("/S /Alpha /TR /Identity", "/M gs 0 0 9 9 re f").transfer())
                .isNull();
    }

    @Test
    void oneMaskIsSharedAndNoneEndsIt() throws Exception {
        List<Op> ops = new PdfText()
                        .resources("/ExtGState << /M << /SMask << /S /Alpha /G 5 0 R >> >> /N << /SMask /None >> >>")
                        .content("/M gs 0 0 9 9 re f 0 0 9 9 re f /N gs 0 0 9 9 re f")
                        .stream(GROUP, "0 0 9 9 re f")
                        .ops(dir);
        assertThat(ops.get(0).style().softMask())
                .isNotNull()
                .isSameAs(ops.get(1).style().softMask());
        assertThat(ops.get(2).style().softMask()).isNull();
    }

    @Test
    void aFormInsideItselfIsLeftOut() throws Exception {
        DisplayList list = new PdfText()
                .resources("/XObject << /A 5 0 R >>").content("/A Do").stream(
                                FORM + "/Resources << /XObject << /B 6 0 R >> >>", "0 0 9 9 re f /B Do")
                        .stream(FORM + "/Resources << /XObject << /A 5 0 R >> >>", "0 0 9 9 re f /A Do")
                        .record(dir);
        assertThat(list.ops()).hasSize(2);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("an object that contains itself"));
    }

    @Test
    void formsNestedTooDeeplyAreLeftOutAndSaid() throws Exception {
        PdfText pdf = new PdfText().resources("/XObject << /N 5 0 R >>").content("/N Do");
        for (int i = 0; i < 40; i++) {
            pdf.stream(FORM + "/Resources << /XObject << /N " + (6 + i) + " 0 R >> >>", "0 0 9 9 re f /N Do");
        }
        DisplayList list = pdf.record(dir);
        assertThat(list.ops()).hasSize(Limits.STANDARD.nesting());
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("nested too deeply"));
    }

    /** Eleven forms that each draw the next six times. */
    private static PdfText multiplying(String innermost) {
        PdfText pdf = new PdfText().resources("/XObject << /N 5 0 R >>").content("/N Do");
        for (int i = 0; i < 12; i++) {
            pdf.stream(
                    FORM + "/Resources << /XObject << /N " + (6 + i) + " 0 R >> >>",
                    i < 11 ? "/N Do ".repeat(6) : innermost);
        }
        return pdf;
    }

    @Test
    void formsThatMultiplyAreStoppedByTheObjectLimit() {
        Limits few = new Limits(20_000, 1_000_000, 28, 100, 1 << 20);
        assertThatThrownBy(() -> multiplying("0 0 1 1 re f ".repeat(20)).record(dir, few))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("page 1")
                .hasMessageContaining("more than 20000 objects");
    }

    @Test
    void formsThatMultiplyWithoutPaintingAreStoppedByTheInstructionLimit() {
        Limits few = new Limits(20_000, 50_000, 28, 100, 1 << 20);
        assertThatThrownBy(() -> multiplying("q Q").record(dir, few))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("more than 50000 drawing instructions");
    }

    @Test
    void aGraphicsStateSavedOverAndOverIsRefused() {
        assertThatThrownBy(() -> new PdfText().content("q ".repeat(20_000)).record(dir))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("10000 graphics states");
    }

    @Test
    void contentThatIsNoStreamIsAnEmptyPage() throws Exception {
        assertThat(new PdfText()
                        .page("/MediaBox [0 0 9 9] /Contents [<< /A 1 >> null 99 0 R 4 0 R]")
                        .content("0 0 9 9 re f")
                        .record(dir)
                        .page()
                        .number())
                .isEqualTo(1);
    }

    @Test
    void contentThatUnpacksBeyondTheLimitIsLeftOutAndSaid() throws Exception {
        ByteArrayOutputStream once = new ByteArrayOutputStream();
        try (DeflaterOutputStream out = new DeflaterOutputStream(once)) {
            byte[] blanks = new byte[1 << 20];
            java.util.Arrays.fill(blanks, (byte) ' ');
            for (int i = 0; i < 3; i++) {
                out.write(blanks);
            }
        }
        DisplayList list = new PdfText()
                .page("/MediaBox [0 0 9 9] /Contents 5 0 R").stream("/Filter /FlateDecode", once.toByteArray())
                        .record(dir, new Limits(100, 100, 28, 100, 2 << 20));
        assertThat(list.ops()).isEmpty();
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("cannot be unpacked or is too large"));
    }
}
