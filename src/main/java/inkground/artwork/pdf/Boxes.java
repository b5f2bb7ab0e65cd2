package inkground.artwork.pdf;

import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageTree;

/**
 * Geometry of one page: ISO 32000-2 §14.11.2 and table 31.
 *
 * @param info boxes in page space
 * @param userToPage from default user space to page space
 * @param mediaBoxMissing whether the file states no media box, so that US Letter was taken
 */
record Boxes(PageInfo info, Matrix userToPage, boolean mediaBoxMissing) {
    private static final double LIMIT_M = 20;
    private static final double M_PER_PT = Box.MM_PER_PT / 1000;
    private static final Box US_LETTER = new Box(0, 0, 612, 792);

    /** Reads a page's boxes; {@code fileName} is for messages. */
    static Boxes of(PDPage page, int number, String fileName) throws Refusal {
        COSDictionary dict = page.getCOSObject();
        Map<PageBox, Box> stated = stated(dict);
        boolean missing = !stated.containsKey(PageBox.MEDIA);
        Box media = missing ? US_LETTER : stated.get(PageBox.MEDIA);
        double unit = dict.getFloat(Cos.name("UserUnit"), 1);
        unit = unit > 0 && Double.isFinite(unit) ? unit : 1;
        check(media, unit, number, fileName);
        int rotation = rotation(page);
        Matrix toPage = userToPage(media, unit, rotation);
        Map<PageBox, Box> boxes = new EnumMap<>(PageBox.class);
        boxes.put(PageBox.MEDIA, toPage.bounds(media));
        Box crop = cut(stated.get(PageBox.CROP), media, media);
        boxes.put(PageBox.CROP, toPage.bounds(crop));
        for (PageBox which : EnumSet.of(PageBox.BLEED, PageBox.TRIM, PageBox.ART)) {
            boxes.put(which, toPage.bounds(cut(stated.get(which), media, crop)));
        }
        Set<PageBox> names = EnumSet.noneOf(PageBox.class);
        names.addAll(stated.keySet());
        return new Boxes(new PageInfo(number, boxes, names, rotation, unit), toPage, missing);
    }

    private static Map<PageBox, Box> stated(COSDictionary dict) {
        Map<PageBox, Box> out = new EnumMap<>(PageBox.class);
        for (PageBox which : PageBox.values()) {
            String word = which.word();
            String key = word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1) + "Box";
            boolean inherited = which == PageBox.MEDIA || which == PageBox.CROP;
            Box box = inherited
                    ? Cos.box(Cos.numbers(PDPageTree.getInheritableAttribute(dict, Cos.name(key))))
                    : Cos.box(dict, key);
            if (box != null) {
                out.put(which, box);
            }
        }
        return out;
    }

    private static Box cut(Box stated, Box media, Box otherwise) {
        Box inside = stated == null ? Box.EMPTY : stated.intersect(media);
        return inside.isEmpty() ? otherwise : inside;
    }

    private static void check(Box media, double unit, int number, String fileName) throws Refusal {
        if (media.isEmpty()) {
            throw new Refusal("Page " + number + " of " + fileName
                    + " has a media box of no size. Export the file again with a page size.");
        }
        double side = Math.max(media.width(), media.height()) * unit * M_PER_PT;
        if (side > LIMIT_M) {
            throw new Refusal(String.format(
                    Locale.ROOT,
                    "Page %d of %s is %.2f m long; the limit is %.0f m. Export it at a smaller scale.",
                    number,
                    fileName,
                    side,
                    LIMIT_M));
        }
    }

    private static int rotation(PDPage page) {
        int degrees = page.getRotation() % 360;
        return degrees % 90 != 0 ? 0 : (degrees + 360) % 360;
    }

    private static Matrix userToPage(Box media, double unit, int rotation) {
        double width = media.width();
        double height = media.height();
        Matrix topLeft = new Matrix(1, 0, 0, -1, -media.x0(), media.y1());
        Matrix turn =
                switch (rotation) {
                    case 90 -> new Matrix(0, 1, -1, 0, height, 0);
                    case 180 -> new Matrix(-1, 0, 0, -1, width, height);
                    case 270 -> new Matrix(0, -1, 1, 0, 0, width);
                    default -> Matrix.IDENTITY;
                };
        return topLeft.then(turn).then(Matrix.scale(unit, unit));
    }
}
