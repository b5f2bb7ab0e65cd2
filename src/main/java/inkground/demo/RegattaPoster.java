package inkground.demo;

import java.awt.geom.Path2D;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The A3 poster: process inks only, 5 mm bleed, marks outside. What a proofer should notice in it: the title is knocked out
 * to the paper, the ticket panel is white paint on bare paper and prints nothing, the small type overprints, the picture
 * sits at 320 ppi. Lengths are in mm from the lower left corner of the trim.
 */
final class RegattaPoster {
    private static final double WIDTH = 297;
    private static final double HEIGHT = 420;
    private static final double BLEED = 5;
    private static final double MARGIN = 16;
    /** Where the drawing ends and the bare paper of the foot begins. */
    private static final double FOOT = 70;

    private static final double HORIZON = 196;
    private static final double SUN_X = 150;
    private static final double SUN_Y = 222;

    private static final String PLACE = "Boathouse meadow, Mill Reach. Racing from nine; prize-giving at five.";
    private static final List<String> SMALL = List.of(
            "Entries close on 30 May. Spectators free; bring a blanket.",
            "Eights, fours, quads, doubles and singles over 900 metres, side by side.",
            "The club, the regatta and the river are invented; so are the herons.");
    private static final String CREDIT = "Small type in black, set to overprint";

    private final PdfParts parts = new PdfParts("Mill Reach Regatta: poster", WIDTH + 2 * MARGIN, HEIGHT + 2 * MARGIN);
    private final Content page = new Content();
    private final Lettering bold = new Lettering(.17, .2);
    private final Lettering light = new Lettering(.12, .26);

    private RegattaPoster() {}

    static byte[] pdf() throws IOException {
        RegattaPoster poster = new RegattaPoster();
        try (PdfParts parts = poster.parts) {
            poster.boxes();
            PDType0Font font = parts.font(PLACE + String.join("", SMALL) + CREDIT);
            COSName type = parts.add(COSName.FONT, "Type", font.getCOSObject());
            double scale = PdfParts.PT_PER_MM;
            poster.page.save().transform(scale, 0, 0, scale, MARGIN * scale, MARGIN * scale);
            poster.page.save().clip(Brush.box(-BLEED, FOOT, WIDTH + 2 * BLEED, HEIGHT + BLEED - FOOT));
            poster.skyAndLand();
            poster.mill();
            poster.river();
            poster.boats();
            poster.foreground();
            poster.title();
            poster.page.restore();
            poster.foot(type, font);
            poster.marks();
            poster.page.restore();
            return parts.finish(poster.page, font);
        }
    }

