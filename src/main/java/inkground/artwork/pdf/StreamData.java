package inkground.artwork.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.filter.Filter;
import org.apache.pdfbox.filter.FilterFactory;

/** Decodes the data of streams within a byte limit, so that a few bytes cannot unpack to more than memory holds. */
final class StreamData {
    /** Largest result of a filter that is not the last one: 512 MiB. */
    private static final int MAX_INTERMEDIATE = 512 << 20;

    /** No filter of the standard unpacks a byte to more than this many; deflate reaches 1,032, LZW about 1,400. */
    private static final int MAX_RATIO = 1500;

    private StreamData() {}

    /** Names of the stream's filters, first applied first. */
    static List<COSName> filters(COSStream stream) {
        List<COSName> out = new ArrayList<>();
        COSBase filters = stream.getFilters();
        if (filters instanceof COSName one) {
            out.add(one);
        } else if (filters instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSName name) {
                    out.add(name);
                }
            }
        }
        return out;
    }

    /** All data, fully decoded; more than {@code limit} bytes are refused. */
    static byte[] all(COSStream stream, int limit) throws IOException {
        byte[] data = decode(stream, filters(stream).size(), limit);
        if (data.length == limit) {
            throw new IOException("a stream of more than " + limit + " bytes");
        }
        return data;
    }

    /** The first {@code length} bytes, fully decoded; fewer when there are fewer. */
    static byte[] prefix(COSStream stream, int length) throws IOException {
        return decode(stream, filters(stream).size(), length);
    }

    /** The data after the first {@code count} filters, cut off at {@code limit} bytes. */
    static byte[] decode(COSStream stream, int count, int limit) throws IOException {
        List<COSName> filters = filters(stream);
        byte[] data;
        try (InputStream raw = stream.createRawInputStream()) {
            data = raw.readNBytes(count == 0 ? limit : Integer.MAX_VALUE);
        }
        for (int i = 0; i < count; i++) {
            boolean last = i == count - 1;
            Filter filter = FilterFactory.INSTANCE.getFilter(filters.get(i));
            Bounded out = new Bounded(last ? limit : MAX_INTERMEDIATE);
            try {
                filter.decode(new ByteArrayInputStream(data), out, stream, i);
            } catch (Full full) {
                if (!last) {
                    throw new IOException("a stream that unpacks to more than " + MAX_INTERMEDIATE + " bytes", full);
                }
            } catch (IOException | RuntimeException e) {
                if (out.size() == 0) {
                    throw new IOException("a stream that cannot be unpacked", e);
                }
                // What was unpacked before the damage is used, as the standard's readers do.
            }
            data = out.toByteArray();
        }
        return data;
    }

    /** Refuses a stream that unpacks to more than {@code limit} bytes; asked before the library unpacks it whole. */
    static void checkSize(COSStream stream, int limit) throws IOException {
        int count = filters(stream).size();
        boolean certainlySmall = count == 0 || count == 1 && stream.getLength() < limit / MAX_RATIO;
        if (!certainlySmall && decode(stream, count, limit).length == limit) {
            throw new IOException("a stream that unpacks to more than " + limit + " bytes");
        }
    }

    /** Takes bytes up to a limit, then stops the filter that writes them. */
    private static final class Bounded extends ByteArrayOutputStream {
        private final int limit;

        Bounded(int limit) {
            super(Math.min(limit, 1 << 16));
            this.limit = limit;
        }

        @Override
        public synchronized void write(int b) {
            if (count >= limit) {
                throw new Full();
            }
            super.write(b);
        }

        @Override
        public synchronized void write(byte[] b, int off, int len) {
            int room = Math.min(len, limit - count);
            super.write(b, off, room);
            if (room < len) {
                throw new Full();
            }
        }

        @Override
        public void write(byte[] b) {
            write(b, 0, b.length);
        }

        @Override
        public void writeBytes(byte[] b) {
            write(b, 0, b.length);
        }
    }

    /** The limit was reached. */
    private static final class Full extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Full() {
            super("limit reached", null, false, false);
        }
    }
}
