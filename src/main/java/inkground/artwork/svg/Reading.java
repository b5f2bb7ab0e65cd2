package inkground.artwork.svg;

import inkground.base.Cancel;
import inkground.base.Refusal;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.GZIPInputStream;

/** One reading of a file and of the drawings it places: the limits for all of them together, and what is used of them. */
final class Reading {
    /** Deeper than anyone places drawings in drawings: common practice, no source. */
    private static final int MAX_PLACED_DEPTH = 8;

    final String name;
    final Limits limits;
    final Cancel cancel;
    final Notes notes = new Notes();
    private long bytes;
    private int parsed;
    private long built;
    private int nesting;
    private int placed;

    /** @param name of the file, for messages */
    Reading(String name, Limits limits, Cancel cancel) {
        this.name = name;
        this.limits = limits;
        this.cancel = cancel;
    }

    /** @return what a stream holds, unpacked where it is packed by gzip */
    byte[] unpack(InputStream raw) throws IOException {
        InputStream in = new BufferedInputStream(raw);
        in.mark(2);
        boolean packed = in.read() == 0x1f && in.read() == 0x8b;
        in.reset();
        byte[] data = (packed ? new GZIPInputStream(in) : in).readNBytes((int) (limits.bytes() - bytes) + 1);
        text(data.length);
        return data;
    }

    /** Counts text that is read. */
    void text(int length) {
        bytes += length;
        if (bytes > limits.bytes()) {
            throw stop("holds more than " + (limits.bytes() >> 20)
                    + " MB of text, placed drawings included. Simplify the" + " artwork or place its parts as images.");
        }
    }

    /** Counts an element of the text. */
    void parsed() {
        cancel.check();
        if (++parsed > limits.elements()) {
            throw stop("has more than " + limits.elements() + " elements. Simplify the artwork or place its parts as"
                    + " images.");
        }
    }

    /** Counts elements that are drawn. */
    void built(long elements) {
        cancel.check();
        built += elements;
        if (built > limits.elements()) {
            throw stop("draws more than " + limits.elements()
                    + " elements, repeated ones counted each time. Simplify the" + " artwork.");
        }
    }

    /** @return number of elements drawn until now */
    long built() {
        return built;
    }

    /** Goes one element deeper. */
    void enter() {
        if (++nesting > limits.nesting()) {
            throw stop("nests elements more than " + limits.nesting()
                    + " deep, or holds one that uses itself. Ungroup the" + " artwork or export it again.");
        }
    }

    void leave() {
        nesting--;
    }

    /** Goes into a placed drawing. */
    void enterPlaced() {
        if (++placed > MAX_PLACED_DEPTH) {
            throw stop("places drawings in drawings more than " + MAX_PLACED_DEPTH + " deep. Export it as one file.");
        }
    }

    void leavePlaced() {
        placed--;
    }

    /** @return what ends the reading of the whole file, to be thrown */
    Stopped stop(String reason) {
        return new Stopped(new Refusal(name + " " + reason));
    }
}
