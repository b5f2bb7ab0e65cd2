package inkground.app;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourSpace;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.geometry.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One colour that a page paints flat.
 *
 * @param colour as stated; never of an indexed space
 * @param lab as seen, media-relative, D50
 * @param objects number of painting operations; 0 for a colour of images
 * @param visibleCm2 area inside the trim where it is seen, by its share where it is transparent, in cm²
 * @param extent box of all its objects, page space, points
 */
public record ColourUse(Colour colour, Lab lab, int objects, double visibleCm2, Box extent) {
    /** Area below which a colour is all but invisible: a square of 1 mm. */
    public static final double TINY_CM2 = 0.01;

    /** @return whether everything of this colour lies beneath other paint, or outside the trim */
    public boolean hidden() {
        return visibleCm2 < 1e-5;
    }

    /** @return whether so little of it is seen that it is probably a leftover */
    public boolean tiny() {
        return !hidden() && visibleCm2 < TINY_CM2;
    }

    /** @return the nearest sRGB colour, 0xRRGGBB */
    public int rgb() {
        return Srgb.labToArgb(lab) & 0xffffff;
    }

    /** @return the colour as #RRGGBB */
    public String hex() {
        return String.format(Locale.ROOT, "#%06X", rgb());
    }

    /** @return the colour's own numbers, such as "RGB 28 48 79", "CMYK 90 70 30 40 %" or "Reach Red 55 %" */
    public String words() {
        float[] c = colour.components();
        if (colour.space() instanceof ColourSpace.Separation s) {
            return s.name() + percent(c);
        } else if (colour.space() instanceof ColourSpace.DeviceN n) {
            List<String> parts = new ArrayList<>();
            for (int i = 0; i < c.length; i++) {
                if (c[i] > 0) {
                    parts.add(n.names().get(i) + percent(c[i]));
                }
            }
            return parts.isEmpty() ? n.names().get(0) + " 0 %" : String.join(" + ", parts);
        }
        return switch (ColourAssignment.Family.of(colour.space())) {
            case GREY -> "grey" + percent(c);
            case CMYK -> "CMYK" + percent(c);
            case LAB -> String.format(Locale.ROOT, "Lab %.1f %.1f %.1f", c[0], c[1], c[2]);
            case RGB ->
                String.format(
                        Locale.ROOT,
                        "RGB %d %d %d",
                        Math.round(255 * c[0]),
                        Math.round(255 * c[1]),
                        Math.round(255 * c[2]));
        };
    }

    private static String percent(float... values) {
        StringBuilder out = new StringBuilder();
        for (float v : values) {
            out.append(' ').append(Math.round(100 * v));
        }
        return out.append(" %").toString();
    }

    /** @return what a rule for this colour starts from, with the usual tolerance */
    public ColourAssignment.Source source() {
        return source(ColourAssignment.Seen.DEFAULT_TOLERANCE);
    }

    /**
     * @param toleranceDe00 for a colour as seen, ΔE00
     * @return what a rule for this colour starts from: its ink where it names one alone, else the colour as seen, or its
     *     numbers where sRGB has no such colour
     */
    public ColourAssignment.Source source(double toleranceDe00) {
        if (colour.space() instanceof ColourSpace.Separation s) {
            return new ColourAssignment.InkNamed(s.name());
        }
        Lab shown = Srgb.toLab((rgb() >> 16 & 255) / 255.0, (rgb() >> 8 & 255) / 255.0, (rgb() & 255) / 255.0);
        ColourAssignment.Family family = ColourAssignment.Family.of(colour.space());
        if (family != null && Cie.deltaE00(shown, lab) > toleranceDe00 / 2) {
            List<Double> components = new ArrayList<>();
            for (float component : colour.components()) {
                components.add((double) component);
            }
            return new ColourAssignment.Stated(family, components);
        }
        return new ColourAssignment.Seen(rgb(), toleranceDe00);
    }
}
