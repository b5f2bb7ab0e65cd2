package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.appearance.InkColour;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.CxfInk;
import inkground.colour.Lab;
import inkground.colour.Spectra;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From which source a file's spot inks get their colour: best first, and always said. */
class SpotInkSourceTest {
    private static final String RED = "Weir Red";

    @TempDir
    Path folder;

    @Test
    void spectra_in_the_output_intent_come_before_all_else() throws Exception {
        byte[] document = CxfInk.document(RED, 0.3, true, null);
        Path library = Files.writeString(
                folder.resolve("inks.json"), "{\"inks\": [{\"name\": \"Weir Red\", \"lab\": [20, 0, 0]}]}");
        try (Job job = open(pdf(document, RED, null), new Job.Choices(null, library))) {
            InkColour red = ink(job, RED);
            assertThat(Cie.deltaE00(red.solid(), Spectra.toLab(CxfInk.over(0.3, i -> 1))))
                    .isLessThan(0.01);
            assertThat(red.overBlack()).isNotNull();
            assertThat(red.source()).contains("CxF/X-4", "output intent");
            assertThat(notes(job)).anyMatch(n -> n.contains("ink library's colour of '" + RED + "' is not used"));
        }
    }

    @Test
    void spectra_in_a_pages_own_output_intent_are_of_that_pages_inks() throws Exception {
        Path file = pdf(CxfInk.document(RED, 0.3, true, null), RED, null);
        Path own = folder.resolve("page.pdf");
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
            COSDictionary first = document.getPage(0).getCOSObject();
            first.setItem(COSName.OUTPUT_INTENTS, catalog.getItem(COSName.OUTPUT_INTENTS));
            catalog.removeItem(COSName.OUTPUT_INTENTS);
            PDPage second = new PDPage(new COSDictionary(first));
            second.getCOSObject().removeItem(COSName.OUTPUT_INTENTS);
            document.addPage(second);
            document.save(own.toFile());
        }
        for (String condition : new String[] {null, "TR006"}) {
            try (Job job = open(own, new Job.Choices(condition, null))) {
                assertThat(ink(job, RED).source()).contains("CxF/X-4", "output intent");
                assertThat(job.page(2, new Cancel(), Progress.NONE).inkColours())
                        .anyMatch(c -> c.ink().name().equals(RED) && c.source().equals("Lab value in the file"));
            }
        }
    }

    @Test
    void spectra_that_cannot_be_used_are_named_and_the_next_source_is_taken() throws Exception {
        try (Job job = open(pdf("<cc:CxF".getBytes(StandardCharsets.UTF_8), RED, null), Job.Choices.NONE)) {
            assertThat(ink(job, RED).source()).isEqualTo("Lab value in the file");
            assertThat(notes(job))
                    .anyMatch(n -> n.contains(RED) && n.contains("not well-formed") && n.contains("next best source"));
        }
        byte[] tooFar = new String(CxfInk.document(RED, 0.3, true, null), StandardCharsets.UTF_8)
                .replace("StartWL=\"380\"", "StartWL=\"500\"")
                .getBytes(StandardCharsets.UTF_8);
        try (Job job = open(pdf(tooFar, RED, null), Job.Choices.NONE)) {
            assertThat(ink(job, RED).source()).isEqualTo("Lab value in the file");
            assertThat(notes(job)).anyMatch(n -> n.contains(RED) && n.contains("(StartWL)") && n.contains("next best"));
        }
        byte[] ofAnother = CxfInk.document("Other Red", 0.3, true, null);
        try (Job job = open(pdf(ofAnother, RED, null), Job.Choices.NONE)) {
            assertThat(ink(job, RED).source()).isEqualTo("Lab value in the file");
            assertThat(notes(job)).anyMatch(n -> n.contains(RED) && n.contains("SpotInkName"));
        }
    }

    @Test
    void mixing_hints_give_opacity_order_and_dot_gain_where_nothing_was_measured() throws Exception {
        COSDictionary hints = new COSDictionary();
        COSDictionary solidities = new COSDictionary();
        solidities.setItem(COSName.getPDFName(RED), new COSFloat(0.9f));
        solidities.setItem(COSName.getPDFName("Default"), new COSFloat(0.2f));
        hints.setItem(COSName.getPDFName("Solidities"), solidities);
        hints.setItem(
                COSName.getPDFName("PrintingOrder"),
                new COSArray(List.of(COSName.getPDFName("Sky"), COSName.getPDFName(RED))));
        COSDictionary gains = new COSDictionary();
        gains.setItem(COSName.getPDFName(RED), exponential(0, 1, 0.5f));
        hints.setItem(COSName.getPDFName("DotGain"), gains);
        try (Job job = open(pdf(null, null, hints), Job.Choices.NONE)) {
            InkColour red = ink(job, RED);
            assertThat(red.opacity()).isEqualTo(0.9f);
            assertThat(red.source()).contains("Lab value in the file", "opacity from", "dot gain from", "mixing hints");
            assertThat(red.tone().at(0.25)).isGreaterThan(0.3);
            assertThat(ink(job, "Sky").opacity()).isEqualTo(0.2f);
            assertThat(ink(job, "Sky").tone()).isNull();
            PageJob page = page(job);
            List<String> order = page.printOrder().stream()
                    .map(i -> page.inks().get(i).name())
                    .toList();
            assertThat(order.indexOf("Sky")).isLessThan(order.indexOf(RED));
            assertThat(order).hasSize(page.inks().size());
        }
    }

    @Test
    void a_measurement_over_black_counts_more_than_a_hint() throws Exception {
        COSDictionary hints = new COSDictionary();
        COSDictionary solidities = new COSDictionary();
        solidities.setItem(COSName.getPDFName("Default"), new COSFloat(1));
        hints.setItem(COSName.getPDFName("Solidities"), solidities);
        try (Job job = open(pdf(CxfInk.document(RED, 0.3, true, null), RED, hints), Job.Choices.NONE)) {
            assertThat(ink(job, RED).opacity()).isLessThan(0.9);
            assertThat(ink(job, RED).source()).doesNotContain("hints");
            assertThat(ink(job, "Sky").opacity()).isEqualTo(1);
        }
    }

    private static InkColour ink(Job job, String name) throws Refusal {
        return page(job).inkColours().stream()
                .filter(c -> c.ink().name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> notes(Job job) throws Refusal {
        return page(job).notes();
    }

    private static PageJob page(Job job) throws Refusal {
        return job.page(1, new Cancel(), Progress.NONE);
    }

    private static Job open(Path file, Job.Choices choices) throws Refusal {
        return Job.open(file, choices, new Cancel(), Progress.NONE);
    }

    private static COSDictionary exponential(float from, float to, float power) {
        COSDictionary function = new COSDictionary();
        function.setItem(COSName.getPDFName("FunctionType"), COSInteger.TWO);
        function.setItem(COSName.DOMAIN, new COSArray(List.of(COSInteger.ZERO, COSInteger.ONE)));
        function.setItem(COSName.C0, new COSArray(List.of(new COSFloat(from))));
        function.setItem(COSName.C1, new COSArray(List.of(new COSFloat(to))));
        function.setItem(COSName.N, new COSFloat(power));
        return function;
    }

    /** One page filled with a DeviceN of two inks, each with a Lab alternate; spectra and hints where given. */
    private Path pdf(byte[] spectra, String ink, COSDictionary hints) throws IOException {
        Path file = folder.resolve("spot.pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            COSArray space = new COSArray(List.of(
                    COSName.DEVICEN,
                    new COSArray(List.of(COSName.getPDFName(RED), COSName.getPDFName("Sky"))),
                    COSName.DEVICECMYK,
                    calculator(document)));
            COSDictionary attributes = new COSDictionary();
            COSDictionary colorants = new COSDictionary();
            colorants.setItem(COSName.getPDFName(RED), separation(RED, 45, 60));
            colorants.setItem(COSName.getPDFName("Sky"), separation("Sky", 60, -20));
            attributes.setItem(COSName.getPDFName("Colorants"), colorants);
            attributes.setItem(COSName.getPDFName("Subtype"), COSName.getPDFName("NChannel"));
            if (hints != null) {
                attributes.setItem(COSName.getPDFName("MixingHints"), hints);
            }
            space.add(attributes);
            PDResources resources = new PDResources();
            COSDictionary spaces = new COSDictionary();
            spaces.setItem(COSName.getPDFName("Two"), space);
            resources.getCOSObject().setItem(COSName.COLORSPACE, spaces);
            page.setResources(resources);
            COSStream content = document.getDocument().createCOSStream();
            try (var out = content.createOutputStream()) {
                out.write("/Two cs 1 0.5 sc 0 0 200 200 re f".getBytes(StandardCharsets.US_ASCII));
            }
            page.getCOSObject().setItem(COSName.CONTENTS, content);
            if (spectra != null) {
                addIntent(document, ink, spectra);
            }
            document.save(file.toFile());
        }
        return file;
    }

    private static void addIntent(PDDocument document, String ink, byte[] spectra) throws IOException {
        COSDictionary intent = new COSDictionary();
        intent.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
        intent.setItem(COSName.S, COSName.getPDFName("GTS_PDFX"));
        intent.setString(COSName.OUTPUT_CONDITION_IDENTIFIER, "FOGRA39L");
        COSDictionary data = new COSDictionary();
        data.setItem(
                COSName.getPDFName(ink),
                new PDStream(document, new ByteArrayInputStream(spectra), COSName.FLATE_DECODE).getCOSObject());
        intent.setItem(COSName.getPDFName("SpectralData"), data);
        document.getDocumentCatalog().getCOSObject().setItem(COSName.OUTPUT_INTENTS, new COSArray(List.of(intent)));
    }

    private static COSArray separation(String name, float light, float a) {
        COSDictionary lab = new COSDictionary();
        lab.setItem(
                COSName.WHITE_POINT,
                new COSArray(List.of(new COSFloat(0.9642f), COSInteger.ONE, new COSFloat(0.8249f))));
        COSDictionary tint = exponential(0, 0, 1);
        tint.setItem(COSName.C0, new COSArray(List.of(new COSFloat(100), COSInteger.ZERO, COSInteger.ZERO)));
        tint.setItem(COSName.C1, new COSArray(List.of(new COSFloat(light), new COSFloat(a), COSInteger.ZERO)));
        return new COSArray(
                List.of(COSName.SEPARATION, COSName.getPDFName(name), new COSArray(List.of(COSName.LAB, lab)), tint));
    }

    private static COSStream calculator(PDDocument document) throws IOException {
        COSStream function = document.getDocument().createCOSStream();
        function.setItem(COSName.getPDFName("FunctionType"), COSInteger.get(4));
        function.setItem(COSName.DOMAIN, numbers(4));
        function.setItem(COSName.RANGE, numbers(8));
        try (var out = function.createOutputStream()) {
            out.write("{ 0 exch 0 exch 0 exch pop 0 exch pop 0 0 }".getBytes(StandardCharsets.US_ASCII));
        }
        return function;
    }

    private static COSArray numbers(int count) {
        COSArray out = new COSArray();
        for (int i = 0; i < count; i++) {
            out.add(COSInteger.get(i % 2));
        }
        return out;
    }

    /** The Lab that the separation states, for comparison. */
    @Test
    void without_any_of_these_the_lab_alternate_counts() throws Exception {
        try (Job job = open(pdf(null, null, null), Job.Choices.NONE)) {
            assertThat(Cie.deltaE00(ink(job, RED).solid(), new Lab(45, 60, 0))).isLessThan(0.2);
            assertThat(ink(job, RED).source()).isEqualTo("Lab value in the file");
        }
    }
}