    private void boxes() {
        parts.page().setTrimBox(PdfParts.box(MARGIN, MARGIN, WIDTH, HEIGHT));
        parts.page().setBleedBox(PdfParts.box(MARGIN - BLEED, MARGIN - BLEED, WIDTH + 2 * BLEED, HEIGHT + 2 * BLEED));
        COSDictionary intent = new COSDictionary();
        intent.setItem(COSName.TYPE, COSName.getPDFName("OutputIntent"));
        intent.setItem(COSName.S, COSName.getPDFName("GTS_PDFX"));
        intent.setItem(COSName.OUTPUT_CONDITION_IDENTIFIER, new COSString("FOGRA39"));
        intent.setItem(COSName.REGISTRY_NAME, new COSString("http://www.color.org"));
        intent.setItem(COSName.INFO, new COSString("Offset on coated paper, ISO 12647-2"));
        COSArray intents = new COSArray();
        intents.add(intent);
        parts.document().getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("OutputIntents"), intents);
    }

    private void skyAndLand() {
        COSName sky = parts.shading(
                "Sky",
                new double[] {SUN_X, SUN_Y, 0, SUN_X, SUN_Y, 190},
                List.of(
                        new PdfParts.Stop(0, 0, 6, 30, 0),
                        new PdfParts.Stop(.24, 0, 18, 50, 0),
                        new PdfParts.Stop(.42, 2, 42, 48, 0),
                        new PdfParts.Stop(.62, 40, 50, 30, 8),
                        new PdfParts.Stop(.82, 82, 58, 35, 22),
                        new PdfParts.Stop(1, 95, 68, 45, 42)));
        page.shade(sky);
        COSName sun = parts.shading(
                "Sun",
                new double[] {SUN_X, SUN_Y + 14, 0, SUN_X, SUN_Y, 37},
                List.of(new PdfParts.Stop(0, 0, 0, 26, 0), new PdfParts.Stop(1, 0, 26, 78, 0)));
        page.save().clip(Brush.disc(SUN_X, SUN_Y, 36)).shade(sun).restore();
        birds();
        page.cmyk(32, 42, 34, 8)
                .fill(Brush.hill(
                        HORIZON - 2,
                        -8,
                        224,
                        22,
                        240,
                        52,
                        236,
                        90,
                        218,
                        128,
                        206,
                        170,
                        212,
                        212,
                        236,
                        252,
                        249,
                        284,
                        238,
                        306,
                        230));
        page.cmyk(58, 46, 38, 22)
                .fill(Brush.hill(
                        HORIZON - 2,
                        -8,
                        216,
                        30,
                        222,
                        68,
                        213,
                        104,
                        200,
                        146,
                        197,
                        196,
                        206,
                        236,
                        224,
                        272,
                        230,
                        306,
                        214));
        page.cmyk(78, 50, 58, 40)
                .fill(Brush.hill(
                        HORIZON - 4,
                        -8,
                        210,
                        24,
                        212,
                        58,
                        207,
                        92,
                        199,
                        132,
                        197.4,
                        182,
                        198,
                        222,
                        206,
                        264,
                        212,
                        306,
                        204));
    }

    private void birds() {
        page.cmyk(70, 55, 40, 30);
        double[][] flock = {{222, 282, 7}, {238, 290, 6}, {236, 275, 5}, {252, 284, 4.4}};
        for (double[] bird : flock) {
            page.fill(Brush.place(
                    Brush.taper(-1.6, .6, .02, -.8, .75, .16, 0, .1, .2, .8, .8, .16, 1.6, .5, .02),
                    bird[2],
                    bird[2],
                    0,
                    bird[0],
                    bird[1]));
        }
    }

    private void mill() {
        page.save().move(34, 203);
        page.cmyk(86, 60, 60, 62);
        for (double[] tree :
                new double[][] {{-27, 34, 4.4}, {-18, 44, 5}, {-9, 37, 4.4}, {49, 30, 4.2}, {57, 23, 3.6}}) {
            page.fill(Brush.blob(
                    tree[0],
                    tree[1],
                    tree[0] + tree[2] * .75,
                    tree[1] * .62,
                    tree[0] + tree[2],
                    tree[1] * .26,
                    tree[0],
                    -4,
                    tree[0] - tree[2],
                    tree[1] * .26,
                    tree[0] - tree[2] * .75,
                    tree[1] * .62));
        }
        page.cmyk(60, 62, 52, 48).fill(Brush.polygon(0, -6, 0, 22, 30, 22, 30, -6));
        page.cmyk(42, 62, 58, 30).fill(Brush.polygon(30, -6, 30, 14, 46, 14, 46, -6));
        page.cmyk(72, 66, 58, 66).fill(Brush.polygon(-2.5, 21, 6, 33, 24, 33, 32.5, 21));
        page.fill(Brush.polygon(29, 13.4, 33, 20, 43, 20, 48, 13.4)).fill(Brush.box(20, 30, 4, 9));
        page.cmyk(0, 18, 62, 0);
        for (double[] window : new double[][] {{5, 13}, {13, 13}, {21, 13}, {5, 4}, {21, 4}, {36, 7}}) {
            page.fill(Brush.box(window[0], window[1], 2.8, 4.2));
        }
        wheel(51, -1, 9.5);
        page.restore();
    }

    private void wheel(double x, double y, double r) {
        page.cmyk(80, 66, 60, 74).fillEvenOdd(Brush.ring(x, y, r, r - 1.3)).fill(Brush.disc(x, y, 1.4));
        for (int i = 0; i < 12; i++) {
            page.fill(Brush.place(Brush.box(0, -.35, r + 1.4, .7), 1, 1, 30 * i + 8, x, y));
        }
    }

    private void river() {
        Path2D bank = new Path2D.Double(Brush.box(-8, FOOT - 2, WIDTH + 16, HORIZON - FOOT + 1));
        COSName water = parts.shading(
                "Water",
                new double[] {0, HORIZON, 0, FOOT},
                List.of(
                        new PdfParts.Stop(0, 4, 36, 46, 0),
                        new PdfParts.Stop(.22, 30, 46, 34, 5),
                        new PdfParts.Stop(.55, 78, 55, 34, 20),
                        new PdfParts.Stop(1, 95, 66, 45, 46)));
        page.save().clip(bank).shade(water).restore();
        page.cmyk(70, 54, 44, 34)
                .fill(Brush.blob(-10, 197, 30, 196, 80, 196.5, 112, 196, 90, 192, 50, 188, 10, 182, -10, 180));
        page.cmyk(62, 50, 42, 24)
                .fill(Brush.blob(306, 197, 260, 196.5, 210, 196.5, 176, 196, 214, 193, 256, 190, 306, 186));
        glitter();
    }

    /** The sun's broken reflection, and the long low waves beside it. */
    private void glitter() {
        double y = HORIZON - 2.4;
        for (int i = 0; i < 26; i++) {
            double near = i / 25.0;
            double half = (33 - 20 * near) * (i % 2 == 0 ? 1 : .68) * (i % 5 == 3 ? .6 : 1);
            double shift = 5 * Math.sin(i * 2.4) * (0.4 + near);
            page.cmyk(0, (int) (14 + 20 * near), (int) (48 + 14 * near), 0);
            page.fill(Brush.taper(
                    SUN_X + shift - half, y, .05, SUN_X + shift, y, 1.1 + 1.3 * near, SUN_X + shift + half, y, .05));
            y -= 2.5 + 2.2 * near;
        }
        for (int i = 0; i < 34; i++) {
            double near = (i % 17) / 16.0;
            double cx = i < 17 ? 12 + (i * 37) % 84 : 205 + (i * 41) % 90;
            double cy = HORIZON - 8 - 100 * near;
            double half = 10 + 16 * near;
            page.cmyk((int) (26 + 42 * near), (int) (40 + 4 * near), (int) (36 - 4 * near), (int) (2 + 10 * near));
            page.fill(Brush.taper(cx - half, cy, .05, cx, cy + .2, .6 + near, cx + half, cy, .05));
        }
    }

    private void boats() {
        boat(new Crew(1), 176, 176, .5, false);
        boat(new Crew(2), 52, 168, .62, false);
        boat(new Crew(8), 20, 134, 1.22, true);
    }

    private void boat(Crew crew, double x, double y, double scale, boolean clubColours) {
        page.save().transform(scale, 0, 0, scale, x, y);
        reflection(crew);
        page.cmyk(0, 10, 30, 20);
        crew.shafts(false).forEach(page::fill);
        page.cmyk(0, 84, 78, 12);
        crew.blades(false).forEach(page::fill);
        page.cmyk(clubColours ? 10 : 78, clubColours ? 92 : 55, clubColours ? 82 : 45, clubColours ? 18 : 50)
                .fill(crew.hull());
        page.cmyk(0, 4, 18, 0).fill(crew.stripe());
        page.cmyk(18, 52, 58, 22);
        crew.skin().forEach(page::fill);
        page.cmyk(clubColours ? 0 : 90, clubColours ? 4 : 70, clubColours ? 14 : 50, clubColours ? 0 : 56);
        crew.suits().forEach(page::fill);
        page.cmyk(0, 6, 22, 0);
        crew.shafts(true).forEach(page::fill);
        page.cmyk(0, 88, 80, 6);
        crew.blades(true).forEach(page::fill);
        page.cmyk(6, 20, 30, 0);
        crew.splashes().forEach(page::fill);
        page.restore();
    }

    /** The crew upside down in the water, cut into bars by the waves. */
    private void reflection(Crew crew) {
        Path2D bars = new Path2D.Double();
        for (double y = -1.2; y > -15; y -= 1.7) {
            bars.append(Brush.box(-6, y + y * .02, crew.length() + 12, 1.05 + y * .035), false);
        }
        page.save().clip(bars).transform(1, 0, 0, -1, 0, -.6).cmyk(84, 62, 44, 50);
        page.fill(crew.hull());
        crew.suits().forEach(page::fill);
        crew.skin().forEach(page::fill);
        page.restore();
    }

    private void foreground() {
        reeds(-6, 46, 17, 70, 11);
        page.cmyk(84, 62, 66, 62)
                .fill(Brush.blob(
                        174, FOOT - 4, 190, FOOT + 6, 214, FOOT + 9, 246, FOOT + 10, 276, FOOT + 13, 310, FOOT + 16,
                        312, FOOT - 6));
        page.save().transform(.72, 0, 0, .72, 198, FOOT + 8);
        page.cmyk(30, 52, 66, 30).fill(Heron.legs());
        page.cmyk(38, 26, 18, 6).fill(Heron.body());
        page.cmyk(10, 8, 10, 0).fill(Heron.neck());
        page.cmyk(4, 4, 8, 0).fill(Heron.head());
        page.cmyk(0, 42, 86, 4).fill(Heron.beak());
        page.cmyk(82, 66, 46, 62).fill(Heron.crest());
        page.cmyk(58, 40, 26, 20).fill(Heron.wing());
        page.cmyk(80, 62, 42, 50);
        Heron.feathers().forEach(page::fill);
        page.cmyk(4, 4, 8, 0);
        Heron.plumes().forEach(page::fill);
        page.cmyk(0, 26, 86, 0).fill(Heron.eye());
        page.cmyk(60, 50, 50, 100).fill(Heron.pupil());
        page.restore();
        reeds(252, 306, 20, 84, 5);
        reeds(178, 226, 12, 30, 3);
    }

    /** Reeds and bulrushes between two places along the foot. */
    private void reeds(double from, double to, int count, double height, int seed) {
        for (int i = 0; i < count; i++) {
            double unit = Math.abs(Math.sin(seed * 12.9898 + i * 78.233)) * 43758.5453 % 1;
            double x = from + (to - from) * (i + unit * .8) / count;
            double tall = height * (.5 + .5 * unit);
            double lean = (unit - .5) * tall * .34;
            page.cmyk(86, 58, 66, (int) (52 + 24 * unit));
            page.fill(Brush.taper(x, FOOT - 4, 2.2, x + lean * .2, FOOT + tall * .5, 1.8, x + lean, FOOT + tall, .1));
            if (i % 3 == 1) {
                double top = FOOT + tall * 1.02;
                page.fill(Brush.taper(x, FOOT - 4, .9, x - lean * .3, FOOT + tall * .5, .9, x - lean * .5, top, .8));
                page.cmyk(44, 72, 78, 56)
                        .fill(Brush.taper(
                                x - lean * .48,
                                top - 3,
                                .6,
                                x - lean * .5,
                                top + 2,
                                3.4,
                                x - lean * .52,
                                top + 11,
                                3.2,
                                x - lean * .54,
                                top + 15,
                                .6));
            }
        }
    }

    /** Knocked out: white paint over solid ink, so that the paper shows. */
    private void title() {
        page.cmyk(0, 0, 0, 0);
        page.fill(bold.fitted("MILL REACH", 20, 358, 257));
        page.fill(bold.fitted("REGATTA", 20, 306, 257));
    }

    private void foot(COSName type, PDType0Font font) throws IOException {
        COSDictionary over = new COSDictionary();
        over.setItem(COSName.OP, COSBoolean.TRUE);
        over.setItem(COSName.OP_NS, COSBoolean.TRUE);
        over.setItem(COSName.OPM, COSInteger.ONE);
        COSName overprint = parts.add(COSName.EXT_G_STATE, "Overprint", over);

        // White paint on bare paper: seen on screen as nothing, on the plates as nothing, and yet it is in the file.
        page.cmyk(0, 0, 0, 0).fill(Brush.box(90, 10, 193, 32));

        int columns = 819;
        int rows = 567;
        page.image(parts.image("River", RiverPicture.cmyk(columns, rows), columns, rows), 20, 14, 65, 45);
        page.cmyk(95, 68, 45, 42).fill(bold.fitted("SATURDAY 13 JUNE", 96, 43.4, 181));
        page.cmyk(8, 92, 82, 6).fill(light.set("HERON REACH ROWING CLUB", 96, 35.4, 5.2));
        // A tint that the overprinting type runs across: without overprint there would be white slivers round the
        // letters.
        page.cmyk(0, 12, 40, 0).fill(Brush.box(96, 14, 181, 13.2));
        page.save().state(overprint).cmyk(0, 0, 0, 100);
        page.text(type, font, 4.2, 96, 29.4, PLACE);
        for (int i = 0; i < SMALL.size(); i++) {
            page.text(type, font, 3.2, 99, 23 - 3.7 * i, SMALL.get(i));
        }
        page.text(type, font, 2.3, 20, 10.6, CREDIT);
        page.restore();
    }

    /** Crop and register marks, outside the bleed, in all separations at once (ISO 32000-2 §8.6.6.4). */
    private void marks() {
        COSName all = parts.separation(
                "Register", "All", COSName.DEVICECMYK, new float[] {0, 0, 0, 0}, new float[] {1, 1, 1, 1});
        page.strokeSpot(all, 1);
        double near = BLEED + 1;
        double far = MARGIN - 2;
        Path2D crops = new Path2D.Double();
        for (double x : new double[] {0, WIDTH}) {
            crops.append(Brush.line(x, -near, x, -far), false);
            crops.append(Brush.line(x, HEIGHT + near, x, HEIGHT + far), false);
        }
        for (double y : new double[] {0, HEIGHT}) {
            crops.append(Brush.line(-near, y, -far, y), false);
            crops.append(Brush.line(WIDTH + near, y, WIDTH + far, y), false);
        }
        double middle = (near + far) / 2;
        register(crops, WIDTH / 2, -middle);
        register(crops, WIDTH / 2, HEIGHT + middle);
        register(crops, -middle, HEIGHT / 2);
        register(crops, WIDTH + middle, HEIGHT / 2);
        page.stroke(crops, .0882); // 0.25 pt
    }

    private static void register(Path2D marks, double x, double y) {
        marks.append(Brush.disc(x, y, 2), false);
        marks.append(Brush.line(x - 3.4, y, x + 3.4, y), false);
        marks.append(Brush.line(x, y - 3.4, x, y + 3.4), false);
    }
}
