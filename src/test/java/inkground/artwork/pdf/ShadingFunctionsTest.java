package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.Job;
import inkground.app.PageJob;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every type of shading (ISO 32000-2 §8.7.4.5.2 to 8.7.4.5.8) with every type of function that it can have (§7.10), in
 * Separation and in DeviceN: all of them say that the first ink runs from none at the left end of the page to solid at the
 * right, and the second back. Types 2 and 3 of functions have one input (§7.10.3, §7.10.4), so that a shading of type 1, whose
 * function has two, cannot have them.
 */
class ShadingFunctionsTest {
    private static final int SIDE = 40;

    @TempDir
    Path dir;

    static Stream<String> all() {
        List<String> out = new ArrayList<>();
        for (int inks = 1; inks <= 2; inks++) {
            for (int shading = 1; shading <= 7; shading++) {
                for (int function : shading == 1 ? new int[] {0, 4} : new int[] {0, 2, 3, 4}) {
                    out.add("shading " + shading + ", function " + function + ", inks " + inks);
                }
            }
        }
        return out.stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void theFirstInkRunsToTheRightAndTheSecondBack(String name) throws Exception {
        String[] words = name.split("[ ,]+");
        int shading = Integer.parseInt(words[1]);
        int inks = Integer.parseInt(words[5]);
        InkPlanes planes = planes(shading, Integer.parseInt(words[3]), inks);
        for (int x : new int[] {1, 10, 20, 30, 38}) {
            for (int y : new int[] {19, 20}) {
                double share = (x + 0.5) / SIDE; // at the middle of the pixel
                assertTint(planes, "Reed", x, y, 255 * share);
                if (inks == 2) {
                    assertTint(planes, "Rust", x, y, 255 * (1 - share));
                }
            }
        }
    }

    /** Two steps of 255: one of rounding, one of mesh coordinates and samples of eight bits. */
    private static void assertTint(InkPlanes planes, String ink, int x, int y, double expected) {
        for (int plane = 0; plane < planes.inks().size(); plane++) {
            if (planes.inks().get(plane).name().equals(ink)) {
                assertThat((double) planes.get(plane, x, y))
                        .as(ink + " at " + x + ", " + y)
                        .isBetween(expected - 2, expected + 2);
                return;
            }
        }
        throw new AssertionError("no plane " + ink);
    }

    private InkPlanes planes(int shading, int function, int inks) throws Exception {
        String space =
                inks == 1 ? "[/Separation /Reed /DeviceCMYK 6 0 R]" : "[/DeviceN [/Reed /Rust] /DeviceCMYK 6 0 R]";
        String entries = "/ShadingType " + shading + " /ColorSpace " + space + " /Function 7 0 R ";
        PdfText page = new PdfText()
                .page("/MediaBox [0 0 40 40]")
                .resources("/Shading << /S 5 0 R >>")
                .content("/S sh");
        String domain = inks == 1 ? "[0 1]" : "[0 1 0 1]";
        mesh(page, shading, entries).stream(
                "/FunctionType 4 /Domain " + domain + " /Range [0 1 0 1 0 1 0 1]", inks == 1 ? "{ 0 0 0 }" : "{ 0 0 }");
        function(page, function, inks, shading == 1 ? 2 : 1);
        try (Job job = Job.open(page.write(dir), new Cancel(), Progress.NONE)) {
            PageJob first = job.page(1, new Cancel(), Progress.NONE);
            PlateRequest request = PlateRequest.of(
                    first.info().box(PageBox.MEDIA),
                    72,
                    true,
                    first.displayList().defaultLayers());
            return first.plate().render(request, new Cancel(), Progress.NONE);
        }
    }

    /** Points are bytes over the page, the parameter is the share of the width. */
    private static PdfText mesh(PdfText page, int type, String entries) {
        String bits = entries + "/BitsPerCoordinate 8 /BitsPerComponent 8 /Decode [0 40 0 40 0 1] ";
        String outline = "00 0000 0055 00AA 00FF 55FF AAFF FFFF FFAA FF55 FF00 AA00 5500 ";
        return switch (type) {
            case 1 -> page.object("<< " + entries + "/Matrix [40 0 0 40 0 0] >>");
            case 2 -> page.object("<< " + entries + "/Coords [0 0 40 0] >>");
            case 3 -> page.object("<< " + entries + "/Coords [0 20 0 0 20 40] >>");
            case 4 ->
                page.stream(bits + "/BitsPerFlag 8", bytes("00000000 00FF00FF 0000FF00 00FF00FF 00FFFFFF 0000FF00"));
            case 5 -> page.stream(bits + "/VerticesPerRow 2", bytes("000000 FF00FF 00FF00 FFFFFF"));
            case 6 -> page.stream(bits + "/BitsPerFlag 8", bytes(outline + "00 00 FF FF"));
            case 7 -> page.stream(bits + "/BitsPerFlag 8", bytes(outline + "5555 55AA AAAA AA55 00 00 FF FF"));
            default -> throw new IllegalArgumentException("shading " + type);
        };
    }

    private static byte[] bytes(String hex) {
        return HexFormat.of().parseHex(hex.replace(" ", ""));
    }

    /** A function of t that gives t, and 1 − t as well where there are two inks. */
    private static void function(PdfText page, int type, int inks, int inputs) {
        String domain = "/FunctionType " + type + " /Domain " + (inputs == 1 ? "[0 1] " : "[0 1 0 1] ");
        String range = "/Range " + (inks == 1 ? "[0 1] " : "[0 1 0 1] ");
        switch (type) {
            case 0 -> {
                String row = inks == 1 ? "00FF" : "00FFFF00";
                page.stream(
                        domain + range + "/BitsPerSample 8 /Size " + (inputs == 1 ? "[2]" : "[2 2]"),
                        bytes(inputs == 1 ? row : row + row));
            }
            case 2 -> page.object("<< " + linear(domain, inks, 0, 1) + " >>");
            case 3 ->
                page.object("<< " + domain + "/Bounds [0.5] /Encode [0 1 0 1] /Functions [<< "
                        + linear("/FunctionType 2 /Domain [0 1] ", inks, 0, 0.5) + " >> << "
                        + linear("/FunctionType 2 /Domain [0 1] ", inks, 0.5, 1) + " >>] >>");
            case 4 ->
                page.stream(
                        domain + range,
                        "{ " + (inputs == 1 ? "" : "pop ") + (inks == 1 ? "" : "dup 1 exch sub ") + "}");
            default -> throw new IllegalArgumentException("function " + type);
        }
    }

    private static String linear(String domain, int inks, double from, double to) {
        return domain + "/N 1 /C0 [" + from + (inks == 1 ? "" : " " + (1 - from)) + "] /C1 [" + to
                + (inks == 1 ? "" : " " + (1 - to)) + "]";
    }
}
