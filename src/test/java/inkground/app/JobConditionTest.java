package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.LittleCmsProfile;
import inkground.colour.TestProfile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which print condition a job has: the user's choice, else the file's own, else the usual one with a note. */
class JobConditionTest {
    @TempDir
    Path folder;

    @Test
    void the_files_own_profile_is_the_print_condition() throws Exception {
        try (Job job = open(pdf(LittleCmsProfile.bytes(), "Regatta press"), Job.Choices.NONE)) {
            assertThat(job.condition().name()).isEqualTo("Regatta press");
            assertThat(job.condition().source()).contains("ICC output profile");
            assertThat(page(job).notes()).noneMatch(n -> n.contains("print condition"));
            assertThat(page(job).inkColours().get(0).source()).contains("Regatta press");
            double[] xyz = new double[3];
            job.condition().cmykToXyz(new float[] {0, 0, 0, 1}, xyz);
            assertThat(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]).L()).isBetween(1.0, 30.0);
        }
    }

    @Test
    void a_file_without_one_gets_the_usual_and_says_so() throws Exception {
        try (Job job = open(pdf(null, null), Job.Choices.NONE)) {
            assertThat(job.condition().name()).isEqualTo("FOGRA39L");
            assertThat(page(job).notes())
                    .anyMatch(n -> n.contains("states no print condition") && n.contains("FOGRA39L"));
        }
    }

    @Test
    void a_profile_that_is_not_of_process_inks_is_named_in_a_note() throws Exception {
        byte[] rgb = java.awt.color.ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_sRGB)
                .getData();
        try (Job job = open(pdf(rgb, "A screen"), Job.Choices.NONE)) {
            assertThat(job.condition().name()).isEqualTo("FOGRA39L");
            assertThat(page(job).notes())
                    .anyMatch(n -> n.contains("A screen") && n.contains("3 components") && n.contains("FOGRA39L"));
        }
    }

    @Test
    void a_profile_with_a_damaged_table_is_named_in_a_note_with_its_tag() throws Exception {
        byte[] press = TestProfile.bytes();
        ByteBuffer in = ByteBuffer.wrap(press);
        for (int at = 132; at < 132 + 12 * in.getInt(128); at += 12) {
            if (new String(press, at, 4, StandardCharsets.US_ASCII).equals("A2B1")) {
                in.put(in.getInt(at + 4) + 10, (byte) 255); // nodes along each ink
            }
        }
        try (Job job = open(pdf(press, "Regatta press"), Job.Choices.NONE)) {
            assertThat(job.condition().name()).isEqualTo("FOGRA39L");
            assertThat(page(job).notes())
                    .anyMatch(n -> n.contains("Regatta press: ")
                            && n.contains("its tag A2B1 holds a table of [255")
                            && n.contains("shown as FOGRA39L"));
        }
    }

    @Test
    void a_condition_that_is_only_named_is_used_where_it_is_bundled() throws Exception {
        try (Job job = open(pdf(null, "TR006"), Job.Choices.NONE)) {
            assertThat(job.condition().name()).isEqualTo("TR006");
            assertThat(page(job).notes()).noneMatch(n -> n.contains("print condition"));
        }
        try (Job job = open(pdf(null, "Somewhere"), Job.Choices.NONE)) {
            assertThat(page(job).notes()).anyMatch(n -> n.contains("'Somewhere'") && n.contains("only named"));
        }
    }

    @Test
    void the_users_choice_comes_first_and_changes_the_separation_of_rgb() throws Exception {
        Path file = pdf(LittleCmsProfile.bytes(), "Regatta press");
        try (Job own = open(file, Job.Choices.NONE);
                Job chosen = open(file, new Job.Choices("TR006", null))) {
            assertThat(chosen.condition().name()).isEqualTo("TR006");
            double a = InkReport.of(page(own), new Cancel(), Progress.NONE)
                    .inks()
                    .get(1)
                    .meanTint();
            double b = InkReport.of(page(chosen), new Cancel(), Progress.NONE)
                    .inks()
                    .get(1)
                    .meanTint();
            assertThat(a).isGreaterThan(0);
            assertThat(Math.abs(a - b)).isGreaterThan(0.0005);
        }
        assertThatThrownBy(() -> open(file, new Job.Choices("nowhere", null))).isInstanceOf(Refusal.class);
    }

    /** ISO 32000-2 §14.11.5: what a page states goes before what the file states. */
    @Test
    void a_page_may_state_a_condition_of_its_own() throws Exception {
        Path file = folder.resolve("pages.pdf");
        try (PDDocument document = new PDDocument()) {
            for (String name : new String[] {"TR006", null}) {
                PDPage page = new PDPage();
                document.addPage(page);
                if (name != null) {
                    page.getCOSObject().setItem(COSName.OUTPUT_INTENTS, named(name));
                }
            }
            document.getDocumentCatalog().getCOSObject().setItem(COSName.OUTPUT_INTENTS, named("FOGRA39L"));
            document.save(file.toFile());
        }
        try (Job job = open(file, Job.Choices.NONE);
                Job chosen = open(file, new Job.Choices("FOGRA39L", null))) {
            assertThat(page(job).condition().name()).isEqualTo("TR006");
            assertThat(job.page(2, new Cancel(), Progress.NONE).condition().name())
                    .isEqualTo("FOGRA39L");
            assertThat(page(chosen).condition().name())
                    .as("the user's word wins")
                    .isEqualTo("FOGRA39L");
        }
    }

    private static COSArray named(String condition) {
        COSDictionary intent = new COSDictionary();
        intent.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
        intent.setItem(COSName.S, COSName.getPDFName("GTS_PDFX"));
        intent.setString(COSName.OUTPUT_CONDITION_IDENTIFIER, condition);
        COSArray intents = new COSArray();
        intents.add(intent);
        return intents;
    }

    private static PageJob page(Job job) throws Refusal {
        return job.page(1, new Cancel(), Progress.NONE);
    }

    private static Job open(Path file, Job.Choices choices) throws Refusal {
        return Job.open(file, choices, new Cancel(), Progress.NONE);
    }

    /** One page with a brown DeviceRGB rectangle; with an output intent of this name and profile unless null. */
    private Path pdf(byte[] profile, String name) throws IOException {
        Path file = folder.resolve("intent-" + name + ".pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.setNonStrokingColor(0.5f, 0.4f, 0.3f);
                content.addRect(100, 100, 300, 300);
                content.fill();
            }
            if (profile != null) {
                try (InputStream in = new ByteArrayInputStream(profile)) {
                    PDOutputIntent intent = new PDOutputIntent(document, in);
                    intent.setOutputConditionIdentifier(name);
                    document.getDocumentCatalog().addOutputIntent(intent);
                }
            } else if (name != null) {
                document.getDocumentCatalog().getCOSObject().setItem(COSName.OUTPUT_INTENTS, named(name));
            }
            document.save(file.toFile());
        }
        return file;
    }

    @Test
    void the_paper_of_a_chosen_condition_is_its_own() throws Exception {
        try (Job job = open(pdf(null, null), new Job.Choices("TR006", null))) {
            assertThat(Cie.deltaE76(job.condition().paper(), new Lab(95, 0, -2)))
                    .isLessThan(2);
        }
    }
}
