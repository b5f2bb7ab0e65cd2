package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.image.Ycc;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A JPEG 2000 file inside a PDF file: JPXDecode, ISO 32000-2 §7.4.9. The codestream gives components; what
 * they stand for is read from the boxes here.
 */
final class JpxFile {
    private final JpxCodestream codestream;
    private final JpxBoxes boxes;
    private final JpxBoxes.Channel[] channels;

    private JpxFile(JpxCodestream codestream, JpxBoxes boxes) {
        this.codestream = codestream;
        this.boxes = boxes;
        this.channels = boxes.channels(codestream.components());
    }

    /** Reads boxes and size marker (ISO/IEC 15444-1 annexes A.5.1 and I), before anything is allocated; null for none. */
    static JpxFile of(byte[] data) {
        JpxBoxes boxes = JpxBoxes.of(data);
        JpxCodestream codestream = JpxCodestream.of(data, boxes.codestream());
        return codestream == null ? null : new JpxFile(codestream, boxes);
    }

    int width() {
        return codestream.width();
    }

    int height() {
        return codestream.height();
    }

    /** Values per sample while decoding: components of the codestream, or channels where a palette makes more of them. */
    int values() {
        return Math.max(codestream.components(), channels.length);
    }

    /** Bits of the first channel. */
    int bits() {
        return channels.length == 0 ? codestream.bits(0) : depth(channels[0]);
    }

    private int depth(JpxBoxes.Channel channel) {
        return channel.column() < 0
                ? codestream.bits(channel.component())
                : boxes.palette().depths()[channel.column()];
    }

    /** The space that the file itself states, for images whose dictionary states none. */
    ColourSpace space() {
        int n = (int) Arrays.stream(channels).filter(JpxBoxes.Channel::isColour).count();
        return boxes.space(boxes.channelsTyped() || n < 2 ? n : withoutOpacity(n));
    }

    /** Files that do not say which channel is opacity have it after the colours. */
    private int withoutOpacity(int n) {
        int stated = boxes.coloursOfSpace();
        return stated > 0 && stated < n ? stated : n == 2 ? 1 : n;
    }

    /**
     * Samples in the space that the image is used with.
     *
     * @param colour interleaved bytes; indices as they stand
     * @param opacity one byte a sample; null where the file has none
     */
    record Samples(byte[] colour, byte[] opacity) {}

    /**
     * Decodes.
     *
     * @param space of the image
     * @param own whether the space is the file's own, so that its luminance and chrominance become RGB
     */
    Samples decode(ColourSpace space, boolean own) throws IOException {
        boolean indices = space instanceof ColourSpace.Indexed;
        int n = space.components();
        JpxBoxes.Channel[] all = indices ? new JpxBoxes.Channel[] {JpxBoxes.Channel.plain(0)} : channels;
        JpxBoxes.Channel[] colours =
                Arrays.stream(all).filter(JpxBoxes.Channel::isColour).toArray(JpxBoxes.Channel[]::new);
        if (colours.length < n && colours.length != 1) {
            throw new IOException("a JPEG 2000 image of " + colours.length + " channels in a space of " + n);
        }
        JpxBoxes.Channel opacity = opacity(all, colours, n);
        int count = Math.multiplyExact(width(), height());
        List<Target> targets = new ArrayList<>();
        byte[] colour = new byte[Math.multiplyExact(count, n)];
        for (int i = 0; i < n; i++) {
            targets.add(new Target(colours[Math.min(i, colours.length - 1)], indices, colour, i, n));
        }
        byte[] alpha = opacity == null ? null : new byte[count];
        if (opacity != null) {
            targets.add(new Target(opacity, false, alpha, 0, 1));
        }
        codestream.decode((component, from, row, values, length) -> {
            for (Target target : targets) {
                if (target.channel().component() == component) {
                    put(target, row * width() + from, values, length);
                }
            }
        });
        if (own && boxes.isYcc() && n == 3) {
            Ycc.toRgb(colour, 3);
        }
        return new Samples(colour, alpha);
    }

    private JpxBoxes.Channel opacity(JpxBoxes.Channel[] all, JpxBoxes.Channel[] colours, int n) {
        for (JpxBoxes.Channel channel : all) {
            if (channel.isOpacity()) {
                return channel;
            }
        }
        return !boxes.channelsTyped() && colours.length > n ? colours[colours.length - 1] : null;
    }

    /** Where a channel's values go: every {@code step}th place of {@code out} from {@code offset}. */
    private record Target(JpxBoxes.Channel channel, boolean indices, byte[] out, int offset, int step) {}

    /** Puts a run of values, scaled to bytes, from a sample on. */
    private void put(Target target, int sample, int[] values, int count) {
        JpxBoxes.Channel channel = target.channel();
        int most = (int) Math.min(Integer.MAX_VALUE, (1L << depth(channel)) - 1);
        int[] lookup = channel.column() < 0 ? null : boxes.palette().columns()[channel.column()];
        boolean asIs = target.indices() || most == 255;
        int at = sample * target.step() + target.offset();
        for (int x = 0; x < count; x++, at += target.step()) {
            int value = lookup == null ? values[x] : lookup[Math.min(lookup.length - 1, values[x])];
            target.out()[at] = (byte) Math.max(0, Math.min(255, asIs ? value : Math.round(value * 255.0 / most)));
        }
    }
}
