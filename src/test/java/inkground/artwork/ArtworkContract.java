package inkground.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What every reader promises, whatever the kind of file. */
public abstract class ArtworkContract {
    private static final int DAMAGED_FILES = 120;
    private static final long SEED = 20_261_125;
    private static final Duration SOON = Duration.ofSeconds(60);

    @TempDir
    protected Path dir;

    /** Opens a file with the reader that is tested. */
    protected abstract Artwork open(Path file, Cancel cancel) throws Refusal;

    /** A sound file of the kind. */
    protected abstract byte[] sound() throws IOException;

    /** The ending of its name, with a dot. */
    protected abstract String ending();

    /** Files that ask for too much, by what they are; each must be refused at opening or recording. */
    protected abstract Map<String, byte[]> hostile() throws IOException;

    private Path write(byte[] data) throws IOException {
        return Files.write(dir.resolve("artwork" + ending()), data);
    }

    @Test
    void aSoundFileHasPagesWhoseBoxesLieInsideTheMedium() throws Exception {
        try (Artwork artwork = open(write(sound()), new Cancel())) {
            assertThat(artwork.pages()).isNotEmpty();
            for (PageInfo page : artwork.pages()) {
                Box media = page.box(PageBox.MEDIA);
                assertThat(media.isEmpty()).isFalse();
                assertThat(page.rotation() % 90).isZero();
                for (PageBox which : PageBox.values()) {
                    assertThat(page.box(which).intersect(media)).isEqualTo(page.box(which));
                }
            }
        }
    }

    @Test
    void aPageIsRecordedAlikeTwice() throws Exception {
        try (Artwork artwork = open(write(sound()), new Cancel())) {
            DisplayList first = artwork.record(1, new Cancel(), Progress.NONE);
            DisplayList second = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(first.ops()).isNotEmpty().hasSameSizeAs(second.ops());
            assertThat(first.page()).isEqualTo(second.page());
            for (int i = 0; i < first.ops().size(); i++) {
                assertThat(first.ops().get(i).bounds())
                        .isEqualTo(second.ops().get(i).bounds());
                assertThat(first.ops().get(i).origin().object()).isNotBlank();
            }
        }
    }

    @Test
    void cancelledWorkStops() throws Exception {
        Path file = write(sound());
        Cancel cancelled = new Cancel();
        cancelled.request();
        try (Artwork artwork = open(file, new Cancel())) {
            assertThatThrownBy(() -> artwork.record(1, cancelled, Progress.NONE))
                    .isInstanceOf(CancellationException.class);
        }
        assertThatThrownBy(() -> open(file, cancelled)).isInstanceOf(CancellationException.class);
    }

    @Test
    void missingAndEmptyFilesAreRefusedInOneLine() throws Exception {
        assertRefused(dir.resolve("none" + ending()));
        assertRefused(write(new byte[0]));
    }

    @Test
    void hostileFilesAreRefusedInOneLineAndSoon() throws Exception {
        for (Map.Entry<String, byte[]> each : hostile().entrySet()) {
            Path file = write(each.getValue());
            String message = assertTimeoutPreemptively(SOON, () -> refusal(file), each.getKey());
            assertThat(message).as(each.getKey()).isNotNull();
            assertThat(message).contains("artwork" + ending()).doesNotContain("\n", "Exception", "java.");
        }
    }

    @Test
    void damagedFilesEndInADisplayListOrARefusal() throws Exception {
        byte[] whole = sound();
        Random random = new Random(SEED);
        for (int i = 0; i < DAMAGED_FILES; i++) {
            byte[] damaged = whole.clone();
            if (i % 3 == 0) {
                damaged = java.util.Arrays.copyOf(whole, random.nextInt(whole.length));
            }
            for (int k = 0; k < 1 + random.nextInt(6) && damaged.length > 0; k++) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            Path file = write(damaged);
            String message = assertTimeoutPreemptively(SOON, () -> refusal(file));
            if (message != null) {
                assertThat(message).doesNotContain("\n", "Exception", "java.");
            }
        }
    }

    private void assertRefused(Path file) {
        assertThat(refusal(file)).isNotNull().doesNotContain("\n", "Exception", "java.");
    }

    /** Opens, records and decodes everything. @return the refusal's line, or null when all went well */
    private String refusal(Path file) {
        try (Artwork artwork = open(file, new Cancel())) {
            for (Op op : artwork.record(1, new Cancel(), Progress.NONE).ops()) {
                if (op instanceof Op.Image image
                        && (long) image.image().width() * image.image().height() < 1_000_000) {
                    image.image().decode();
                }
            }
            return null;
        } catch (Refusal refused) {
            return refused.getMessage();
        }
    }
}
