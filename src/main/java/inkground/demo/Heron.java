package inkground.demo;

import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/** A standing heron that faces left: 110 wide, 200 high, its feet on y = 0. Each part is one shape, so each can be one ink. */
final class Heron {
    private Heron() {}

    /** Back, breast and tail in one. */
    static Path2D body() {
        return Brush.blob(
                31, 122, 40, 136, 56, 138, 74, 124, 90, 104, 108, 74, 84, 78, 66, 77, 48, 84, 34, 98, 28, 110);
    }

    /** The neck with its double bend, from the breast up to the head. */
    static Path2D neck() {
        return Brush.taper(
                44, 112, 30, 33, 124, 25, 27, 137, 17, 31, 150, 12.5, 40, 161, 10.5, 44, 172, 9.5, 41, 183, 10, 35, 190,
                9);
    }

    /** Head without the beak. */
    static Path2D head() {
        return Brush.blob(20, 187, 28, 192.5, 37, 194.5, 44, 191, 46, 185, 41, 180.5, 31, 182.5);
    }

    /** The dagger of a beak. */
    static Path2D beak() {
        return Brush.polygon(29, 191.5, -9, 183.5, 29, 183);
    }

    /** The crest, from the eye over the nape. */
    static Path2D crest() {
        return Brush.taper(24, 190, 1, 34, 192.5, 5, 45, 190.5, 5.5, 56, 184, 3, 69, 179, .4);
    }

    /** The folded wing over the body. */
    static Path2D wing() {
        return Brush.blob(46, 127, 58, 131, 72, 119, 90, 98, 110, 66, 91, 77, 74, 86, 56, 94, 46, 108);
    }

    /** Flight feathers along the folded wing. */
    static List<Path2D> feathers() {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            double s = i * 6.2;
            all.add(Brush.taper(
                    54 + s * .55,
                    118 - s * .72,
                    .6,
                    68 + s * .5,
                    107 - s * .66,
                    2.6,
                    84 + s * .4,
                    92 - s * .5,
                    2,
                    98 + s * .26,
                    78 - s * .33,
                    .3));
        }
        return all;
    }

    /** Long plumes that hang from the breast. */
    static List<Path2D> plumes() {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double s = i * 4.5;
            all.add(Brush.taper(
                    29 + s, 118 - s * .8, 1, 30 + s, 104 - s * .5, 3.4, 36 + s, 90 - s * .3, 2.6, 39 + s, 76, .3));
        }
        return all;
    }

    static Path2D eye() {
        return new Path2D.Double(Brush.disc(30.5, 188.4, 1.9));
    }

    static Path2D pupil() {
        return new Path2D.Double(Brush.disc(30.1, 188.4, 1));
    }

    /** Both legs with knees and toes. */
    static Path2D legs() {
        Area all = new Area(Brush.taper(60, 92, 9, 56, 76, 5, 55, 54, 3, 53.5, 50, 4, 53, 46, 2.8, 51, 1.5, 2.6));
        all.add(new Area(Brush.taper(70, 92, 9, 70, 76, 5, 72, 54, 3, 72.5, 49, 4, 72, 45, 2.8, 68, 1.5, 2.6)));
        for (double foot : new double[] {51, 68}) {
            all.add(new Area(Brush.taper(foot + 7, .6, .5, foot, 1.8, 2.6, foot - 8, 1, 1.6, foot - 15, .3, .4)));
            all.add(new Area(Brush.taper(foot + 1, 2, 2, foot - 5, -2, 1.6, foot - 10, -4, .4)));
        }
        return new Path2D.Double(all);
    }

    /** Outline of the whole bird. */
    static Path2D silhouette() {
        Area all = new Area(body());
        for (Path2D part : List.of(neck(), head(), beak(), crest(), wing(), legs())) {
            all.add(new Area(part));
        }
        for (Path2D plume : plumes()) {
            all.add(new Area(plume));
        }
        return new Path2D.Double(all);
    }
}
