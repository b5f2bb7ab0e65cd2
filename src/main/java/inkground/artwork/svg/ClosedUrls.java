package inkground.artwork.svg;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.util.Iterator;
import org.apache.batik.util.ParsedURL;
import org.apache.batik.util.ParsedURLData;
import org.apache.batik.util.ParsedURLDefaultProtocolHandler;

/** Addresses that can be compared but never opened: no part of an SVG file makes the library fetch or read anything. */
final class ClosedUrls extends ParsedURLDefaultProtocolHandler {
    private ClosedUrls(String protocol) {
        super(protocol);
    }

    /** Closes every address but those that hold their data themselves, for the life of the program. */
    static void close() {
        ParsedURL.registerHandler(new ClosedUrls(null));
        ParsedURL.registerHandler(new ClosedUrls("jar"));
    }

    @Override
    protected ParsedURLData constructParsedURLData() {
        return new Closed();
    }

    @Override
    protected ParsedURLData constructParsedURLData(URL url) {
        Closed closed = new Closed();
        closed.protocol = url.getProtocol();
        closed.host = url.getHost();
        closed.port = url.getPort();
        closed.path = url.getFile();
        closed.ref = url.getRef();
        return closed;
    }

    private static final class Closed extends ParsedURLData {
        @Override
        public InputStream openStream(String agent, @SuppressWarnings("rawtypes") Iterator types) throws IOException {
            throw new IOException("outside the file");
        }

        @Override
        public InputStream openStreamRaw(String agent, @SuppressWarnings("rawtypes") Iterator types)
                throws IOException {
            throw new IOException("outside the file");
        }
    }
}
