package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.base.Refusal;
import inkground.colour.Rendering;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/** An image or image mask of a PDF file: ISO 32000-2 §8.9. Decoded in its own colour space, never converted. */
final class PdfImage implements ImageSource {
    /** Largest number of components in one image: 400 million, so that its bytes fit comfortably in memory. */
    static final long MAX_COMPONENTS = 400_000_000L;

    private static final int MAX_ENCODED_BYTES = 512 << 20;
    private static final ColourSpace GREY = new ColourSpace.DeviceGray();

    private final COSStream stream;
    private final Object documentLock;
    private final int width;
    private final int height;
    private final int bits;
    private final ColourSpace space;
    private final double[] decode;
    private final boolean stencil;
    private final boolean interpolate;
    private final int[] colourKey;
    private final PdfImage mask;
    private final double[] matte;

    private PdfImage(
            COSStream stream,
            Object documentLock,
            Header header,
            ColourSpace space,
            boolean stencil,
            PdfImage mask,
            double[] matte) {
        this.stream = stream;
        this.documentLock = documentLock;
        this.width = header.width();
        this.height = header.height();
        this.bits = header.bits();
        this.space = space;
        this.stencil = stencil;
        this.decode = Cos.numbers(Cos.get(stream, "Decode"));
        this.interpolate = Cos.flag(stream, "Interpolate");
        this.colourKey = stencil ? null : ints(Cos.numbers(Cos.get(stream, "Mask")));
        this.mask = mask;
        this.matte = matte;
    }

    /** The image painted under an intent, which its own takes the place of: §8.9.5, Intent. Itself where that changes nothing. */
    PdfImage by(Rendering inForce) {
        String own = Cos.nameOf(stream, "Intent");
        ColourSpace other = space.by(own == null ? inForce : inForce.by(States.intent(own)));
        return other.equals(space) ? this : new PdfImage(this, other);
    }

    private PdfImage(PdfImage image, ColourSpace space) {
        this.stream = image.stream;
        this.documentLock = image.documentLock;
        this.width = image.width;
        this.height = image.height;
        this.bits = image.bits;
        this.space = space;
        this.stencil = image.stencil;
        this.decode = image.decode;
        this.interpolate = image.interpolate;
        this.colourKey = image.colourKey;
        this.mask = image.mask;
        this.matte = image.matte;
    }

    /**
     * Reads an image's dictionary, not its samples.
     *
     * @param resources where its colour space may be named
     * @param documentLock held while the stream is read
     */
    static PdfImage of(COSStream stream, COSDictionary resources, ColourSpaces spaces, Object documentLock)
            throws IOException {
        boolean stencil = Cos.flag(stream, "ImageMask");
        Header header = header(stream, stencil);
        ColourSpace space = stencil ? GREY : space(stream, resources, spaces);
        COSBase soft = Cos.get(stream, "SMask");
        COSBase explicit = Cos.get(stream, "Mask");
        PdfImage mask = null;
        double[] matte = null;
        if (!stencil && soft instanceof COSStream source && source != stream) {
            mask = maskOf(source, true, documentLock);
            matte = Cos.numbers(Cos.get(source, "Matte"));
        } else if (!stencil && explicit instanceof COSStream source && source != stream) {
            mask = maskOf(source, false, documentLock);
        }
        return new PdfImage(stream, documentLock, header, space, stencil, mask, matte);
    }

    /** Masks are read by themselves: one component, no masks of their own. */
    private static PdfImage maskOf(COSStream source, boolean soft, Object documentLock) throws IOException {
        boolean raw = lastFilter(source) == Codec.RAW;
        boolean oneBit = Cos.flag(source, "ImageMask") || !soft && raw && defaultBits(source) == 1;
        return new PdfImage(source, documentLock, header(source, oneBit), GREY, oneBit, null, null);
    }

    private record Header(int width, int height, int bits) {}

    private static Header header(COSStream stream, boolean stencil) throws IOException {
        Codec codec = lastFilter(stream);
        Header header;
        if (codec == Codec.JPX) {
            JpxFile jpx = jpx(stream);
            header = new Header(jpx.width(), jpx.height(), jpx.bits());
        } else {
            int stated = stencil ? 1 : stream.getInt(COSName.BITS_PER_COMPONENT, defaultBits(stream));
            int bits = codec == Codec.JPEG ? 8 : stated;
            header = new Header(stream.getInt(COSName.WIDTH), stream.getInt(COSName.HEIGHT), bits);
        }
        if (header.width() < 1 || header.height() < 1) {
            throw new IOException("an image of no size");
        }
        if (!List.of(1, 2, 4, 8, 16).contains(header.bits()) && codec != Codec.JPX) {
            throw new IOException("an image of " + header.bits() + " bits per component");
        }
        return header;
    }

