package inkground.demo;

import java.awt.BasicStroke;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;

/**
 * A racing boat seen from the side, moving left, at the catch. Units: about 8 to a metre; the waterline is y = 0 and the bow
 * ball x = 0.
 */
final class Crew {
    /** Distance from seat to seat. */
    private static final double PITCH = 12;
    /** From the bow to the first seat. */
    private static final double BOW = 20;

    private final int rowers;

    Crew(int rowers) {
        this.rowers = rowers;
    }

    /** @return length over all */
    double length() {
        return BOW + PITCH * rowers + (rowers > 2 ? 26 : 16);
    }

    Path2D hull() {
        double end = length();
        double quarter = Math.min(26, end / 4);
        return Brush.taper(
                0,
                1.5,
                .3,
                quarter / 2,
                1,
                1.7,
                quarter,
                .75,
                2.7,
                end / 2,
                .6,
                3,
                end - quarter,
                .75,
                2.7,
                end,
                1.5,
                .3);
    }

    /** The line along the hull's side. */
    Path2D stripe() {
        double end = length();
        double quarter = Math.min(26, end / 4);
        return Brush.taper(
                6, 1.7, .1, quarter, 1.35, .5, end / 2, 1.25, .55, end - quarter, 1.35, .5, end - 6, 1.7, .1);
    }

    /** Heads and arms. */
    List<Path2D> skin() {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < rowers; i++) {
            double x = seat(i);
            all.add(Brush.taper(x + 3.4, 8.2, 1.5, x + 6, 7, 1.2, x + 8.8, 5.9, 1));
            all.add(new Path2D.Double(Brush.disc(x + 4.7, 11.2, 1.55)));
            all.add(Brush.taper(x + 3.5, 8.5, 1.4, x + 4.3, 10.6, 1.2));
            all.add(Brush.taper(x + .5, 2.8, 1.9, x + 4.6, 6.2, 1.6));
            all.add(Brush.taper(x + 4.4, 6.2, 1.6, x + 7.4, 2.2, 1.1));
        }
        if (hasCox()) {
            all.add(new Path2D.Double(Brush.disc(cox() - .4, 8.1, 1.5)));
        }
        return all;
    }

    /** Racing suits. */
    List<Path2D> suits() {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < rowers; i++) {
            double x = seat(i);
            all.add(Brush.taper(x - .2, 2.4, 3, x + 1.2, 5.4, 3.3, x + 3.5, 9, 2.6));
            all.add(Brush.taper(x + .1, 2.6, 2.3, x + 3, 5, 1.9));
        }
        if (hasCox()) {
            all.add(Brush.taper(cox() + .6, 1.6, 3.4, cox() + .3, 4.5, 3.4, cox() - .2, 6.8, 2.2));
        }
        return all;
    }

    /** Shafts and blades of the oars on the near side ({@code near}) or on the far one. */
    List<Path2D> shafts(boolean near) {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < rowers; i++) {
            double x = seat(i);
            if (rowers == 1 || (i % 2 == 0) == near) {
                all.add(
                        near
                                ? Brush.taper(x + 9.3, 6.1, .55, x - 3, -4.7, .55)
                                : Brush.taper(x + 9.3, 5.8, .5, x - 1.5, 3.4, .4));
            }
        }
        return all;
    }

    /** Blades, near or far. */
    List<Path2D> blades(boolean near) {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < rowers; i++) {
            double x = seat(i);
            if (rowers == 1 || (i % 2 == 0) == near) {
                all.add(
                        near
                                ? Brush.taper(x - 2.6, -4.4, .8, x - 4.2, -5.8, 2.2, x - 7.4, -8.6, 2.5)
                                : Brush.taper(x - 1.3, 3.4, .5, x - 2.4, 3.2, 1.1, x - 4.8, 2.7, 1.2));
            }
        }
        return all;
    }

    /** Rings where the near blades meet the water. */
    List<Path2D> splashes() {
        List<Path2D> all = new ArrayList<>();
        for (int i = 0; i < rowers; i += rowers == 1 ? 1 : 2) {
            double x = seat(i) - 6;
            for (double r : new double[] {3.2, 5.4}) {
                Path2D ring = new Path2D.Double();
                Brush.arc(ring, x, -8.4, r, r * .3, 190, 250, false);
                all.add(new Path2D.Double(
                        new BasicStroke(.35f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND).createStrokedShape(ring)));
            }
        }
        return all;
    }

    private boolean hasCox() {
        return rowers > 2;
    }

    private double cox() {
        return BOW + PITCH * rowers + 5;
    }

    private double seat(int i) {
        return BOW + PITCH * i;
    }
}
