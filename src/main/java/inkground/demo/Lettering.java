package inkground.demo;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.HashMap;
import java.util.Map;

/**
 * A display alphabet of our own: capitals of one weight drawn with straight lines and circles, cut off square at the
 * baseline and the cap line, and spaced by eye-like rule: every pair is set as close as leaves the same mean white between.
 * Output is outlines, never type. Cap height is 1, y up.
 */
final class Lettering {
    private static final Map<Character, String> CENTRE_LINES = new HashMap<>();

    // M, L: line. O: arc (centre, radii, start, extent). o: the same, joined on. Z: close. A leading |width also cuts
    // the sides.
    static {
        define('A', "M -.092 -.2 L .46 1 L 1.012 -.2 M .15 .25 L .77 .25");
        define('B', "M 0 0 L 0 1 o .3 .765 .24 .235 90 -180 L 0 .53 M 0 .53 o .34 .265 .28 .265 90 -180 L 0 0");
        define('C', "O .5 .5 .5 .5 48 264");
        define('D', "M 0 0 L 0 1 o .28 .5 .5 .5 90 -180 L 0 0 Z");
        define('E', "M .52 1 L 0 1 L 0 0 L .52 0 M 0 .53 L .44 .53");
        define('F', "M .52 1 L 0 1 L 0 0 M 0 .5 L .44 .5");
        define('G', "O .5 .5 .5 .5 48 312 L .6 .5");
        define('H', "M 0 0 L 0 1 M .7 0 L .7 1 M 0 .53 L .7 .53");
        define('I', "M 0 0 L 0 1");
        define('J', "M .42 1 L .42 .24 o .18 .24 .24 .24 0 -130");
        define('K', "M 0 0 L 0 1 M 0 .4 L .72 1.2 M .22 .64 L .86 -.2");
        define('L', "M 0 1 L 0 0 L .5 0");
        define('M', "|.92 M 0 0 L 0 1 M .92 0 L .92 1 M -.06 1.2 L .46 .22 L .98 1.2");
        define('N', "|.74 M 0 0 L 0 1 M .74 0 L .74 1 M -.1 1.2 L .84 -.2");
        define('O', "O .5 .5 .5 .5 0 360 Z");
        define('P', "M 0 0 L 0 1 o .3 .735 .27 .265 90 -180 L 0 .47");
        define('Q', "O .5 .5 .5 .5 0 360 Z M .6 .35 L 1 -.2");
        define('R', "M 0 0 L 0 1 o .3 .735 .27 .265 90 -180 L 0 .47 M .36 .385 L .74 -.2");
        define('S', "O .3 .75 .28 .25 25 245 o .3 .25 .3 .25 90 -245");
        define('T', "M 0 1 L .76 1 M .38 1 L .38 0");
        define('U', "M 0 1 L 0 .37 o .37 .37 .37 .37 180 180 L .74 1");
        define('V', "M -.084 1.2 L .42 0 L .924 1.2");
        define('W', "M -.06 1.2 L .3 0 L .6 1 L .9 0 L 1.26 1.2");
        define('X', "M -.13 -.2 L .83 1.2 M -.13 1.2 L .83 -.2");
        define('Y', "M -.13 1.2 L .4 .45 L .93 1.2 M .4 .45 L .4 0");
        define('Z', "|.68 M 0 1 L .68 1 L 0 0 L .68 0");
        define('0', "O .36 .5 .36 .5 0 360 Z");
        define('1', "M .24 0 L .24 1 L 0 .78");
        define('2', "O .3 .7 .29 .3 165 -200 L .02 0 L .62 0");
        define('3', "O .28 .755 .26 .245 145 -235 o .28 .255 .29 .255 90 -235");
        define('4', "M .5 0 L .5 1 L .02 .27 L .72 .27");
        define('5', "M .54 1 L .1 1 L .06 .55 o .28 .31 .31 .31 120 -255");
        define('6', "O .33 .32 .32 .32 0 360 Z M .04 .42 L .5 1.2");
        define('7', "M 0 1 L .62 1 L .14 -.2");
        define('8', "O .31 .755 .26 .245 0 360 Z M .61 .255 O .31 .255 .3 .255 0 360 Z");
        define('9', "O .33 .68 .32 .32 0 360 Z M .62 .58 L .16 -.2");
        define('.', "M 0 0 L .001 0");
        define('-', "M 0 .5 L .3 .5");
    }

    private static final int PROFILE = 24;

    private final double weight;
    private final double white;
    private final Map<Character, Area> glyphs = new HashMap<>();

    /**
     * @param weight stroke width as a share of the cap height
     * @param white mean white between two letters, as a share of the cap height
     */
    Lettering(double weight, double white) {
        this.weight = weight;
        this.white = white;
    }

    private static void define(char letter, String centreLine) {
        CENTRE_LINES.put(letter, centreLine);
    }

    /** @return one line as an outline of exactly this width, its left end at (x, y) on the baseline */
    Path2D fitted(String words, double x, double y, double width) {
        Path2D unit = line(words);
        Rectangle2D bounds = unit.getBounds2D();
        double scale = width / bounds.getWidth();
        return Brush.place(unit, scale, scale, 0, x - bounds.getMinX() * scale, y);
    }

    /** @return one line as an outline of this cap height, its left end at (x, y) on the baseline */
    Path2D set(String words, double x, double y, double capHeight) {
        return Brush.place(line(words), capHeight, capHeight, 0, x, y);
    }