    private static JpxFile jpx(COSStream stream) throws IOException {
        JpxFile jpx = JpxFile.of(encoded(stream));
        if (jpx == null) {
            throw new IOException("an image that is not JPEG 2000 although it says so");
        }
        return jpx;
    }

    private static int defaultBits(COSStream stream) {
        List<COSName> filters = StreamData.filters(stream);
        String last = filters.isEmpty() ? "" : filters.get(filters.size() - 1).getName();
        return List.of("CCITTFaxDecode", "CCF", "JBIG2Decode").contains(last) ? 1 : 8;
    }

    private static ColourSpace space(COSStream stream, COSDictionary resources, ColourSpaces spaces)
            throws IOException {
        COSBase stated = Cos.get(stream, "ColorSpace");
        if (stated != null) {
            return spaces.of(stated, resources);
        }
        return switch (lastFilter(stream)) {
            case JPX -> jpx(stream).space();
            case JPEG -> deviceSpace(JpegFile.of(encoded(stream)));
            case RAW -> GREY;
        };
    }

    /** A JPEG has to have its space stated; one without is taken for what its components suggest. */
    private static ColourSpace deviceSpace(JpegFile jpeg) {
        return switch (jpeg == null ? 3 : jpeg.components()) {
            case 1, 2 -> GREY;
            case 3 -> new ColourSpace.DeviceRgb();
            default -> new ColourSpace.DeviceCmyk();
        };
    }

    private enum Codec {
        RAW,
        JPEG,
        JPX
    }

    private static Codec lastFilter(COSStream stream) {
        List<COSName> filters = StreamData.filters(stream);
        String last = filters.isEmpty() ? "" : filters.get(filters.size() - 1).getName();
        return switch (last) {
            case "DCTDecode", "DCT" -> Codec.JPEG;
            case "JPXDecode" -> Codec.JPX;
            default -> Codec.RAW;
        };
    }

