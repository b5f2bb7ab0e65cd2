package inkground.app;

import inkground.colour.Lab;

/**
 * Everyday words for colours, such as "dark blue", so that a sentence can speak of one. Lightness, chroma and hue angle of CIE
 * Lab decide; the limits are our own, set by eye, and no standard's.
 */
public final class ColourWords {
    private static final double GREY_CHROMA = 8;
    private static final double DARK_L = 38;
    private static final double LIGHT_L = 76;

    private ColourWords() {}

    /** @return one or two words in lower case */
    public static String of(Lab lab) {
        if (Math.hypot(lab.a(), lab.b()) < GREY_CHROMA) {
            return grey(lab.L());
        }
        double hue = Math.toDegrees(Math.atan2(lab.b(), lab.a()));
        String word = hue(hue < 0 ? hue + 360 : hue, lab.L());
        boolean says = word.equals("brown") || word.equals("yellow") || word.equals("pink");
        return lab.L() < DARK_L && !word.equals("brown")
                ? "dark " + word
                : lab.L() > LIGHT_L && !says ? "light " + word : word;
    }

    private static String grey(double lightness) {
        return lightness < 22
                ? "black"
                : lightness < DARK_L
                        ? "dark grey"
                        : lightness < LIGHT_L ? "grey" : lightness < 93 ? "light grey" : "white";
    }

    private static String hue(double degrees, double lightness) {
        if (degrees < 45 || degrees >= 345) {
            return lightness > 65 ? "pink" : "red";
        } else if (degrees < 75) {
            return lightness < 50 ? "brown" : "orange";
        } else if (degrees < 105) {
            return lightness < 50 ? "brown" : "yellow";
        } else if (degrees < 180) {
            return "green";
        } else if (degrees < 230) {
            return "turquoise";
        }
        return degrees < 305 ? "blue" : "purple";
    }
}
