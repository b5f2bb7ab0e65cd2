package inkground.demo;

import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.io.IOException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentGroup;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentProperties;

/**
 * The crew shirt: three spot inks on a coloured garment. What a proofer should notice in it: the garment's colour is painted
 * in under everything, on a layer that prints; white stands there as bare cloth, as a knock-out, as white paint and as white
 * ink; one line is too thin to print. Lengths are in mm.
 */
final class RegattaShirt {
    private static final double WIDTH = 300;
    private static final double HEIGHT = 400;
    private static final double CX = 150;
    private static final double CY = 253;

    private static final String LINE = "An invented club on an invented river";

    private final PdfParts parts = new PdfParts("Mill Reach Regatta: crew shirt", WIDTH, HEIGHT);
    private final Content page = new Content();
    private final Lettering bold = new Lettering(.18, .2);
    private final Lettering light = new Lettering(.13, .3);
    private final COSName red =
            parts.separation("Red", "Reach Red", PdfParts.lab(), new float[] {100, 0, 0}, new float[] {44, 62, 38});
    private final COSName cream = parts.separation(
            "Cream", "Lock Gate Cream", COSName.DEVICECMYK, new float[] {0, 0, 0, 0}, new float[] {0, .05f, .24f, .02f
            });
    private final COSName white =
            parts.separation("White", "White", PdfParts.lab(), new float[] {100, 0, 0}, new float[] {96, 0, -1});

    private RegattaShirt() {}

    static byte[] pdf() throws IOException {
        RegattaShirt shirt = new RegattaShirt();
        try (PdfParts parts = shirt.parts) {
            parts.page().setTrimBox(PdfParts.box(0, 0, WIDTH, HEIGHT));
            PDType0Font font = parts.font(LINE);
            COSName type = parts.add(COSName.FONT, "Type", font.getCOSObject());
            double scale = PdfParts.PT_PER_MM;
            shirt.page.save().transform(scale, 0, 0, scale, 0, 0);
            shirt.ground();
            shirt.oars();
            shirt.badge();
            shirt.river();
            shirt.heron();
            shirt.words(type, font);
            shirt.page.restore();
            return parts.finish(shirt.page, font);
        }
    }

    /** The mistake: the shirt's colour as a process-coloured rectangle, meant for preview, left switched on. */
    private void ground() {
        PDOptionalContentGroup layer = new PDOptionalContentGroup("Shirt colour (preview)");
        PDOptionalContentProperties properties = new PDOptionalContentProperties();
        properties.addGroup(layer);
        properties.setGroupEnabled(layer, true);
        parts.document().getDocumentCatalog().setOCProperties(properties);
        COSName name = parts.add(COSName.PROPERTIES, "Preview", layer.getCOSObject());
        page.beginLayer(name)
                .rgb(.11, .19, .31)
                .fill(Brush.box(0, 0, WIDTH, HEIGHT))
                .endLayer();
    }

    private void oars() {
        for (int side : new int[] {-1, 1}) {
            page.save().transform(side, 0, 0, 1, CX, CY);
            page.save().transform(.70711, -.70711, .70711, .70711, 0, 0);
            page.spot(cream, 1)
                    .fill(Brush.taper(0, -164, 3.4, 0, -120, 4.2, 0, 60, 4.8, 0, 122, 4))
                    .fill(Brush.pill(-2.6, -168, 5.2, 5.2));
            page.spot(red, 1).fill(Brush.box(-2.9, -164, 5.8, 22)).fill(Brush.box(-3.4, 68, 6.8, 6));
            Path2D blade = Brush.blob(
                    0, 108, -7, 116, -13.5, 128, -14, 150, -13, 166, 0, 169, 13, 166, 14, 150, 13.5, 128, 7, 116);
            page.spot(cream, 1).fill(blade);
            Area chevron = new Area(Brush.polygon(-20, 132, 0, 146, 20, 132, 20, 142, 0, 156, -20, 142));
            chevron.intersect(new Area(blade));
            page.spot(red, 1).fill(new Path2D.Double(chevron));
            page.restore().restore();
        }
    }

    /** A ring with letters knocked out of it, true holes, so that the cloth is the letters' colour. */
    private void badge() {
        // White paint clears the oars' middle out of the badge: what was printed there is knocked out.
        page.cmyk(0, 0, 0, 0).fill(Brush.disc(CX, CY, 111));
        Area ring = new Area(Brush.disc(CX, CY, 109));
        ring.subtract(new Area(Brush.disc(CX, CY, 82)));
        ring.subtract(new Area(bold.round("HERON REACH", CX, CY, 88.6, 14, true)));
        ring.subtract(new Area(bold.round("ROWING CLUB", CX, CY, 102.4, 14, false)));
        for (int side : new int[] {-1, 1}) {
            ring.subtract(new Area(Brush.disc(CX + side * 95.5, CY, 3.6)));
        }
        page.spot(red, 1).fill(new Path2D.Double(ring));
        page.spot(cream, 1).fillEvenOdd(Brush.ring(CX, CY, 80, 77.5));
        // 0.1 mm: thinner than a screen holds.
        page.strokeSpot(cream, 1).stroke(Brush.disc(CX, CY, 75.6), .1);
    }

    /** Sun and water in tints of the spot inks. */
    private void river() {
        page.save().clip(Brush.disc(CX, CY, 73));
        page.spot(red, 1).fill(Brush.disc(CX - 22, CY - 6, 34));
        double[] tints = {1, .8, .6, .45, .3};
        for (int i = 0; i < tints.length; i++) {
            double y = CY - 22 - 11 * i;
            Path2D wave = new Path2D.Double();
            wave.moveTo(CX - 90, y);
            for (int k = 0; k < 9; k++) {
                double x = CX - 90 + 20 * k + (i % 2) * 10 - 10;
                wave.curveTo(x + 6, y + 6, x + 14, y + 6, x + 20, y);
            }
            wave.lineTo(CX + 100, CY - 90);
            wave.lineTo(CX - 90, CY - 90);
            wave.closePath();
            page.spot(i % 2 == 0 ? cream : red, tints[i]).fill(wave);
        }
        page.restore();
    }

    private void heron() {
        page.save().transform(.71, 0, 0, .71, CX - 34, CY - 66);
        page.spot(white, 1).fill(Heron.silhouette());
        page.spot(red, 1).fill(Heron.crest());
        page.spot(cream, 1).fill(Heron.beak());
        page.spot(red, .55).fill(Heron.wing());
        page.spot(red, 1);
        Heron.feathers().forEach(page::fill);
        // White paint, not white ink: the eye is a hole in the white down to the cloth.
        page.cmyk(0, 0, 0, 0).fill(Heron.eye());
        page.restore();
    }

    private void words(COSName type, PDType0Font font) throws IOException {
        page.spot(white, 1).fill(bold.fitted("MILL REACH", 32, 75, 236));
        page.spot(red, 1).fill(bold.fitted("REGATTA", 32, 27, 236));
        double half = light.width("CREW", 8) / 2;
        page.spot(cream, 1).fill(light.set("CREW", CX - half, 122, 8));
        page.fill(Brush.box(CX - half - 44, 125.2, 36, 1.6)).fill(Brush.box(CX + half + 8, 125.2, 36, 1.6));
        // White paint on nothing but the painted ground: a leftover that prints no ink.
        page.cmyk(0, 0, 0, 0).fill(Brush.pill(106, 11.6, 88, 8.4));
        page.spot(red, 1).text(type, font, 4.4, 112.6, 14.2, LINE);
    }
}
