package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.MixingHints;
import inkground.artwork.TintTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;

/**
 * Colour spaces of a file as plain data: ISO 32000-2 §8.6. Not thread-safe; used under the document's lock. Each object of
 * the file is read once.
 */
final class ColourSpaces {
    private static final int MAX_DEPTH = 8;
    private static final int MAX_COLORANTS = 32;
    private static final int MAX_PROFILE_BYTES = 64 << 20;
    private static final List<String> PROCESS = List.of("Cyan", "Magenta", "Yellow", "Black");
    private static final double[] D50 = {0.9642, 1, 0.8249};

    /** Spaces already read, apart for each set of default spaces, which change what device spaces mean. */
    private final Map<COSDictionary, Map<COSBase, ColourSpace>> cache = new IdentityHashMap<>();

    private final COSDictionary noDefaults = new COSDictionary();
    private final Map<COSStream, ColourSpace.Profile> profiles = new IdentityHashMap<>();
    private final Map<ColourSpace, ColourSpace> shared = new HashMap<>();

    /**
     * @param base name or array
     * @param resources where names are looked up; null for none
     * @throws IOException if it is damaged or a Pattern space
     */
    ColourSpace of(COSBase base, COSDictionary resources) throws IOException {
        return read(base, Cos.dictionary(resources, "ColorSpace"), 0);
    }

    private ColourSpace read(COSBase base, COSDictionary named, int depth) throws IOException {
        COSBase object = Cos.resolve(base);
        if (depth > MAX_DEPTH) {
            throw new IOException("colour spaces nested too deeply");
        }
        if (object instanceof COSName name) {
            return byName(name.getName(), named, depth);
        }
        if (object instanceof COSStream stream && stream.containsKey(COSName.N)) {
            return icc(stream, named, depth); // seen in the wild: the profile without its array
        }
        if (!(object instanceof COSArray array) || array.size() == 0) {
            throw new IOException("no colour space");
        }
        Map<COSBase, ColourSpace> known = cache.computeIfAbsent(defaults(named), k -> new IdentityHashMap<>());
        ColourSpace found = known.get(array);
        if (found == null) {
            ColourSpace made = byArray(array, named, depth);
            found = shared.computeIfAbsent(made, k -> made);
            known.put(array, found);
        }
        return found;
    }

    private COSDictionary defaults(COSDictionary named) {
        boolean any = named != null
                && (named.containsKey("DefaultGray")
                        || named.containsKey("DefaultRGB")
                        || named.containsKey("DefaultCMYK"));
        return any ? named : noDefaults;
    }

    private ColourSpace byName(String name, COSDictionary named, int depth) throws IOException {
        return switch (name) {
            case "DeviceGray", "G", "CalGray" -> orDefault("DefaultGray", new ColourSpace.DeviceGray(), named, depth);
            case "DeviceRGB", "RGB", "CalRGB" -> orDefault("DefaultRGB", new ColourSpace.DeviceRgb(), named, depth);
            case "DeviceCMYK", "CMYK", "CalCMYK" ->
                orDefault("DefaultCMYK", new ColourSpace.DeviceCmyk(), named, depth);
            default -> {
                COSBase found = Cos.get(named, name);
                if (found == null) {
                    throw new IOException("colour space " + name + " is not defined");
                }
                yield read(found, named, depth + 1);
            }
        };
    }

    private ColourSpace orDefault(String key, ColourSpace device, COSDictionary named, int depth) throws IOException {
        COSBase remapped = Cos.get(named, key);
        if (remapped == null) {
            return device;
        }
        // A default space must not be remapped again, so it is read without defaults.
        ColourSpace space = read(remapped, null, depth + 1);
        return space.components() == device.components() ? space : device;
    }

    private ColourSpace byArray(COSArray array, COSDictionary named, int depth) throws IOException {
        String family = array.getObject(0) instanceof COSName name ? name.getName() : "";
        return switch (family) {
            case "CalGray" -> calGray(parameters(array));
            case "CalRGB" -> calRgb(parameters(array));
            case "Lab" -> lab(parameters(array));
            case "ICCBased" -> icc(array.getObject(1), named, depth);
            case "Indexed", "I" -> indexed(array, named, depth);
            case "Separation" -> separation(array, named, depth);
            case "DeviceN" -> deviceN(array, named, depth);
            case "Pattern" -> throw new IOException("a pattern space where a colour is needed");
            default -> byName(family, named, depth + 1);
        };
    }

    private static COSDictionary parameters(COSArray array) throws IOException {
        if (array.getObject(1) instanceof COSDictionary dict) {
            return dict;
        }
        throw new IOException("a colour space without its parameters");
    }

    private static List<Double> white(COSDictionary dict) {
        double[] white = Cos.numbers(dict, "WhitePoint", D50);
        boolean usable = white[0] > 0 && white[1] > 0 && white[2] > 0;
        return Cos.list(usable ? Arrays.copyOf(white, 3) : D50);
    }

    private static ColourSpace calGray(COSDictionary dict) {
        double gamma = dict.getFloat(Cos.name("Gamma"), 1);
        return new ColourSpace.CalGray(white(dict), gamma > 0 ? gamma : 1);
    }

    private static ColourSpace calRgb(COSDictionary dict) {
        double[] gamma = Cos.numbers(dict, "Gamma", 1, 1, 1);
        double[] matrix = Cos.numbers(dict, "Matrix", 1, 0, 0, 0, 1, 0, 0, 0, 1);
        return new ColourSpace.CalRgb(
                white(dict), Cos.list(Arrays.copyOf(gamma, 3)), Cos.list(Arrays.copyOf(matrix, 9)));
    }

