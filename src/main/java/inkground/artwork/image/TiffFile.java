package inkground.artwork.image;

import static inkground.artwork.image.TiffDirectory.*;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.imageio.stream.ImageInputStream;

/**
 * Reads TIFF 6.0 and BigTIFF: grey, RGB, palette, CMYK, other inks, YCbCr and Lab of 1 to 16 bits, in planes or not, with
 * alpha and with spot inks as extra samples. Every full picture is a frame; reduced ones and masks are passed over, and so are
 * layers, of which the file holds the flattened picture.
 */
final class TiffFile {
    private static final int MAX_PAGES = 1000;
    private static final int MAX_SAMPLES = 32;
    private static final List<Double> D50 = List.of(0.9642, 1.0, 0.8249);

    private static final int WHITE_IS_ZERO = 0;
    private static final int PALETTE = 3;
    private static final int SEPARATED = 5;
    private static final int YCBCR = 6;
    private static final int CIE_LAB = 8;
    private static final int ICC_LAB = 9;

    private final String name;
    private final Input input;
    private final TiffDirectory tags;
    private final int index;
    private final List<Frame.Note> notes = new ArrayList<>();
    private final int width;
    private final int height;
    private final int bits;
    private final int samples;
    private final int photometric;
    private final int compression;
    private final List<String> inks = new ArrayList<>();
    /** How many samples are colour. */
    private final int colours;
    /** Which sample is alpha; -1 for none. */
    private final int alpha;

    private final boolean premultiplied;
    private final ColourSpace space;

    static List<Frame> read(Input input, String name) throws IOException, Refusal {
        List<TiffDirectory> directories;
        try (ImageInputStream in = input.open()) {
            directories = TiffDirectory.readAll(in, MAX_PAGES + 1);
        } catch (TiffDirectory.Loop e) {
            throw new Refusal(
                    name
                            + " names one of its pictures as the next one of itself, without end. It is damaged: save it again.",
                    e);
        }
        if (directories.size() > MAX_PAGES) {
            throw new Refusal(name + " holds more than " + MAX_PAGES + " pictures. Split it.");
        }
        List<Frame> frames = new ArrayList<>();
        for (int i = 0; i < directories.size(); i++) {
            boolean whole = (directories.get(i).number(SUBFILE_TYPE, 0) & 5) == 0;
            if (whole || directories.size() == 1) {
                frames.add(new TiffFile(input, name, directories.get(i), i).frame());
            }
        }
        if (frames.isEmpty()) {
            throw new IOException("no whole picture");
        }
        return frames;
    }

    private TiffFile(Input input, String name, TiffDirectory tags, int index) throws IOException, Refusal {
        this.input = input;
        this.name = name;
        this.tags = tags;
        this.index = index;
        double[] w = tags.numbers(WIDTH);
        double[] h = tags.numbers(HEIGHT);
        if (w == null || h == null) {
            throw new IOException("no size");
        }
        this.samples = tags.number(SAMPLES, 1);
        if (samples < 1 || samples > MAX_SAMPLES) {
            throw new IOException(samples + " samples");
        }
        LazyImage.checkSize(name, (long) w[0], (long) h[0], samples);
        this.width = (int) w[0];
        this.height = (int) h[0];
        this.bits = bits();
        this.compression = tags.number(COMPRESSION, 1);
        this.photometric = tags.number(PHOTOMETRIC, samples >= 3 ? 2 : 1);
        this.colours = colours();
        double[] extras = tags.numbers(EXTRA_SAMPLES);
        int kind = samples > colours && extras != null ? (int) extras[0] : 0;
        boolean guessed = samples > colours && extras == null && photometric != SEPARATED;
        this.alpha = kind == 1 || kind == 2 || guessed ? colours : -1;
        this.premultiplied = kind == 1;
        this.space = space();
    }