    /** @return width of one line of this cap height */
    double width(String words, double capHeight) {
        return line(words).getBounds2D().getWidth() * capHeight;
    }

    /**
     * One line round a circle, centred on its top (letters outward) or on its bottom (letters inward, so that it reads from
     * left to right).
     *
     * @param radius of the baseline
     */
    Path2D round(String words, double cx, double cy, double radius, double capHeight, boolean top) {
        double[] offsets = offsets(words);
        double middle = line(words).getBounds2D().getCenterX();
        Path2D all = new Path2D.Double();
        for (int i = 0; i < words.length(); i++) {
            if (words.charAt(i) != ' ') {
                Area glyph = glyph(words.charAt(i));
                double centre = glyph.getBounds2D().getCenterX();
                double along = (offsets[i] + centre - middle) * capHeight / radius;
                AffineTransform at = AffineTransform.getTranslateInstance(cx, cy);
                at.rotate(top ? -along : along);
                at.translate(0, top ? radius : -radius);
                at.scale(capHeight, capHeight);
                at.translate(-centre, 0);
                all.append(glyph.getPathIterator(at), false);
            }
        }
        return all;
    }

    private Path2D line(String words) {
        double[] offsets = offsets(words);
        Path2D all = new Path2D.Double();
        for (int i = 0; i < words.length(); i++) {
            if (words.charAt(i) != ' ') {
                all.append(
                        glyph(words.charAt(i)).getPathIterator(AffineTransform.getTranslateInstance(offsets[i], 0)),
                        false);
            }
        }
        return all;
    }

    private double[] offsets(String words) {
        double[] offsets = new double[words.length()];
        int before = -1;
        for (int i = 0; i < words.length(); i++) {
            if (words.charAt(i) == ' ') {
                continue;
            }
            if (before >= 0) {
                double gap = white + (i - before - 1) * (0.42 + white / 2);
                offsets[i] = offsets[before] + advance(glyph(words.charAt(before)), glyph(words.charAt(i)), gap);
            }
            before = i;
        }
        return offsets;
    }

    /** The offset at which the mean white between two letters is {@code gap}; deep bays count only up to a limit. */
    private double advance(Area a, Area b, double gap) {
        double[] right = profile(a, true);
        double[] left = profile(b, false);
        double low = -1;
        double high = 4;
        while (high - low > 1e-6) {
            double mid = (low + high) / 2;
            double sum = 0;
            double least = Double.MAX_VALUE;
            for (int i = 0; i < PROFILE; i++) {
                double space = mid + left[i] - right[i];
                sum += Math.min(space, gap * 1.1 + 0.16);
                least = Math.min(least, space);
            }
            boolean wide = sum / PROFILE > gap && least > gap * 0.6;
            low = wide ? low : mid;
            high = wide ? mid : high;
        }
        return high;
    }

    private double[] profile(Area glyph, boolean right) {
        double[] edge = new double[PROFILE];
        for (int i = 0; i < PROFILE; i++) {
            Area band = new Area(Brush.box(-2, (double) i / PROFILE, 6, 1.0 / PROFILE));
            band.intersect(glyph);
            Rectangle2D b = band.getBounds2D();
            Rectangle2D whole = glyph.getBounds2D();
            // A row the letter does not reach counts as its far side: the white there belongs to the pair.
            edge[i] =
                    band.isEmpty() ? (right ? whole.getMinX() : whole.getMaxX()) : (right ? b.getMaxX() : b.getMinX());
        }
        return edge;
    }

    private Area glyph(char letter) {
        return glyphs.computeIfAbsent(letter, this::draw);
    }

    private Area draw(char letter) {
        String centreLine = CENTRE_LINES.get(letter);
        if (centreLine == null) {
            throw new IllegalArgumentException("the alphabet has no " + letter);
        }
        // The centre lines run between the stroke's middle at the baseline and at the cap line, hence the inset.
        double inner = 1 - weight;
        AffineTransform inset = new AffineTransform(inner, 0, 0, inner, weight / 2, weight / 2);
        boolean cutSides = centreLine.startsWith("|");
        int drawing = cutSides ? centreLine.indexOf(' ') : 0;
        Shape middle = new Path2D.Double(parse(centreLine.substring(drawing)), inset);
        Shape stroked = new BasicStroke((float) weight, BasicStroke.CAP_SQUARE, BasicStroke.JOIN_MITER, 10)
                .createStrokedShape(middle);
        Area area = new Area(stroked);
        area.intersect(new Area(
                cutSides
                        ? Brush.box(0, 0, number(centreLine.substring(1, drawing)) * inner + weight, 1)
                        : Brush.box(-1, 0, 4, 1)));
        return area;
    }

    private static Path2D parse(String centreLine) {
        Path2D path = new Path2D.Double();
        String[] t = centreLine.strip().split("\\s+");
        for (int i = 0; i < t.length; ) {
            String command = t[i++];
            switch (command) {
                case "M" -> path.moveTo(number(t[i++]), number(t[i++]));
                case "L" -> path.lineTo(number(t[i++]), number(t[i++]));
                case "Z" -> path.closePath();
                case "O", "o" -> {
                    Brush.arc(
                            path,
                            number(t[i]),
                            number(t[i + 1]),
                            number(t[i + 2]),
                            number(t[i + 3]),
                            number(t[i + 4]),
                            number(t[i + 5]),
                            command.equals("o"));
                    i += 6;
                }
                default -> throw new IllegalArgumentException("centre line command " + command);
            }
        }
        return path;
    }

    private static double number(String token) {
        return Double.parseDouble(token);
    }
}
