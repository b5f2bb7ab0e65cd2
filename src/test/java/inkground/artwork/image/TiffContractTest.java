package inkground.artwork.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TiffContractTest extends ArtworkContract {
    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return ImageArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() throws IOException {
        return new Pictures.Tiff(4, 4, 8, 4, 5, new byte[64]).end(false);
    }

    @Override
    protected String ending() {
        return ".tif";
    }

    @Override
    protected Map<String, byte[]> hostile() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        byte[] loop = new Pictures.Tiff(4, 4, 8, 4, 5, new byte[64]).end(true);
        files.put("a directory that names itself as the next", loop);
        files.put("a directory that names an earlier one as the next", backTo(8, chain(3)));
        files.put("1,001 pictures", chain(1001));
        files.put("fields that share 30 MB of values, named 40 times", shared(30 << 20, 40));
        files.putAll(single());
        return files;
    }

    @Test
    void aLoopOfDirectoriesIsRefusedByThatName() throws Exception {
        for (byte[] loop : List.of(new Pictures.Tiff(4, 4, 8, 4, 5, new byte[64]).end(true), backTo(8, chain(3)))) {
            assertThatThrownBy(() -> open(Files.write(dir.resolve("loop.tif"), loop), new Cancel()))
                    .isInstanceOf(Refusal.class)
                    .hasMessage(
                            "loop.tif names one of its pictures as the next one of itself, without end. It is damaged:"
                                    + " save it again.");
        }
        try (Artwork three = open(Files.write(dir.resolve("three.tif"), chain(3)), new Cancel())) {
            assertThat(three.pages()).hasSize(3);
        }
    }

    private static final int DIRECTORY = 2 + 4 * 12 + 4;

    /** Grey pictures of one sample, each directory naming the one after it. */
    private static byte[] chain(int pictures) {
        ByteBuffer out = ByteBuffer.allocate(8 + pictures * DIRECTORY);
        out.put(new byte[] {'M', 'M', 0, 42}).putInt(8);
        for (int i = 1; i <= pictures; i++) {
            out.putShort((short) 4);
            for (int[] field : new int[][] {{256, 1}, {257, 1}, {258, 8}, {273, 8}}) {
                out.putShort((short) field[0]).putShort((short) 4).putInt(1).putInt(field[1]);
            }
            out.putInt(i == pictures ? 0 : 8 + i * DIRECTORY);
        }
        return out.array();
    }

    /** Has the last directory of a chain name an earlier one as the next. */
    private static byte[] backTo(int offset, byte[] chain) {
        return ByteBuffer.wrap(chain).putInt(chain.length - 4, offset).array();
    }

    private static byte[] shared(int bytes, int fields) {
        ByteBuffer out = ByteBuffer.allocate(8 + 2 + fields * 12 + 4 + bytes);
        out.put(new byte[] {'M', 'M', 0, 42}).putInt(8).putShort((short) fields);
        for (int i = 0; i < fields; i++) {
            out.putShort((short) (40_000 + i))
                    .putShort((short) 3)
                    .putInt(bytes / 2)
                    .putInt(8 + 2 + fields * 12 + 4);
        }
        return out.array();
    }

    private static Map<String, byte[]> single() throws IOException {
        return Map.of(
                "a huge picture",
                new Pictures.Tiff(2_000_000_000, 2_000_000_000, 8, 3, 2, new byte[9]).end(false),
                "300 samples",
                new Pictures.Tiff(2, 2, 8, 300, 5, new byte[9]).end(false),
                "floating point",
                new Pictures.Tiff(2, 2, 32, 3, 2, new byte[48]).number(339, 3).end(false),
                "810,000 tiles of one sample, of which one is there",
                new Pictures.Tiff(900, 900, 8, 1, 1, new byte[9])
                        .number(322, 1)
                        .number(323, 1)
                        .number(324, 8)
                        .end(false),
                "strips of one row, of which one is there",
                new Pictures.Tiff(2, 400_000, 8, 1, 1, new byte[9])
                        .number(278, 1)
                        .end(false),
                "tiles of 16 million samples across",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 16_000_000)
                        .number(323, 16_000_000)
                        .number(324, 8)
                        .end(false),
                "a tile of 1.6 GB for 64 samples",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 40_000)
                        .number(323, 40_000)
                        .number(324, 8)
                        .end(false),
                "tiles of no size",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 0)
                        .number(323, 0)
                        .number(324, 8)
                        .end(false));
    }
}