    private static ColourSpace lab(COSDictionary dict) {
        double[] range = Arrays.copyOf(Cos.numbers(dict, "Range", -100, 100, -100, 100), 4);
        boolean ordered = range[0] < range[1] && range[2] < range[3];
        return new ColourSpace.CieLab(white(dict), ordered ? Cos.list(range) : Cos.list(-100, 100, -100, 100));
    }

    private ColourSpace icc(COSBase base, COSDictionary named, int depth) throws IOException {
        if (!(base instanceof COSStream stream)) {
            throw new IOException("an ICC space without a profile");
        }
        int components = stream.getInt(COSName.N);
        ColourSpace device =
                switch (components) {
                    case 1 -> new ColourSpace.DeviceGray();
                    case 3 -> new ColourSpace.DeviceRgb();
                    case 4 -> new ColourSpace.DeviceCmyk();
                    default -> throw new IOException("an ICC space of " + components + " components");
                };
        ColourSpace alternate = device;
        COSBase stated = Cos.get(stream, "Alternate");
        if (stated != null) {
            ColourSpace read = read(stated, named, depth + 1);
            alternate = read.components() == components && !(read instanceof ColourSpace.Indexed) ? read : device;
        }
        return new ColourSpace.Icc(profile(stream), components, alternate);
    }

    /** The bytes of an embedded profile. */
    ColourSpace.Profile profile(COSStream stream) throws IOException {
        ColourSpace.Profile known = profiles.get(stream);
        if (known == null) {
            known = new ColourSpace.Profile(StreamData.all(stream, MAX_PROFILE_BYTES));
            profiles.put(stream, known);
        }
        return known;
    }

    private ColourSpace indexed(COSArray array, COSDictionary named, int depth) throws IOException {
        ColourSpace base = read(array.getObject(1), named, depth + 1);
        if (base instanceof ColourSpace.Indexed || !(array.getObject(2) instanceof COSNumber high)) {
            throw new IOException("an indexed space over another or without a size");
        }
        int highest = Math.max(0, Math.min(255, high.intValue()));
        int bytes = (highest + 1) * base.components();
        COSBase table = array.getObject(3);
        byte[] data;
        if (table instanceof COSString string) {
            data = string.getBytes();
        } else if (table instanceof COSStream stream) {
            data = StreamData.prefix(stream, bytes);
        } else {
            throw new IOException("an indexed space without a table");
        }
        return new ColourSpace.Indexed(base, highest, new ColourSpace.Table(Arrays.copyOf(data, bytes)));
    }

    private ColourSpace.Separation separation(COSArray array, COSDictionary named, int depth) throws IOException {
        if (!(array.getObject(1) instanceof COSName name)) {
            throw new IOException("a separation without a name");
        }
        ColourSpace alternate = alternate(array, named, depth);
        TintTransform tint = Functions.of(array.getObject(3), 1, alternate.components());
        return new ColourSpace.Separation(name.getName(), alternate, tint);
    }

    private ColourSpace alternate(COSArray array, COSDictionary named, int depth) throws IOException {
        ColourSpace alternate = read(array.getObject(2), named, depth + 1);
        boolean special = alternate instanceof ColourSpace.Indexed
                || alternate instanceof ColourSpace.Separation
                || alternate instanceof ColourSpace.DeviceN;
        if (special) {
            throw new IOException("an alternate space that is itself special");
        }
        return alternate;
    }

    private ColourSpace deviceN(COSArray array, COSDictionary named, int depth) throws IOException {
        if (!(array.getObject(1) instanceof COSArray list) || list.size() == 0 || list.size() > MAX_COLORANTS) {
            throw new IOException("a DeviceN space without names or with more than " + MAX_COLORANTS);
        }
        List<String> names = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            names.add(list.getObject(i) instanceof COSName name ? name.getName() : "None");
        }
        ColourSpace alternate = alternate(array, named, depth);
        TintTransform tint = Functions.of(array.getObject(3), names.size(), alternate.components());
        COSDictionary attributes = array.size() > 4 && array.getObject(4) instanceof COSDictionary given ? given : null;
        List<ColourSpace.Separation> colorants = colorants(Cos.dictionary(attributes, "Colorants"), named, depth);
        nameProcessInks(names, Cos.dictionary(attributes, "Process"), named, depth);
        MixingHints hints = Hints.of(Cos.dictionary(attributes, "MixingHints"));
        return new ColourSpace.DeviceN(names, alternate, tint, colorants, hints);
    }

    /** Process components of NChannel may have any names; in order they are the inks of a CMYK process space: table 72. */
    private void nameProcessInks(List<String> names, COSDictionary process, COSDictionary named, int depth)
            throws IOException {
        COSArray components = Cos.array(process, "Components");
        COSBase stated = Cos.get(process, "ColorSpace");
        if (components == null || components.size() != 4 || stated == null) {
            return;
        }
        if (read(stated, named, depth + 1).components() == 4) {
            for (int i = 0; i < 4; i++) {
                int at = components.getObject(i) instanceof COSName name ? names.indexOf(name.getName()) : -1;
                if (at >= 0) {
                    names.set(at, PROCESS.get(i));
                }
            }
        }
    }

    private List<ColourSpace.Separation> colorants(COSDictionary given, COSDictionary named, int depth) {
        List<ColourSpace.Separation> out = new ArrayList<>();
        for (COSName key : given == null ? List.<COSName>of() : given.keySet()) {
            try {
                if (read(given.getDictionaryObject(key), named, depth + 1) instanceof ColourSpace.Separation one) {
                    out.add(one);
                }
            } catch (IOException e) {
                // The entry only describes the colorant by itself; the space works without it.
                continue;
            }
        }
        return out;
    }
}
