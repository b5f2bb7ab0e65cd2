package inkground.handoff;

import static inkground.handoff.CasePdf.CREAM;
import static inkground.handoff.CasePdf.GARMENT;
import static inkground.handoff.CasePdf.GARMENT_STROKE;
import static inkground.handoff.CasePdf.RED;
import static inkground.handoff.CasePdf.RED_STROKE;
import static inkground.handoff.CasePdf.SHIRT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.Ghostscript;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Family;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Source;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.PageBox;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintConditions;
import inkground.plate.InkMapping;
import inkground.plate.InkPlanes;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Clean files, painted by us and by other renderers: nothing where the colour was seen, everything else as it was. */
class CleanFileTest {
    private static final Source SEEN = new Seen(0x1c304f, 1);
    private static final String INK = RED + "12 12 100 100 re f ";
    private static final String PLACED = "q 96 0 0 96 24 24 cm /I Do Q ";
    private static final String TEXT = "BT /F 40 Tf 10 60 Td (REACH) Tj ET ";

    static final Path REFERENCE = Path.of("src/test/resources/reference/clean");

    @TempDir
    Path folder;

    record Case(String name, CasePdf pdf, Source bare) {
        Case(String name, String content) {
            this(name, new CasePdf(content), SEEN);
        }

        String fileName() {
            return name.replace(' ', '-');
        }