    private int bits() throws IOException, Refusal {
        double[] all = tags.numbers(BITS);
        int first = all == null ? 1 : (int) all[0];
        boolean mixed = all != null && Arrays.stream(all).anyMatch(b -> b != first);
        int format = tags.number(SAMPLE_FORMAT, 1);
        if (mixed || first < 1 || first > 16 || format != 1 && format != 4) {
            throw new Refusal(name + " is a TIFF of " + (mixed ? "mixed" : first) + " bits per sample"
                    + (format == 3 ? " in floating point" : "")
                    + "; 1 to 16 bits are read. Save it with 8 or 16 bits.");
        }
        return first;
    }

    private int colours() throws IOException, Refusal {
        int wanted =
                switch (photometric) {
                    case WHITE_IS_ZERO, 1, PALETTE -> 1;
                    case 2, YCBCR, CIE_LAB, ICC_LAB -> 3;
                    case SEPARATED -> separated();
                    default ->
                        throw new Refusal(name + " is a TIFF of a kind that is not read (photometric " + photometric
                                + "). Save it as grey, RGB, CMYK or Lab.");
                };
        if (wanted > samples) {
            throw new IOException(samples + " samples of " + wanted + " components");
        }
        return wanted;
    }

    /**
     * How many samples are process inks; the names of inks beside them go to {@link #inks}. An extra sample without a name is
     * no ink: many files carry a selection there.
     */
    private int separated() {
        List<String> names = tags.texts(INK_NAMES);
        double[] extras = tags.numbers(EXTRA_SAMPLES);
        if (tags.number(INK_SET, 1) != 2) {
            List<String> known = names.size() > 4 ? names.subList(4, names.size()) : PhotoResources.channelNames(tags);
            for (int i = 4; i < samples; i++) {
                int kind = extras != null && i - 4 < extras.length ? (int) extras[i - 4] : 0;
                int at = inks.size();
                if (kind == 0 && at < known.size() && !known.get(at).isBlank()) {
                    inks.add(known.get(at));
                }
            }
            return Math.min(4, samples);
        }
        int count = samples - (extras == null ? 0 : extras.length);
        for (int i = 0; i < count; i++) {
            inks.add(i < names.size() && !names.get(i).isBlank() ? names.get(i) : "Channel " + (i + 1));
        }
        return Math.max(1, count);
    }

    private ColourSpace space() throws IOException {
        byte[] profile = tags.bytes(ICC_PROFILE);
        boolean lab = photometric == CIE_LAB || photometric == ICC_LAB;
        if (lab) {
            return new ColourSpace.CieLab(D50, List.of(-128.0, 127.0, -128.0, 127.0));
        } else if (photometric == PALETTE) {
            return palette(Spaces.of(profile, new ColourSpace.DeviceRgb(), notes));
        } else if (photometric == SEPARATED && tags.number(INK_SET, 1) == 2) {
            return SpotInks.only(inks);
        } else if (photometric == SEPARATED && colours < 4) {
            throw new IOException("fewer than four process inks");
        }
        ColourSpace base = Spaces.of(profile, Spaces.device(colours), notes);
        return inks.isEmpty() ? base : SpotInks.with(base, inks);
    }

    private ColourSpace palette(ColourSpace base) throws IOException {
        double[] map = tags.numbers(COLOR_MAP);
        int size = 1 << bits;
        if (map == null || bits > 8 || map.length < 3 * size) {
            throw new IOException("no usable palette");
        }
        byte[] table = new byte[3 * size];
        for (int i = 0; i < size; i++) {
            for (int c = 0; c < 3; c++) {
                table[3 * i + c] = (byte) ((int) map[c * size + i] >> 8);
            }
        }
        return new ColourSpace.Indexed(base, size - 1, new ColourSpace.Table(table));
    }

