package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PatternRecordingTest {
    private static final String TO_RED = "<< /FunctionType 2 /Domain [0 1] /N 1 /C0 [0 0 0] /C1 [1 0 0] >>";
    private static final String TILE = "/PatternType 1 /TilingType 1 /BBox [0 0 10 10] /XStep 12 /YStep 14 ";

    @TempDir
    Path dir;

    private Paint.Shading sh(String shading) throws Exception {
        return new PdfText()
                .resources("/Shading << /S " + shading + " >>")
                .content("2 0 0 2 10 20 cm /S sh")
                .only(Op.Shade.class, dir)
                .shading();
    }

    @Test
    void anAxialShadingKeepsItsGeometryAndFunction() throws Exception {
        Paint.Shading shading = sh("<< /ShadingType 2 /ColorSpace /DeviceRGB /Coords [1 2 3 4] /Domain [0.25 0.75]"
                + " /Extend [true false] /Function " + TO_RED + " /BBox [0 0 50 60] /Background [1 1 1] >>");
        assertThat(shading.geometry()).isEqualTo(new Paint.Axial(1, 2, 3, 4, 0.25, 0.75, true, false));
        assertThat(shading.toPage()).isEqualTo(new Matrix(2, 0, 0, -2, 10, 80));
        assertThat(shading.box()).isEqualTo(new Box(0, 0, 50, 60));
        assertThat(shading.background()).as("sh ignores the background").isNull();
        float[] out = new float[3];
        shading.function().apply(new float[] {0.5f}, out);
        assertThat(out).containsExactly(0.5f, 0, 0);
    }

    @Test
    void aRadialShadingKeepsItsCircles() throws Exception {
        Paint.Shading shading = sh("<< /ShadingType 3 /ColorSpace /DeviceRGB /Coords [1 2 3 4 5 6] /Function [" + one(0)
                + one(1) + one(0) + "] >>");
        assertThat(shading.geometry()).isEqualTo(new Paint.Radial(1, 2, 3, 4, 5, 6, 0, 1, false, false));
        float[] out = new float[3];
        shading.function().apply(new float[] {0.75f}, out);
        assertThat(out).containsExactly(0, 0.75f, 0);
    }

    private static String one(int top) {
        return "<< /FunctionType 2 /Domain [0 1] /N 1 /C0 [0] /C1 [" + top + "] >>";
    }

    @Test
    void aFunctionBasedShadingMapsItsDomain() throws Exception {
        Paint.Shading shading = new PdfText()
                        .resources("/Shading << /S << /ShadingType 1 /ColorSpace /DeviceGray /Domain [0 2 1 3]"
                                + " /Matrix [5 0 0 6 7 8] /Function 5 0 R >> >>")
                        .stream("/FunctionType 4 /Domain [0 2 1 3] /Range [0 1]", "{ 3 div exch pop }")
                        .content("/S sh")
                        .only(Op.Shade.class, dir)
                        .shading();
        assertThat(shading.geometry()).isEqualTo(new Paint.OfPoint(new Box(0, 1, 2, 3), new Matrix(5, 0, 0, 6, 7, 8)));
        float[] out = new float[1];
        shading.function().apply(new float[] {0, 1.5f}, out);
        assertThat(out[0]).isCloseTo(0.5f, within(1e-6f));
    }

    private Paint.Triangles mesh(int type, String entries, int... data) throws Exception {
        byte[] bytes = new byte[data.length];
        for (int i = 0; i < data.length; i++) {
            bytes[i] = (byte) data[i];
        }
        Op.Shade shade = new PdfText()
                .resources("/Shading << /S 5 0 R >>").content("/S sh").stream(
                                "/ShadingType " + type
                                        + " /ColorSpace /DeviceGray /BitsPerCoordinate 8 /BitsPerComponent 8"
                                        + " /Decode [0 255 0 255 0 1] " + entries,
                                bytes)
                        .only(Op.Shade.class, dir);
        return (Paint.Triangles) shade.shading().geometry();
    }

    @Test
    void freeTrianglesShareEdgesByTheirFlags() throws Exception {
        Paint.Triangles mesh =
                mesh(4, "/BitsPerFlag 8", 0, 0, 0, 0, 0, 10, 0, 255, 0, 0, 10, 0, 1, 10, 10, 255, 2, 20, 20, 0);
        assertThat(mesh.perCorner()).isEqualTo(3);
        assertThat(mesh.values())
                .containsExactly(
                        0, 0, 0, 10, 0, 1, 0, 10, 0, // first
                        10, 0, 1, 0, 10, 0, 10, 10, 1, // flag 1: its last two corners go on
                        10, 0, 1, 10, 10, 1, 20, 20, 0); // flag 2: its first and last corner go on
    }

    @Test
    void aLatticeIsCutIntoTwoTrianglesACell() throws Exception {
        Paint.Triangles mesh = mesh(5, "/VerticesPerRow 2", 0, 0, 0, 10, 0, 255, 0, 10, 0, 10, 10, 255);
        assertThat(mesh.values()).containsExactly(0, 0, 0, 10, 0, 1, 0, 10, 0, 10, 0, 1, 0, 10, 0, 10, 10, 1);
    }

    private static double area(Paint.Triangles mesh) {
        double sum = 0;
        float[] v = mesh.values();
        int n = mesh.perCorner();
        for (int i = 0; i < v.length; i += 3 * n) {
            sum += Math.abs((v[i + n] - v[i]) * (v[i + 2 * n + 1] - v[i + 1])
                            - (v[i + 2 * n] - v[i]) * (v[i + n + 1] - v[i + 1]))
                    / 2;
        }
        return sum;
    }

    /** The border of the square 0 to 90, from (0, 0) up, right, down and back. */
    private static final int[] SQUARE = {
        0, 0, 0, 30, 0, 60, 0, 90, 30, 90, 60, 90, 90, 90, 90, 60, 90, 30, 90, 0, 60, 0, 30, 0
    };

    private static int[] data(int[]... parts) {
        return java.util.Arrays.stream(parts)
                .flatMapToInt(java.util.Arrays::stream)
                .toArray();
    }

    @Test
    void aStraightCoonsPatchCoversItsSquareAndBlendsItsCorners() throws Exception {
        Paint.Triangles mesh = mesh(6, "/BitsPerFlag 8", data(new int[] {0}, SQUARE, new int[] {0, 0, 255, 255}));
        assertThat(mesh.values().length / 9).isEqualTo(20 * 20 * 2);
        assertThat(area(mesh)).isCloseTo(8100, within(0.1));
        for (int i = 0; i < mesh.values().length; i += 3) {
            assertThat(mesh.values()[i + 2]).as("value grows along x").isCloseTo(mesh.values()[i] / 90, within(1e-4f));
        }
    }

    @Test
    void aPatchThatContinuesAnotherSharesItsEdge() throws Exception {
        // Flag 2 takes the edge from (90, 90) to (90, 0), so the new patch runs on to the right.
        int[] next = {120, 0, 150, 0, 180, 0, 180, 30, 180, 60, 180, 90, 150, 90, 120, 90};
        Paint.Triangles mesh = mesh(
                6,
                "/BitsPerFlag 8",
                data(new int[] {0}, SQUARE, new int[] {0, 0, 255, 255}, new int[] {2}, next, new int[] {0, 0}));
        assertThat(area(mesh)).isCloseTo(16200, within(0.2));
    }

    @Test
    void aTensorPatchBendsByItsInnerPoints() throws Exception {
        Paint.Triangles mesh = mesh(
                7,
                "/BitsPerFlag 8",
                data(new int[] {0}, SQUARE, new int[] {30, 30, 30, 60, 60, 60, 60, 30}, new int[] {0, 255, 255, 0}));
        assertThat(area(mesh)).isCloseTo(8100, within(0.1));
        for (int i = 0; i < mesh.values().length; i += 3) {
            assertThat(mesh.values()[i + 2])
                    .as("value grows along y")
                    .isCloseTo(mesh.values()[i + 1] / 90, within(1e-4f));
        }
    }

    @Test
    void aShadingPatternIsRelativeToThePageNotToTheCurrentMatrix() throws Exception {
        Op.Fill fill = new PdfText()
                .resources("/Pattern << /P << /PatternType 2 /Matrix [2 0 0 2 0 0] /Shading << /ShadingType 2"
                        + " /ColorSpace /DeviceRGB /Coords [0 0 1 0] /Background [1 1 1] /Function " + TO_RED
                        + " >> >> >>")
                .content("9 0 0 9 0 0 cm /Pattern cs /P scn 0 0 1 1 re f")
                .only(Op.Fill.class, dir);
        Paint.Shading shading = (Paint.Shading) fill.paint();
        assertThat(shading.toPage()).isEqualTo(new Matrix(2, 0, 0, -2, 0, 100));
        assertThat(shading.background()).isEqualTo(new Colour(new ColourSpace.DeviceRgb(), 1, 1, 1));
    }

    @Test
    void aPatternInAFormIsRelativeToTheForm() throws Exception {
        Op.Fill fill = new PdfText()
                .resources("/XObject << /F 5 0 R >>").content("3 0 0 3 0 0 cm /F Do").stream(
                                "/Subtype /Form /BBox [0 0 99 99] /Matrix [1 0 0 1 4 0] /Resources << /Pattern << /P << /PatternType"
                                        + " 2 /Shading << /ShadingType 2 /ColorSpace /DeviceRGB /Coords [0 0 1 0] /Function "
                                        + TO_RED + " >> >> >> >>",
                                "7 0 0 7 0 0 cm /Pattern cs /P scn 0 0 1 1 re f")
                        .only(Op.Fill.class, dir);
        assertThat(((Paint.Shading) fill.paint()).toPage()).isEqualTo(new Matrix(3, 0, 0, -3, 12, 100));
    }

    @Test
    void aColouredTilingCellIsRecordedAtTheOrigin() throws Exception {
        Op.Stroke stroke = new PdfText()
                        .resources("/Pattern << /P 5 0 R >>")
                        .content("q 3 0 0 3 0 0 cm 1 0 0 RG /Pattern CS /P SCN 0 0 m 9 9 l S Q")
                        .stream(TILE + "/PaintType 1 /Matrix [2 0 0 2 5 6] /Resources << >>", "0 0 1 rg 0 0 4 4 re f")
                        .only(Op.Stroke.class, dir);
        Paint.Tiling tiling = (Paint.Tiling) stroke.paint();
        assertThat(tiling.cellBox()).isEqualTo(new Box(0, 0, 10, 10));
        assertThat(tiling.xStep()).isEqualTo(12);
        assertThat(tiling.yStep()).isEqualTo(14);
        assertThat(tiling.toPage()).isEqualTo(new Matrix(2, 0, 0, -2, 5, 94));
        Op.Fill cell = (Op.Fill) tiling.cell().get(0);
        assertThat(cell.bounds()).isEqualTo(new Box(5, 86, 13, 94));
        assertThat(cell.clip()).as("clipped where it is repeated").isNull();
        assertThat(cell.paint()).isEqualTo(new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 0, 0, 1)));
    }

    @Test
    void anUncolouredTilingTakesTheColourItIsUsedWith() throws Exception {
        Op.Fill fill = new PdfText()
                        .resources("/Pattern << /P 5 0 R >> /ColorSpace << /U [/Pattern /DeviceCMYK] >>")
                        .content("/U cs 0 1 0 0 /P scn 0 0 99 99 re f")
                        .stream(TILE + "/PaintType 2 /Resources << >>", "1 0 0 rg 0 0 4 4 re f")
                        .only(Op.Fill.class, dir);
        Op.Fill cell = (Op.Fill) ((Paint.Tiling) fill.paint()).cell().get(0);
        assertThat(cell.paint()).isEqualTo(new Paint.Flat(new Colour(new ColourSpace.DeviceCmyk(), 0, 1, 0, 0)));
    }

    @Test
    void aPatternPaintedWithItselfEnds() throws Exception {
        DisplayList list = new PdfText()
                .resources("/Pattern << /P 5 0 R >>").content("/Pattern cs /P scn 0 0 99 99 re f").stream(
                                TILE + "/PaintType 1 /Resources << /Pattern << /P 5 0 R >> >>",
                                "/Pattern cs /P scn 0 0 9 9 re f")
                        .record(dir);
        assertThat(list.ops()).hasSize(1);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("contains itself"));
    }

    @Test
    void aDamagedShadingCostsOnlyItself() throws Exception {
        DisplayList list = new PdfText()
                .resources("/Shading << /S << /ShadingType 2 /ColorSpace /DeviceRGB /Coords [0 0] >> >>")
                .content("/S sh 0 0 9 9 re f")
                .record(dir);
        assertThat(list.ops()).hasSize(1);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("damaged content (operator sh)"));
    }
}
