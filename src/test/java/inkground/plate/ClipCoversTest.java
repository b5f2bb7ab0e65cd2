package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Style;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Long chains of clips, whose work is counted in paths that are rasterised. */
class ClipCoversTest {
    private static final int LONG = 20_000;
    private static final int WIDTH = 64;

    private final CellPool pool = new CellPool();
    private int filled;
    private int out;
    private int most;

    private final ClipCovers covers = new ClipCovers(
            (clip, into) -> {
                filled++;
                into.fill(clip.edges(), clip.rule(), 0, 0, WIDTH);
            },
            () -> {
                most = Math.max(most, ++out);
                return new CoverBand(pool);
            },
            band -> {
                out--;
                band.release();
            });

    /** A triangle, which no rectangle can stand for, with its right edge at {@code right}. */
    private static Outline triangle(double right) {
        Outline.Builder path = new Outline.Builder();
        path.move(0, -10);
        path.line(right, -10);
        path.line(0, 1000);
        path.close();
        return path.build();
    }

    private static Clip chain(int links) {
        Clip clip = null;
        for (int i = 0; i < links; i++) {
            clip = Clip.of(clip, triangle(40 + i % 2 + i * 1e-4), FillRule.NON_ZERO);
        }
        return clip;
    }

    private static List<PreparedClip> links(int count) {
        List<PreparedClip> out = new ArrayList<>();
        for (PreparedClip c = new PreparedClips(Matrix.IDENTITY).of(chain(count)); c != null; c = c.parent()) {
            out.add(0, c);
        }
        return out;
    }

    @Test
    void aLongChainIsPreparedAndRasterisedOnceInBoundedMemory() {
        List<PreparedClip> links = links(LONG);
        assertThat(links).hasSize(LONG);
        PreparedClip last = links.get(LONG - 1);
        covers.of(last);
        covers.of(last);
        assertThat(filled).isEqualTo(LONG);
        assertThat(covers.size()).isLessThanOrEqualTo(ClipCovers.KEPT);
        assertThat(most).isLessThanOrEqualTo(ClipCovers.KEPT + 2);
    }

    @Test
    void whatIsPaintedAtEveryLevelOfANestOnTheWayInAndOutCostsAFewTimesItsDepth() {
        List<PreparedClip> links = links(LONG);
        links.forEach(covers::of);
        assertThat(filled).as("on the way in").isEqualTo(LONG);
        for (int i = LONG - 1; i >= 0; i--) {
            covers.of(links.get(i));
        }
        assertThat(filled).as("and out").isLessThan(8 * LONG);
        assertThat(most).isLessThanOrEqualTo(ClipCovers.KEPT + 2);
    }

    @Test
    void whatIsForgottenAndMadeAgainIsTheSame() {
        List<PreparedClip> links = links(300);
        int[] once = cell(covers.of(links.get(3)));
        links.forEach(covers::of);
        assertThat(cell(covers.of(links.get(3)))).isEqualTo(once);
        assertThat(Arrays.stream(once).filter(v -> v > 0 && v < Fixed.COVER_ONE).count())
                .as("pixels at the edge")
                .isPositive();
    }

    private int[] cell(CoverBand band) {
        Cover cover = new Cover(pool);
        cover.times(band, band.lastCol());
        int[] values = pool.take();
        for (int i = 0; i < values.length; i++) {
            values[i] = cover.at(i);
        }
        return values;
    }

    @Test
    void allBandsAreGivenBackForTheNextBand() {
        links(100).forEach(covers::of);
        covers.clear();
        assertThat(out).isZero();
        assertThat(covers.size()).isZero();
    }

    @Test
    void anOutlineCutByItselfAgainAndAgainIsOneClip() {
        Clip clip = null;
        for (int i = 0; i < LONG; i++) {
            clip = Clip.of(clip, triangle(40), FillRule.NON_ZERO);
        }
        assertThat(clip.parent()).isNull();
    }

    @Test
    void aPageWithALongChainIsPaintedInAThreadOfLittleStack() throws Exception {
        Op op = Pages.fill(Pages.rect(0, 0, 50, 50), Pages.cmyk(1, 0, 0, 0), Style.PLAIN, chain(LONG));
        List<InkPlanes> painted = new ArrayList<>();
        List<Throwable> failed = new ArrayList<>();
        Thread thread = new Thread(
                null,
                () -> {
                    try {
                        painted.add(Pages.render(Pages.page(50, 50, op)));
                    } catch (Throwable e) { // handed to the test's own thread
                        failed.add(e);
                    }
                },
                "little",
                128 << 10);
        thread.start();
        thread.join();
        assertThat(failed).isEmpty();
        assertThat(painted.get(0).get(0, 20, 20)).isEqualTo(255);
        assertThat(painted.get(0).get(0, 45, 20)).isZero();
    }
}
