package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.filled;
import static inkground.appearance.Samples.planes;
import static inkground.appearance.Samples.process;
import static inkground.appearance.Samples.spot;
import static inkground.appearance.Samples.substrate;
import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Cancel;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.plate.InkPlanes;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PrintedPixelsTest {
    private static final int W = 200;
    private static final int H = 90;
    private static final Lab[] PAPERS = {new Lab(95, 0, -2), new Lab(78, 8, 22), new Lab(22, 0, 1), new Lab(88, -4, 40)
    };

    private final List<InkColour> colours = new ArrayList<>(process());
    private final InkPlanes photograph;

    PrintedPixelsTest() {
        colours.add(spot("Red", new Lab(45, 60, 35), 0.3));
        Random random = new Random(3);
        byte[][] rasters = new byte[7][];
        for (int i = 0; i < 4; i++) {
            rasters[i] = new byte[W * H];
            random.nextBytes(rasters[i]);
        }
        rasters[4] = filled(W * H, 0);
        rasters[4][W * H - 1] = (byte) 255; // the last cell is no photograph alone
        rasters[5] = filled(W * H, 255);
        rasters[6] = filled(W * H, 255);
        photograph = planes(colours, W, H, rasters);
    }

    private StackModel on(Substrate.Kind kind, Lab lab) {
        return new StackModel(Stack.of(substrate(kind, lab), colours, FOGRA));
    }

    @Test
    void pixels_known_beforehand_get_the_very_same_colours_on_every_paper() {
        PrintedPixels known = PrintedPixels.of(photograph, on(Substrate.Kind.PAPER, PAPERS[0]), new Cancel())
                .orElseThrow();
        for (Lab paper : PAPERS) {
            StackModel model = on(Substrate.Kind.PAPER, paper);
            int[] sooner = new int[W * H + 7];
            int[] usual = new int[W * H + 7];
            Appearance.paint(photograph, known, model, sooner, 7, W, new Cancel());
            Appearance.paint(photograph, model, usual, 7, W, new Cancel());
            assertThat(sooner).isEqualTo(usual);
            assertThat(sooner[6]).isZero();
        }
    }

    @Test
    void they_are_what_the_model_computes_but_for_what_the_eye_hardly_sees() {
        PrintedPixels known = PrintedPixels.of(photograph, on(Substrate.Kind.PAPER, PAPERS[0]), new Cancel())
                .orElseThrow();
        for (Lab paper : PAPERS) {
            StackModel model = on(Substrate.Kind.PAPER, paper);
            int[] argb = new int[W * H];
            Appearance.paint(photograph, known, model, argb, 0, W, new Cancel());
            double sum = 0;
            double[] xyz = new double[3];
            int[] tints = new int[5];
            for (int i = 0; i < W * H; i++) {
                for (int p = 0; p < 5; p++) {
                    tints[p] = photograph.get(p, i % W, i / W);
                }
                model.toXyz(tints, xyz);
                sum += Cie.deltaE00(lab(Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2])), lab(argb[i]));
            }
            assertThat(sum / (W * H)).as("on %s", paper).isLessThan(0.25);
        }
    }

    @Test
    void bare_paper_keeps_its_colour_exactly() {
        for (Lab paper : PAPERS) {
            assertThat(on(Substrate.Kind.PAPER, paper).toArgb(new int[5])).isEqualTo(Srgb.labToArgb(paper));
        }
    }

    @Test
    void they_are_not_used_where_there_is_more_to_a_colour_than_process_inks_on_paper() {
        Cancel cancel = new Cancel();
        assertThat(PrintedPixels.of(photograph, on(Substrate.Kind.GARMENT, NAVY_SHIRT.lab()), cancel))
                .isEmpty();
        PrintedPixels known = PrintedPixels.of(photograph, on(Substrate.Kind.PAPER, PAPERS[0]), cancel)
                .orElseThrow();
        Stack paper = Stack.of(substrate(Substrate.Kind.PAPER, PAPERS[1]), colours, FOGRA);
        StackModel withoutCyan = new StackModel(paper.showing(Set.of(1, 2, 3, 4)));
        int[] sooner = new int[W * H];
        int[] usual = new int[W * H];
        Appearance.paint(photograph, known, withoutCyan, sooner, 0, W, cancel);
        Appearance.paint(photograph, withoutCyan, usual, 0, W, cancel);
        assertThat(sooner).isEqualTo(usual);
    }

    private static Lab lab(int argb) {
        return Srgb.toLab((argb >> 16 & 255) / 255.0, (argb >> 8 & 255) / 255.0, (argb & 255) / 255.0);
    }
}
