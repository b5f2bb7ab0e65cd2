package inkground.app;

import inkground.colour.Lab;

/** Plain words for colours, to name an ink by until it has a better name. Limits are by eye: common practice, no source. */
public final class ColourWords {
    private static final double GREY_CHROMA = 8;
    private static final double WHITE_L = 93;
    private static final double BLACK_L = 20;

    private ColourWords() {}

    /** Hues by their angle in CIELAB, each from the one before up to its own limit in degrees. */
    private enum Hue {
        PINK(8),
        RED(48),
        ORANGE(72),
        YELLOW(105),
        GREEN(175),
        TURQUOISE(230),
        BLUE(300),
        VIOLET(328),
        PURPLE(345);

        private final double upTo;

        Hue(double upTo) {
            this.upTo = upTo;
        }

        static Hue of(double degrees) {
            for (Hue hue : values()) {
                if (degrees < hue.upTo) {
                    return hue;
                }
            }
            return PINK;
        }
    }

    /** @return one to three words, the first with a capital, such as "Dark blue" */
    public static String of(Lab lab) {
        double chroma = lab.chroma();
        String words = chroma < GREY_CHROMA ? grey(lab.L()) : coloured(lab, chroma);
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String grey(double lightness) {
        if (lightness >= WHITE_L) {
            return "white";
        } else if (lightness < BLACK_L) {
            return "black";
        }
        return lightness >= 70 ? "light grey" : lightness < 40 ? "dark grey" : "grey";
    }

    private static String coloured(Lab lab, double chroma) {
        Hue hue = Hue.of(lab.hueDegrees());
        boolean warm = hue == Hue.RED || hue == Hue.ORANGE || hue == Hue.YELLOW;
        if (lab.L() < 12) {
            return "black";
        } else if (hue == Hue.YELLOW && lab.L() >= 80 && chroma < 35) {
            return "cream";
        } else if (hue == Hue.RED && lab.L() >= 65) {
            return "pink";
        } else if (warm && lab.L() < 55 && (hue != Hue.RED || chroma < 35)) {
            return hue == Hue.YELLOW ? "olive" : lab.L() < 30 ? "dark brown" : "brown";
        }
        String name = hue.name().toLowerCase(java.util.Locale.ROOT);
        if (chroma < 20 && lab.L() < 75) {
            return (lab.L() < 35 ? "dark grey " : "grey ") + name;
        }
        double light = hue == Hue.YELLOW ? 95 : 72;
        double dark = hue == Hue.YELLOW || hue == Hue.ORANGE ? 60 : 35;
        return (lab.L() >= light ? "light " : lab.L() < dark ? "dark " : "") + name;
    }
}