    private static byte[] encoded(COSStream stream) throws IOException {
        return StreamData.decode(stream, StreamData.filters(stream).size() - 1, MAX_ENCODED_BYTES);
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public ColourSpace space() {
        return space;
    }

    @Override
    public boolean interpolate() {
        return interpolate;
    }

    @Override
    public int bits() {
        return bits;
    }

    /** Whether the image brings a soft mask of its own. */
    boolean hasSoftMask() {
        boolean stated = Cos.get(stream, "SMask") instanceof COSStream;
        return !stencil && (stated || maskInData() != 0);
    }

    /** §8.9.5.1, table 87: 1 = the data bring opacity, 2 = and the colours are multiplied by it. */
    private int maskInData() {
        return lastFilter(stream) == Codec.JPX ? stream.getInt(Cos.name("SMaskInData"), 0) : 0;
    }

    @Override
    public boolean maskIsOpacity() {
        return hasSoftMask();
    }

    boolean isStencil() {
        return stencil;
    }

    @Override
    public Pixels decode() throws Refusal {
        try {
            Pixels own = decodeOwn();
            if (mask == null) {
                return own;
            }
            Pixels alpha = mask.decodeOwn();
            byte[] samples = matte == null ? own.samples() : Matte.undo(own, alpha, matte, space);
            return new Pixels(own.width(), own.height(), own.components(), samples, alpha);
        } catch (IOException | RuntimeException e) {
            throw new Refusal(describe() + " cannot be decoded. Export the file again with this image replaced.", e);
        } catch (OutOfMemoryError e) {
            throw new Refusal(describe() + " does not fit in memory. Export it at a lower resolution.", e);
        }
    }

    private String describe() {
        return "An image of " + width + " × " + height + " samples";
    }

    private Pixels decodeOwn() throws IOException, Refusal {
        checkSize(width, height, space.components());
        return switch (lastFilter(stream)) {
            case RAW -> decodeRaw();
            case JPEG -> decodeJpeg();
            case JPX -> decodeJpx();
        };
    }

    private static void checkSize(long width, long height, int components) throws Refusal {
        if (width * height > MAX_COMPONENTS / components) {
            throw new Refusal(String.format(
                    Locale.ROOT,
                    "An image of %d × %d samples with %d components is larger than the limit of %d million values. Export"
                            + " it at a lower resolution.",
                    width,
                    height,
                    components,
                    MAX_COMPONENTS / 1_000_000));
        }
    }

    private Pixels decodeRaw() throws IOException, Refusal {
        long rowBytes = ((long) width * space.components() * bits + 7) / 8;
        if (rowBytes * height > Integer.MAX_VALUE - 64) {
            throw new Refusal(describe() + " needs more than 2 GB. Export it with 8 bits per component.");
        }
        checkFax();
        byte[] data;
        synchronized (documentLock) {
            data = StreamData.prefix(stream, (int) (rowBytes * height));
        }
        return pixels(data, width, height, bits);
    }

    /** The fax decoder allocates what its parameters claim, so the claim is checked first. */
    private void checkFax() throws Refusal {
        if (lastParameters() instanceof COSDictionary dict) {
            long columns = Math.max(0, dict.getInt(Cos.name("Columns"), 1728));
            long rows = Math.max(Math.max(0, dict.getInt(Cos.name("Rows"), 0)), height);
            boolean fax = dict.containsKey("K") || dict.containsKey("Rows");
            if (fax && columns > 0) {
                checkSize(columns, Math.max(1, rows), 1);
            }
        }
    }

    private Pixels decodeJpeg() throws IOException, Refusal {
        byte[] file;
        int colorTransform;
        synchronized (documentLock) {
            file = encoded(stream);
            colorTransform = colorTransform();
        }
        JpegFile jpeg = JpegFile.of(file);
        if (jpeg == null) {
            throw new IOException("no JPEG frame");
        }
        checkSize(jpeg.width(), Math.max(1, jpeg.height()), jpeg.components());
        byte[] data = jpeg.decode(colorTransform);
        int rows = jpeg.width() == 0 ? 0 : data.length / (jpeg.width() * Math.max(1, jpeg.components()));
        return pixels(fit(data, jpeg.components()), jpeg.width(), rows, 8);
    }

    /** Of the last filter's parameters; −1 where not stated. */
    private int colorTransform() {
        return lastParameters() instanceof COSDictionary dict ? dict.getInt(Cos.name("ColorTransform"), -1) : -1;
    }

    private COSBase lastParameters() {
        COSBase parameters = Cos.get(stream, "DecodeParms");
        return parameters instanceof COSArray array && array.size() > 0
                ? array.getObject(array.size() - 1)
                : parameters;
    }

    /** A grey JPEG used as RGB, or the reverse, keeps what both have. */
    private byte[] fit(byte[] data, int have) throws IOException {
        int want = space.components();
        if (have == want) {
            return data;
        }
        if (want != 1 && have != 1 && have < want) {
            throw new IOException("a JPEG of " + have + " components in a space of " + want);
        }
        int count = data.length / have;
        byte[] out = new byte[count * want];
        for (int s = 0; s < count; s++) {
            for (int i = 0; i < want; i++) {
                out[s * want + i] = data[s * have + Math.min(i, have - 1)];
            }
        }
        return out;
    }

    private Pixels decodeJpx() throws IOException, Refusal {
        JpxFile jpx;
        synchronized (documentLock) {
            jpx = jpx(stream);
        }
        checkSize(jpx.width(), jpx.height(), jpx.values());
        JpxFile.Samples samples = jpx.decode(space, Cos.get(stream, "ColorSpace") == null);
        Pixels own = pixels(samples.colour(), jpx.width(), jpx.height(), 8);
        if (maskInData() == 0 || samples.opacity() == null || mask != null) {
            return own;
        }
        Pixels opacity = new Pixels(jpx.width(), jpx.height(), 1, samples.opacity(), null);
        boolean premultiplied = maskInData() == 2;
        byte[] colour = premultiplied ? Matte.undo(own, opacity, new double[space.components()], space) : own.samples();
        return new Pixels(own.width(), own.height(), own.components(), colour, opacity);
    }

    private Pixels pixels(byte[] data, int w, int h, int rawBits) {
        // §7.4.9: JPEG 2000 images ignore the Decode array unless they are masks.
        double[] applied = lastFilter(stream) == Codec.JPX && !stencil ? null : decode;
        Samples reader = new Samples(space, rawBits, applied, colourKey);
        byte[] key = reader.hasColourKey() && mask == null ? new byte[w * h] : null;
        byte[] samples = reader.unpack(data, w, h, key);
        if (stencil) {
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (byte) ~samples[i]; // §8.9.6.2: a sample of 0 is painted
            }
        }
        return new Pixels(w, h, space.components(), samples, key == null ? null : new Pixels(w, h, 1, key, null));
    }

    private static int[] ints(double[] values) {
        if (values == null) {
            return null;
        }
        int[] out = new int[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (int) values[i];
        }
        return out;
    }
}
