package inkground.artwork.svg;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.xml.sax.helpers.AttributesImpl;

/**
 * Writes the colours of CSS Color Level 4 as SVG 1.1 has them: {@code rgba()}, {@code hsl()}, {@code #rrggbbaa},
 * {@code transparent} and a bare {@code device-cmyk()}, with alpha moved to the opacity property that belongs.
 */
final class ModernColours {
    /** Colour properties and the opacity that goes with each. */
    private static final Map<String, String> OPACITY = Map.of(
            "fill", "fill-opacity",
            "stroke", "stroke-opacity",
            "stop-color", "stop-opacity",
            "flood-color", "flood-opacity");

    private static final String COLOUR =
            "((?:rgba?|hsla?|device-cmyk)\\([^()]{1,100}\\)|#[0-9a-fA-F]{8}\\b|#[0-9a-fA-F]{4}\\b|transparent\\b)";
    private static final Pattern VALUE = Pattern.compile("\\s*" + COLOUR + "\\s*", Pattern.CASE_INSENSITIVE);
    private static final Pattern DECLARATION = Pattern.compile(
            "(?<![-\\w])(fill|stroke|stop-color|flood-color)\\s*:\\s*" + COLOUR + "\\s*(?=[;}!]|$)",
            Pattern.CASE_INSENSITIVE);

    private ModernColours() {}

    /** @param css what SVG 1.1 understands */
    private record Old(String css, double alpha) {}

    static void rewrite(AttributesImpl attributes) {
        for (Map.Entry<String, String> property : OPACITY.entrySet()) {
            int at = attributes.getIndex(property.getKey());
            Old old = at < 0 ? null : old(attributes.getValue(at));
            if (old != null) {
                attributes.setValue(at, old.css);
                if (old.alpha < 1) {
                    multiply(attributes, property.getValue(), old.alpha);
                }
            }
        }
        int style = attributes.getIndex("style");
        if (style >= 0) {
            attributes.setValue(style, rewriteCss(attributes.getValue(style)));
        }
    }

    private static void multiply(AttributesImpl attributes, String name, double alpha) {
        int at = attributes.getIndex(name);
        if (at < 0) {
            attributes.addAttribute("", name, name, "CDATA", number(alpha));
            return;
        }
        try {
            attributes.setValue(
                    at,
                    number(alpha * Double.parseDouble(attributes.getValue(at).trim())));
        } catch (NumberFormatException e) {
            attributes.setValue(at, number(alpha)); // an opacity that is no number does not count
        }
    }

    static String rewriteCss(String css) {
        Matcher matcher = DECLARATION.matcher(css);
        StringBuilder out = new StringBuilder();
        while (matcher.find()) {
            Old old = old(matcher.group(2));
            String property = matcher.group(1).toLowerCase(Locale.ROOT);
            String text = old == null ? matcher.group() : property + ":" + old.css;
            if (old != null && old.alpha < 1) {
                text += ";" + OPACITY.get(property) + ":" + number(old.alpha);
            }
            matcher.appendReplacement(out, Matcher.quoteReplacement(text));
        }
        return matcher.appendTail(out).toString();
    }

    private static String number(double v) {
        return String.format(Locale.ROOT, "%.5f", v);
    }

    /** @return the colour in the old way; null when it is in it already, or no colour */
    private static Old old(String value) {
        Matcher matcher = VALUE.matcher(value);
        if (!matcher.matches()) {
            return null;
        }
        String colour = matcher.group(1).toLowerCase(Locale.ROOT);
        if (colour.equals("transparent")) {
            return new Old("#000000", 0);
        } else if (colour.startsWith("#")) {
            return hex(colour);
        }
        String function = colour.substring(0, colour.indexOf('('));
        List<Double> v = new ArrayList<>();
        for (String part :
                colour.substring(colour.indexOf('(') + 1, colour.length() - 1).split("[\\s,/]+")) {
            if (!part.isEmpty()) {
                Double number = number(part, function, v.size());
                if (number == null) {
                    return null;
                }
                v.add(number);
            }
        }
        return of(function, v);
    }

    private static Old hex(String colour) {
        StringBuilder digits = new StringBuilder();
        for (char c : colour.substring(1).toCharArray()) {
            digits.append(c).append(colour.length() == 5 ? String.valueOf(c) : "");
        }
        return new Old("#" + digits.substring(0, 6), Integer.parseInt(digits.substring(6), 16) / 255.0);
    }

    /** Percentages become fractions; red, green and blue too become fractions. */
    private static Double number(String part, String function, int index) {
        try {
            if (part.endsWith("%")) {
                return Double.parseDouble(part.substring(0, part.length() - 1)) / 100;
            }
            double v = Double.parseDouble(part.endsWith("deg") ? part.substring(0, part.length() - 3) : part);
            return function.startsWith("rgb") && index < 3 ? v / 255 : v;
        } catch (NumberFormatException e) {
            return null;
        }
    }

    private static Old of(String function, List<Double> v) {
        int n = function.equals("device-cmyk") ? 4 : 3;
        if (v.size() != n && v.size() != n + 1) {
            return null;
        }
        double alpha = v.size() > n ? clip(v.get(n)) : 1;
        if (n == 4) {
            double k = 1 - clip(v.get(3));
            String fallback = hexOf((1 - clip(v.get(0))) * k, (1 - clip(v.get(1))) * k, (1 - clip(v.get(2))) * k);
            String tints = number(clip(v.get(0))) + "," + number(clip(v.get(1))) + "," + number(clip(v.get(2))) + ","
                    + number(clip(v.get(3)));
            return new Old(fallback + " device-cmyk(" + tints + ")", alpha);
        } else if (function.startsWith("hsl")) {
            return new Old(ofHsl(v.get(0), clip(v.get(1)), clip(v.get(2))), alpha);
        }
        return new Old(hexOf(v.get(0), v.get(1), v.get(2)), alpha);
    }

    /** CSS Color Level 4 §7.1. */
    private static String ofHsl(double hue, double saturation, double lightness) {
        double[] rgb = new double[3];
        int[] offset = {0, 8, 4};
        for (int i = 0; i < 3; i++) {
            double k = ((offset[i] + hue / 30) % 12 + 12) % 12;
            double a = saturation * Math.min(lightness, 1 - lightness);
            rgb[i] = lightness - a * Math.max(-1, Math.min(Math.min(k - 3, 9 - k), 1));
        }
        return hexOf(rgb[0], rgb[1], rgb[2]);
    }

    private static String hexOf(double r, double g, double b) {
        return String.format("#%02x%02x%02x", to8(r), to8(g), to8(b));
    }

    private static long to8(double v) {
        return Math.round(clip(v) * 255);
    }

    private static double clip(double v) {
        return Math.max(0, Math.min(1, v));
    }
}