    private Frame frame() {
        Orientation turn = new Orientation(tags.number(ORIENTATION, 1));
        double[] dpi = tags.dpi();
        int used = space.components() + (alpha >= 0 ? 1 : 0);
        if (used < samples) {
            notes.add(new Frame.Note(
                    "a picture with " + (samples - used) + " more channels without an ink's name",
                    "they do not print"));
        }
        if (!inks.isEmpty()) {
            notes.add(new Frame.Note(
                    "spot inks whose colour the picture does not state (" + String.join(", ", inks) + ")",
                    "a middle grey each; their tints are exact"));
        }
        if (tags.isLayered()) {
            notes.add(new Frame.Note("a picture with layers", "as its file holds it flattened"));
        }
        double[] inside = tags.numbers(SUB_DIRECTORIES);
        if (inside != null) {
            notes.add(new Frame.Note(
                    "a picture with " + inside.length + " more inside it (layers or smaller copies)",
                    "without them, as it is whole"));
        }
        LazyImage image = new LazyImage(name, width, height, space, bits, turn, this::decode);
        List<ColourSpace.Separation> spots =
                space instanceof ColourSpace.DeviceN n ? n.colorants() : List.<ColourSpace.Separation>of();
        return new Frame(image, dpi[turn.swaps() ? 1 : 0], dpi[turn.swaps() ? 0 : 1], notes, spots);
    }

    private Pixels decode() throws IOException {
        int bands = samples;
        byte[] all;
        if (TiffBlocks.reads(compression)) {
            try (ImageInputStream in = input.open()) {
                all = new TiffBlocks(in, tags, width, height, bits, samples, photometric == PALETTE).read();
            }
            toSpace(all);
        } else {
            var raster = TiffPlugin.raster(input, index);
            bands = raster.getNumBands();
            all = Rasters.bytes(raster, photometric == PALETTE ? 8 : bits);
            if (bits == 1 && photometric == WHITE_IS_ZERO) {
                invert(all);
            }
            if (raster.getWidth() != width || raster.getHeight() != height || bands < space.components()) {
                throw new IOException("another size or fewer samples than stated");
            }
        }
        return split(all, bands);
    }

    private static void invert(byte[] data) {
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) ~data[i];
        }
    }

    private void toSpace(byte[] all) {
        if (photometric == WHITE_IS_ZERO) {
            for (int i = 0; i < all.length; i += samples) {
                all[i] = (byte) ~all[i];
            }
        } else if (photometric == CIE_LAB) {
            for (int i = 0; i < all.length; i += samples) {
                all[i + 1] ^= (byte) 0x80; // signed, to an offset of 128
                all[i + 2] ^= (byte) 0x80;
            }
        } else if (photometric == YCBCR) {
            Ycc.toRgb(all, samples);
        }
    }

    /** Keeps what prints, and takes the alpha apart. */
    private Pixels split(byte[] all, int bands) {
        int n = space.components();
        boolean clear = alpha >= 0 && alpha < bands;
        if (n == bands) {
            return new Pixels(width, height, n, all, null);
        }
        int count = width * height;
        byte[] colour = new byte[count * n];
        byte[] mask = new byte[clear ? count : 0];
        int skip = clear ? alpha : bands; // spot inks lie behind the alpha
        for (int i = 0; i < count; i++) {
            for (int c = 0; c < n; c++) {
                colour[i * n + c] = all[i * bands + (c < skip ? c : c + 1)];
            }
            if (clear) {
                mask[i] = all[i * bands + alpha];
                if (premultiplied) {
                    undo(colour, i * n, n, mask[i] & 255);
                }
            }
        }
        return new Pixels(width, height, n, colour, clear ? new Pixels(width, height, 1, mask, null) : null);
    }

    /** Associated alpha: colours come multiplied by it. */
    private static void undo(byte[] colour, int at, int n, int alpha) {
        for (int c = 0; c < n && alpha > 0; c++) {
            colour[at + c] = Rasters.clip((colour[at + c] & 255) * 255.0 / alpha);
        }
    }
}