        boolean popplerKnowsItsUnit() {
            return !name.contains("another unit");
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private static Case pixels(String name, CasePdf.Part part, String content) {
        return new Case(name, new CasePdf(content).with(part), SEEN);
    }

    static Stream<Case> cases() {
        String circle = "40 70 m 40 110 100 110 100 70 c 100 30 40 30 40 70 c h ";
        return Stream.of(
                new Case("a ground alone", GARMENT + "0 0 144 144 re f"),
                new Case("a ground beneath art", GARMENT + "0 0 144 144 re f " + INK + CREAM + circle + "f"),
                new Case("on top of ink", INK + "1 0 0 0 k 60 60 70 70 re f " + GARMENT + circle + "f"),
                new Case("between inks", INK + GARMENT + circle + "f " + CREAM + "60 20 30 100 re f"),
                new Case(
                        "two that overlap, one with a hole",
                        INK + GARMENT + "20 20 60 60 re 35 35 20 20 re f* 60 60 40 40 re f"),
                new Case("a self-crossing outline", INK + GARMENT + "20 20 m 110 100 l 110 20 l 20 100 l 70 10 l f"),
                new Case(
                        "a form used twice",
                        new CasePdf(INK + "q .5 0 0 .5 5 5 cm /Mark Do Q q .4 .2 -.2 .4 80 60 cm /Mark Do Q")
                                .form("Mark", CREAM + "0 0 144 80 re f " + GARMENT + circle + "f"),
                        SEEN),
                new Case(
                        "forms in forms",
                        new CasePdf("/Outer Do " + GARMENT + "50 0 20 144 re f")
                                .form("Outer", INK + "q .5 0 0 .5 40 40 cm /Inner Do Q")
                                .form("Inner", CREAM + "0 0 144 144 re f"),
                        SEEN),
                new Case(
                        "in an isolated group",
                        new CasePdf(INK + "/Group Do")
                                .group("Group", CREAM + "0 0 80 80 re f " + GARMENT + circle + "f"),
                        SEEN),
                new Case(
                        "inside a clip",
                        INK + "q " + circle + "W n " + GARMENT + "0 0 144 144 re f Q " + CREAM + "0 120 144 20 re f"),
                new Case(
                        "a fill that clips what follows",
                        INK + "q " + GARMENT + circle + "W f " + CREAM + "50 50 90 10 re f Q"),
                new Case("clipped ink beneath", "q " + circle + "W " + RED + "f Q " + GARMENT + "60 0 20 144 re f"),
                new Case(
                        "a dashed stroke", INK + GARMENT_STROKE + "[14 6] 3 d 1 J 9 w 20 20 m 60 140 80 0 130 120 c S"),
                new Case("a bare fill with an inked stroke", INK + GARMENT + "/Cream CS 1 SCN 8 w " + circle + "b"),
                new Case("an inked fill with a bare stroke", INK + CREAM + GARMENT_STROKE + "8 w " + circle + "B*"),
                new Case("strokes beneath", RED_STROKE + "12 w 10 10 m 130 130 l S " + GARMENT + circle + "f"),
                new Case("bare type", INK + GARMENT + TEXT + CREAM + "1 0 0 1 0 -40 cm " + TEXT),
                new Case("type beneath", RED + TEXT + GARMENT + circle + "f " + CREAM + "BT 20 120 Td (CREW) Tj ET"),
                new Case(
                        "bare and inked type in one text object",
                        INK + "BT /F 30 Tf 34 TL 10 100 Td " + GARMENT + "(MILL) Tj " + CREAM
                                + "T* (REACH) Tj 0 Tr (') ' ET"),
                new Case(
                        "a bare ink",
                        new CasePdf(INK + SHIRT + circle + "f " + CREAM + "0 0 60 60 re f"),
                        new InkNamed("Shirt")),
                new Case(
                        "a bare ink that overprints",
                        new CasePdf(INK + "/Over gs " + SHIRT + circle + "f"),
                        new InkNamed("Shirt")),
                new Case(
                        "transparent ink beneath",
                        "1 0 0 0 k 0 0 100 144 re f q /Half gs " + RED + "12 12 110 110 re f Q " + GARMENT + circle
                                + "f"),
                pixels("an image with hard edges", CaseParts.rgbImage("I", 0), PLACED),
                pixels("an image with hard edges over ink", CaseParts.rgbImage("I", 0), INK + PLACED),
                pixels("an image with soft edges", CaseParts.rgbImage("I", 2), PLACED),
                pixels("an image with soft edges over ink", CaseParts.rgbImage("I", 2), INK + PLACED),
                pixels("an image with a palette", CaseParts.paletteImage("I"), INK + PLACED),
                new Case(
                        "an image in four inks",
                        new CasePdf(INK + PLACED).with(CaseParts.cmykImage("I", 2)),
                        new Stated(Family.CMYK, List.of(230 / 255.0, 179 / 255.0, 77 / 255.0, 77 / 255.0))),
                new Case(
                        "an image in two inks of which one is bare",
                        new CasePdf(CREAM + "12 12 100 100 re f " + PLACED).with(CaseParts.twoInkImage("I")),
                        new InkNamed("Shirt")),
                pixels("an image with a hard mask", CaseParts.cutOut("I", 0), INK + PLACED),
                pixels("an image with a soft mask", CaseParts.cutOut("I", 3), PLACED),
                pixels(
                        "an image used twice and clipped",
                        CaseParts.rgbImage("I", 2),
                        INK + "q " + circle + "W n " + PLACED + "Q q .4 .2 -.2 .4 70 20 cm " + PLACED + "Q"),
                new Case(
                        "an image in a form used twice",
                        new CasePdf(INK + "q .5 0 0 .5 5 5 cm /Mark Do Q q .4 .2 -.2 .4 80 60 cm /Mark Do Q")
                                .form("Mark", CREAM + "0 0 144 80 re f " + PLACED)
                                .with(CaseParts.rgbImage("I", 2)),
                        SEEN),
                new Case(
                        "an inline image",
                        INK + "q 80 0 0 50 20 20 cm BI /W 2 /H 1 /BPC 8 /CS /RGB ID \034\060\117\305\044\056 EI Q"),
                new Case(
                        "a bitmap over ink",
                        INK + GARMENT + "q 64 0 0 64 30 30 cm BI /W 8 /H 4 /BPC 1 /IM true ID \360\017\252\377 EI Q"),
                pixels(
                        "a pattern of dots",
                        CaseParts.tiling("P", CREAM + "0 0 24 24 re f " + GARMENT + "4 4 10 12 re f"),
                        INK + "/Pattern cs /P scn " + circle + "f"),
                pixels(
                        "a pattern alone in its cell",
                        CaseParts.tiling("P", GARMENT + "4 4 10 12 re f"),
                        INK + "/Pattern cs /P scn " + circle + "f"),
                new Case(
                        "a pattern in a form used twice",
                        new CasePdf(INK + "q .5 0 0 .5 5 5 cm /Mark Do Q q .4 .2 -.2 .4 80 60 cm /Mark Do Q")
                                .form("Mark", "/Pattern cs /P scn 0 0 144 144 re f")
                                .with(CaseParts.tiling("P", CREAM + "0 0 24 24 re f " + GARMENT + "4 4 10 12 re f")),
                        SEEN),
                new Case(
                        "a pattern with an image",
                        new CasePdf(INK + "/Pattern cs /P scn " + circle + "f")
                                .with(CaseParts.rgbImage("I", 2))
                                .with(CaseParts.tiling("P", "q 24 0 0 24 0 0 cm /I Do Q")),
                        SEEN),
                pixels(
                        "type and a stroke in a pattern",
                        CaseParts.tiling("P", CREAM + "0 0 24 24 re f " + GARMENT + "0 0 24 10 re f"),
                        INK + "/Pattern cs /P scn " + TEXT + "/Pattern CS /P SCN 10 w 10 30 m 130 40 l S"),
                pixels("a gradient", CaseParts.gradient("G", false, true), "/Pattern cs /G scn " + circle + "f"),
                pixels(
                        "a gradient over ink",
                        CaseParts.gradient("G", false, true),
                        INK + "/Pattern cs /G scn " + circle + "f"),
                pixels(
                        "a gradient that ends over ink",
                        CaseParts.gradient("G", false, false),
                        INK + "/Pattern cs /G scn 6 6 130 130 re f"),
                pixels(
                        "a round gradient over ink",
                        CaseParts.gradient("G", true, false),
                        INK + "/Pattern cs /G scn 6 6 130 130 re f"),
                pixels(
                        "a gradient painted by itself",
                        CaseParts.gradient("G", false, true),
                        INK + "q " + circle + "W n .8 .1 -.1 .8 5 5 cm /G sh Q"),
                pixels(
                        "a gradient with an inked stroke",
                        CaseParts.gradient("G", false, true),
                        INK + "/Pattern cs /G scn /Cream CS 1 SCN 8 w " + circle + "b"),
                pixels(
                        "type and a stroke in a gradient",
                        CaseParts.gradient("G", false, true),
                        INK + "/Pattern cs /G scn " + TEXT + "/Pattern CS /G SCN 10 w 10 30 m 130 40 l S"),
                new Case(
                        "bare meshes beneath art",
                        new CasePdf("/M4 sh /M5 sh /M6 sh /M7 sh " + INK + CREAM + circle + "f")
                                .with(CaseParts.mesh("M4", 4, 0, 0, 0, 0))
                                .with(CaseParts.mesh("M5", 5, 0, 0, 0, 0))
                                .with(CaseParts.mesh("M6", 6, 0, 0, 0, 0))
                                .with(CaseParts.mesh("M7", 7, 0, 0, 0, 0)),
                        SEEN),
                new Case("a turned page", new CasePdf(INK + GARMENT + circle + "f").turned(1), SEEN),
                new Case(
                        "a turned page of another unit", new CasePdf(INK + GARMENT + circle + "f").turned(1.5f), SEEN));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void theCleanFilePrintsAsTheArtworkWithTheColourBare(Case one) throws Exception {
        Path clean = clean(one);
        try (PdfArtwork before = open(folder.resolve("art.pdf"));
                PdfArtwork after = open(clean)) {
            PlaneComparison comparison = new PlaneComparison();
            comparison.add(planes(before, bare(one.bare())), planes(after, ColourAssignment.NONE));
            assertThat(comparison.differing()).isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void ghostscriptSeparatesNothingThereAndAllElseAsBefore(Case one) throws Exception {
        assumeTrue(Ghostscript.present(), "Ghostscript is not installed");
        Path clean = clean(one);
        OtherRenderers.compareSeparations(folder.resolve("art.pdf"), clean, bareMap(one), bareInk(one));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void popplerLeavesItTransparentAndAllElseAsBefore(Case one) throws Exception {
        assumeTrue(one.popplerKnowsItsUnit(), "Poppler takes no notice of UserUnit");
        assumeTrue(!one.name().contains("overprints"), "a picture does not tell what lies beneath");
        assumeTrue(OtherRenderers.poppler(), "Poppler is not installed");
        Path clean = clean(one);
        OtherRenderers.comparePictures(folder.resolve("art.pdf"), clean, bareMap(one));
    }

    /** Needs no other program: what Ghostscript and Poppler made was committed, see PROVENANCE.txt beside it. */
    @ParameterizedTest
    @MethodSource("cases")
    void theCleanFileIsTheOneThatOtherRenderersPaintedForTheReferences(Case one) throws Exception {
        try (PdfArtwork now = open(clean(one))) {
            InkPlanes planes = planes(now, ColourAssignment.NONE);
            Path pdf = REFERENCE.resolve(one.fileName() + ".pdf");
            if (Files.exists(pdf)) { // left out where a font makes it large
                try (PdfArtwork then = open(pdf)) {
                    PlaneComparison comparison = new PlaneComparison();
                    comparison.add(planes(then, ColourAssignment.NONE), planes);
                    assertThat(comparison.differing()).isEmpty();
                }
            }
            InkPlanes fine = planes(now, ColourAssignment.NONE, CleanReferences.OVER);
            compareSeparations(one, fine);
            if (one.popplerKnowsItsUnit()) {
                Path picture = REFERENCE.resolve(one.fileName() + ".png");
                CommittedPlanes.compare(
                        CommittedPlanes.averaged(fine, fine.markPlane(), CleanReferences.OVER),
                        CommittedPlanes.opacity(picture),
                        CommittedPlanes.EXACT,
                        CommittedPlanes.PLACED_EDGE,
                        picture.getFileName() + ", opacity");
            }
        }
    }

    /** An ink of which nothing is printed has no separation. */
    private static void compareSeparations(Case one, InkPlanes planes) throws Exception {
        for (int p = 0; p < planes.inks().size(); p++) {
            String file = one.fileName() + "(" + planes.inks().get(p).name() + ").tif";
            int[][] ours = CommittedPlanes.averaged(planes, p, CleanReferences.OVER);
            int[][] theirs = CommittedPlanes.separation(REFERENCE.resolve(file));
            CommittedPlanes.compare(
                    ours,
                    theirs == null ? new int[ours.length][ours[0].length] : theirs,
                    p < 4 && one.pdf().isConverted() ? CommittedPlanes.CONVERTED : CommittedPlanes.EXACT,
                    CommittedPlanes.FAT_EDGE,
                    file);
        }
    }

    @Test
    void theDemoShirtComesOutClean() throws Exception {
        for (Source bare : new Source[] {SEEN, new InkNamed("Lock Gate Cream")}) {
            Path art = Files.copy(
                    Path.of("demo", "regatta-shirt.pdf"),
                    folder.resolve("art.pdf"),
                    java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            Path clean = folder.resolve("clean.pdf");
            write(art, bare, clean);
            Case shirt = new Case("shirt", null, bare);
            if (Ghostscript.present()) {
                OtherRenderers.compareSeparations(art, clean, bareMap(shirt), bareInk(shirt));
            }
            if (OtherRenderers.poppler()) {
                OtherRenderers.comparePictures(art, clean, bareMap(shirt));
            }
        }
    }

    @Test
    void typeStaysTypeAndInksBoxesAndLayersStay() throws Exception {
        Path art = Path.of("demo", "regatta-shirt.pdf");
        Path clean = folder.resolve("clean.pdf");
        write(art, SEEN, clean);
        try (PDDocument before = Loader.loadPDF(art.toFile());
                PDDocument after = Loader.loadPDF(clean.toFile());
                PdfArtwork a = open(art);
                PdfArtwork b = open(clean)) {
            assertThat(new PDFTextStripper().getText(after))
                    .isEqualTo(new PDFTextStripper().getText(before))
                    .isNotBlank();
            assertThat(b.pages()).isEqualTo(a.pages());
            assertThat(b.layers()).isEqualTo(a.layers()).isNotEmpty();
            assertThat(b.declaredColorants(1).stream().map(s -> s.name()))
                    .isEqualTo(
                            a.declaredColorants(1).stream().map(s -> s.name()).toList());
        }
    }

    static Stream<Case> refusals() {
        String circle = "40 40 60 60 re f ";
        return Stream.of(
                new Case("transparent", INK + "/Half gs " + GARMENT + circle),
                new Case("group", new CasePdf(INK + "/Half gs /Group Do").group("Group", GARMENT + circle), SEEN),
                new Case("overprints", INK + "/Over gs " + GARMENT + circle),
                new Case("nothing is painted", INK),
                new Case("the file does not carry", INK + "BT /Absent 40 Tf 10 60 Td " + GARMENT + "(AAA) Tj ET"),
                new Case("is a part of a gradient mesh", mesh(4), SEEN),
                new Case("is a part of a gradient mesh", mesh(5), SEEN),
                new Case("is a part of a gradient mesh", mesh(6), SEEN),
                new Case("is a part of a gradient mesh", mesh(7), SEEN),
                new Case(
                        "a gradient that ends, over other paint",
                        new CasePdf(INK + "/M sh").with(CaseParts.mesh("M", 7, 0, 0, 0, 0)),
                        SEEN),
                new Case(
                        "under other type",
                        "BT /F 40 Tf 10 60 Td " + CREAM + "(AAA) Tj 5 4 Td " + GARMENT + "(AAA) Tj 5 4 Td " + CREAM
                                + "(AAA) Tj ET"));
    }

    private static CasePdf mesh(int type) {
        return new CasePdf("/M sh " + INK).with(CaseParts.mesh("M", type, 0, 1, 2, 0));
    }

    /** What is refused says where, and what to do; the page's planes say that such a colour is not unmixed. */
    @Test
    void aBareColourInAMeshIsToldOnThePageAndRefusedInPlainWords() throws Exception {
        mesh(7).write(folder.resolve("art.pdf"));
        try (PdfArtwork artwork = open(folder.resolve("art.pdf"))) {
            var list = artwork.record(1, new Cancel(), Progress.NONE);
            var plate =
                    new Plate(list, InkMapping.of(List.of(), list, PrintConditions.bundled("FOGRA39L"), bare(SEEN)));
            plate.render(
                    PlateRequest.of(list.page().box(PageBox.MEDIA), 72, true, list.defaultLayers()),
                    new Cancel(),
                    Progress.NONE);
            assertThat(plate.approximations())
                    .extracting(note -> note.feature())
                    .contains("an assigned or bare colour in a gradient mesh");
        }
        assertThatThrownBy(() -> clean(new Case("mesh", mesh(7), SEEN)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("page 1: the bare colour is a part of a gradient mesh (")
                .hasMessageContaining("Change it there in the drawing program; nothing was written.");
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void whatCannotBeDoneTrulyIsRefusedAndNothingIsWritten(Case one) throws Exception {
        assertThatThrownBy(() -> clean(one)).isInstanceOf(Refusal.class).hasMessageContaining(one.name());
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(f -> f.getFileName().toString())).containsExactly("art.pdf");
        }
    }

    private Path clean(Case one) throws Exception {
        Path art = one.pdf().write(folder.resolve("art.pdf"));
        return write(art, one.bare(), folder.resolve("clean.pdf"));
    }

    static Path write(Path art, Source bare, Path clean) throws Exception {
        try (PdfArtwork artwork = open(art)) {
            CleanFile.Order order =
                    new CleanFile.Order(artwork, bare(bare), PrintConditions.bundled("FOGRA39L"), clean, true);
            CleanFile.Result result = CleanFile.write(order, new Cancel(), Progress.NONE);
            assertThat(result.removed()).isPositive();
        }
        return clean;
    }

    private static ColourAssignment bare(Source source) {
        return new ColourAssignment(List.of(new Rule(source, new Bare())));
    }

    private static String bareInk(Case one) {
        return one.bare() instanceof InkNamed ink ? ink.name() : null;
    }

    private static PdfArtwork open(Path file) throws Refusal {
        return (PdfArtwork) PdfArtwork.open(file, new Cancel(), Progress.NONE);
    }

    private static InkPlanes planes(PdfArtwork artwork, ColourAssignment assignment) throws Refusal {
        return planes(artwork, assignment, 1);
    }

    private static InkPlanes planes(PdfArtwork artwork, ColourAssignment assignment, int over) throws Refusal {
        var list = artwork.record(1, new Cancel(), Progress.NONE);
        InkMapping mapping =
                InkMapping.of(artwork.declaredColorants(1), list, PrintConditions.bundled("FOGRA39L"), assignment);
        PlateRequest request =
                PlateRequest.of(list.page().box(PageBox.MEDIA), over * OtherRenderers.DPI, true, list.defaultLayers());
        return new Plate(list, mapping).render(request, new Cancel(), Progress.NONE);
    }

    /** Where the colour is seen: whole pixels, and pixels that have nothing of it. */
    private OtherRenderers.BareMap bareMap(Case one) throws Refusal {
        try (PdfArtwork artwork = open(folder.resolve("art.pdf"))) {
            InkPlanes with = planes(artwork, ColourAssignment.NONE);
            InkPlanes without = planes(artwork, bare(one.bare()));
            return (x, y) -> with.get(with.markPlane(), x, y) - without.get(without.markPlane(), x, y);
        }
    }
}
