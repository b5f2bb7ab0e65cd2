package inkground.handoff;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.plate.ClearedPicture;
import java.io.IOException;
import java.io.OutputStream;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;

/**
 * Images of a PDF without their bare colours: what is left in the image's own colour space, the rest masked. Hard edges get an
 * explicit mask, which is no transparency; soft ones a soft mask. Samples are packed without loss, so a JPEG grows.
 */
final class CleanImages {
    private static final Map<String, COSName> DEVICES = Map.of(
            "G", COSName.DEVICEGRAY,
            "RGB", COSName.DEVICERGB,
            "CMYK", COSName.DEVICECMYK);

    private final Map<ClearedPicture, COSStream> made = new IdentityHashMap<>();

    /**
     * @param picture what is left of it
     * @param original its dictionary, of an image object or in line
     * @param resources where its colour space may be named
     */
    COSStream of(ClearedPicture picture, COSDictionary original, COSDictionary resources) throws IOException {
        COSStream known = made.get(picture);
        if (known != null) {
            return known;
        }
        COSStream image = image(picture.width(), picture.height(), 8, picture.samples());
        image.setItem(COSName.COLORSPACE, space(original, picture.space(), resources));
        for (COSName key : List.of(COSName.OC, COSName.getPDFName("Intent"), COSName.STRUCT_PARENT)) {
            if (original.containsKey(key)) {
                image.setItem(key, original.getItem(key));
            }
        }
        COSBase smooth = original.getDictionaryObject(COSName.INTERPOLATE, COSName.I);
        if (smooth instanceof COSBoolean flag) {
            image.setItem(COSName.INTERPOLATE, flag);
        }
        addMask(image, picture, original.containsKey(COSName.SMASK) || original.containsKey("SMaskInData"));
        made.put(picture, image);
        return image;
    }

    private static void addMask(COSStream image, ClearedPicture picture, boolean wasSoft) throws IOException {
        ImageSource.Pixels mask = picture.mask();
        int width = mask == null ? picture.width() : Math.max(mask.width(), picture.width());
        int height = mask == null ? picture.height() : Math.max(mask.height(), picture.height());
        byte[] alpha = new byte[Math.multiplyExact(width, height)];
        boolean soft = wasSoft;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int sampleX = (int) ((long) x * picture.width() / width);
                int sampleY = (int) ((long) y * picture.height() / height);
                int kept = picture.kept()[sampleY * picture.width() + sampleX] & 255;
                int value = Math.round(kept * opacity(mask, x, y, width, height) / 255f);
                alpha[y * width + x] = (byte) value;
                soft |= value > 0 && value < 255;
            }
        }
        if (soft) {
            COSStream stream = image(width, height, 8, alpha);
            stream.setItem(COSName.COLORSPACE, COSName.DEVICEGRAY);
            image.setItem(COSName.SMASK, stream);
        } else {
            COSStream stream = image(width, height, 1, bits(alpha, width, height));
            stream.setBoolean(COSName.IMAGE_MASK, true);
            image.setItem(COSName.MASK, stream);
        }
    }

    private static int opacity(ImageSource.Pixels mask, int x, int y, int width, int height) {
        if (mask == null) {
            return 255;
        }
        int maskX = (int) ((long) x * mask.width() / width);
        int maskY = (int) ((long) y * mask.height() / height);
        return mask.samples()[maskY * mask.width() + maskX] & 255;
    }

    /** ISO 32000-2 §8.9.6.3: 1 masks out; rows begin on bytes. */
    private static byte[] bits(byte[] alpha, int width, int height) {
        int stride = (width + 7) / 8;
        byte[] out = new byte[stride * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (alpha[y * width + x] == 0) {
                    out[y * stride + x / 8] |= (byte) (0x80 >> x % 8);
                }
            }
        }
        return out;
    }

    private static COSStream image(int width, int height, int bits, byte[] samples) throws IOException {
        COSStream image = new COSStream();
        image.setItem(COSName.TYPE, COSName.XOBJECT);
        image.setItem(COSName.SUBTYPE, COSName.IMAGE);
        image.setInt(COSName.WIDTH, width);
        image.setInt(COSName.HEIGHT, height);
        image.setInt(COSName.BITS_PER_COMPONENT, bits);
        try (OutputStream out = image.createOutputStream(COSName.FLATE_DECODE)) {
            out.write(samples);
        }
        return image;
    }

    private static COSBase space(COSDictionary original, ColourSpace read, COSDictionary resources) {
        COSBase stated = original.getDictionaryObject(COSName.COLORSPACE, COSName.CS);
        if (stated != null) {
            return base(stated, resources);
        }
        return read.components() == 1
                ? COSName.DEVICEGRAY
                : read.components() == 3 ? COSName.DEVICERGB : COSName.DEVICECMYK;
    }

    /** The space itself, of a palette its base, without the short names of inline images. */
    private static COSBase base(COSBase stated, COSDictionary resources) {
        COSBase space = stated instanceof COSObject object ? object.getObject() : stated;
        if (space instanceof COSName name) {
            COSDictionary named = resources.getCOSDictionary(COSName.COLORSPACE);
            COSBase found = named == null || name.getName().startsWith("Device") ? null : named.getItem(name);
            return found == null ? DEVICES.getOrDefault(name.getName(), name) : base(found, new COSDictionary());
        } else if (space instanceof COSArray array
                && array.size() > 1
                && array.getObject(0) instanceof COSName kind
                && List.of("Indexed", "I").contains(kind.getName())) {
            return base(array.get(1), resources);
        }
        return stated;
    }
}
