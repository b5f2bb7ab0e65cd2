package inkground.viewer;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A page of 160 × 120 pt with something in it for every overlay: bleed 6 pt and trim 14 pt inside the media box, and twelve
 * fields of 26 × 22 pt.
 */
final class OverlayArt {
    private static final String SPACES = "/Red " + separation("Signal#20Red", "0 0.9 0.8 0")
            + " /Blue " + separation("Deep#20Blue", "1 0.7 0 0.3")
            + " /White " + separation("White", "0 0 0 0");

    private static final List<String> FIELDS = List.of(
            // bottom row: ink, white ink, white paint, ink knocked out in the middle
            "/Red cs 1 scn 20 20 26 22 re f",
            "/White cs 1 scn 52 20 26 22 re f",
            "0 0 0 0 k 84 20 26 22 re f",
            "/Red cs 1 scn 116 20 26 22 re f 0 0 0 0 k 122 25 14 12 re f",
            // middle row: all inks, ink printed over another, inks that meet, a colour near navy
            "1 1 1 1 k 20 48 26 22 re f",
            "1 0 0 0 k 52 48 26 22 re f /Over gs /Red cs 1 scn 65 52 9 14 re f /Out gs",
            "/Red cs 1 scn 84 48 13 22 re f /Blue cs 1 scn 97 48 13 22 re f",
            "1 0.85 0.35 0.45 k 116 48 26 22 re f",
            // top row: thin and wide lines and a gap, a screen's green, a tint, solid cyan
            "/Red CS 1 SCN 0.2 w 22 76 m 22 98 l S 0.4 w 26 76 m 26 98 l S 3 w 31 76 m 31 98 l S"
                    + " /Red cs 1 scn 35 76 5 22 re f 40.4 76 5.6 22 re f",
            "0 1 0 rg 52 76 26 22 re f",
            "/Red cs 0.5 scn 84 76 26 22 re f",
            "1 0 0 0 k 116 76 26 22 re f",
            // a band out to the bleed
            "/Blue cs 1 scn 6 6 148 5 re f");

    private OverlayArt() {}

    private static String separation(String name, String cmyk) {
        return "[/Separation /" + name + " /DeviceCMYK << /FunctionType 2 /Domain [0 1] /N 1 /C0 [0 0 0 0] /C1 [" + cmyk
                + "] >>]";
    }

    /** Writes the page. */
    static Path write(Path file) throws IOException {
        return write(file, String.join("\n", FIELDS));
    }

    /** Writes an earlier revision: the first field is not there yet, and the tint is darker. */
    static Path writeEarlier(Path file) throws IOException {
        return write(
                file,
                String.join("\n", FIELDS.subList(1, FIELDS.size()))
                        .replace("0.5 scn 84 76 26 22", "0.9 scn 84 76 26 22"));
    }

    private static Path write(Path file, String content) throws IOException {
        List<String> objects = List.of(
                "<< /Type /Catalog /Pages 2 0 R >>",
                "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
                "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 160 120] /BleedBox [6 6 154 114] /TrimBox [14 14 146 106]"
                        + " /Contents 4 0 R /Resources << /ColorSpace << " + SPACES
                        + " >> /ExtGState << /Over << /OP true /op true /OPM 1 >>"
                        + " /Out << /OP false /op false >> >> >> >>",
                "<< /Length " + content.length() + " >>\nstream\n" + content + "\nendstream");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<Integer> starts = new ArrayList<>();
        put(out, "%PDF-1.6\n");
        for (int i = 0; i < objects.size(); i++) {
            starts.add(out.size());
            put(out, (i + 1) + " 0 obj\n" + objects.get(i) + "\nendobj\n");
        }
        int table = out.size();
        put(out, "xref\n0 " + (objects.size() + 1) + "\n0000000000 65535 f \n");
        for (int start : starts) {
            put(out, String.format(Locale.ROOT, "%010d 00000 n \n", start));
        }
        put(out, "trailer\n<< /Size " + (objects.size() + 1) + " /Root 1 0 R >>\nstartxref\n" + table + "\n%%EOF\n");
        return Files.write(file, out.toByteArray());
    }

    private static void put(ByteArrayOutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.ISO_8859_1));
    }
}
