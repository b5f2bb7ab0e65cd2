package inkground.viewer.state;

import inkground.colour.Lab;
import java.util.ArrayList;
import java.util.List;

/** Everyday words for a colour, to search by. The borders between them are by eye, no source; several may fit. */
final class ColourWords {
    private ColourWords() {}

    /** @return lower-case words, at least one */
    static List<String> of(Lab lab) {
        List<String> words = new ArrayList<>();
        double chroma = lab.chroma();
        double hue = lab.hueDegrees();
        if (lab.L() < 40) {
            words.add("dark");
        } else if (lab.L() > 70) {
            words.add("light");
            words.add("pale");
        }
        if (chroma < 8) {
            words.add(lab.L() < 22 ? "black" : lab.L() > 90 ? "white" : "grey");
            if (lab.L() > 82 && chroma > 4) {
                words.add("ivory");
            }
        }
        if (chroma >= 5) {
            hue(words, lab.L(), chroma, hue);
        }
        return words;
    }

    private static void hue(List<String> words, double lightness, double chroma, double hue) {
        if (hue < 48 || hue >= 345) {
            words.add(lightness > 65 ? "pink" : "red");
        }
        if (hue >= 40 && hue < 80 && chroma > 20) {
            words.add(lightness < 55 ? "brown" : "orange");
        }
        if (hue >= 45 && hue < 105 && chroma <= 30) {
            words.add(lightness > 70 ? "beige" : "brown");
            words.add("sand");
        }
        if (hue >= 72 && hue < 112 && chroma > 10) {
            words.add(lightness < 50 ? "olive" : "yellow");
        }
        if (hue >= 100 && hue < 200) {
            words.add("green");
        }
        if (hue >= 180 && hue < 235) {
            words.add("turquoise");
            words.add("teal");
        }
        if (hue >= 220 && hue < 305) {
            words.add("blue");
            if (lightness < 25) {
                words.add("navy");
            }
        }
        if (hue >= 290 && hue < 345) {
            words.add("violet");
            words.add("purple");
        }
    }
}
