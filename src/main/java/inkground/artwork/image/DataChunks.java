package inkground.artwork.image;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import javax.imageio.stream.ImageInputStream;

/** Pieces of a file as one stream. */
final class DataChunks extends InputStream {
    private final ImageInputStream in;
    private final List<long[]> pieces;
    private int next;
    private long left;

    /** @param pieces offset and length of each */
    DataChunks(ImageInputStream in, List<long[]> pieces) {
        this.in = in;
        this.pieces = pieces;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 255;
    }

    @Override
    public int read(byte[] out, int offset, int length) throws IOException {
        while (left <= 0) {
            if (next == pieces.size()) {
                return -1;
            }
            in.seek(pieces.get(next)[0]);
            left = pieces.get(next++)[1];
        }
        int got = in.read(out, offset, (int) Math.min(length, left));
        left -= got < 0 ? left : got;
        return got;
    }
}
