package inkground.artwork.pdf;

import inkground.artwork.MixingHints;
import inkground.artwork.OutputIntent;
import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;

/** Reads the output intents of a document: ISO 32000-2 table 401. */
final class OutputIntents {
    private static final int MAX_SPECTRAL_BYTES = 16 << 20;
    private static final int MAX_SPECTRAL_INKS = 200;

    private final ColourSpaces spaces;

    private OutputIntents(ColourSpaces spaces) {
        this.spaces = spaces;
    }

    /** The first intent with a profile that can be read, or the first at all. */
    static Optional<OutputIntent> of(COSDictionary catalog, ColourSpaces spaces) {
        OutputIntents reader = new OutputIntents(spaces);
        COSArray intents = Cos.array(catalog, "OutputIntents");
        OutputIntent named = null;
        for (int i = 0; intents != null && i < intents.size(); i++) {
            if (intents.getObject(i) instanceof COSDictionary dict) {
                OutputIntent intent = reader.read(dict);
                if (intent.profile() != null) {
                    return Optional.of(intent);
                }
                named = named == null ? intent : named;
            }
        }
        return Optional.ofNullable(named);
    }

    private OutputIntent read(COSDictionary dict) {
        MixingHints hints = Hints.of(Cos.dictionary(dict, "MixingHints"));
        Map<String, byte[]> spectra = spectra(Cos.dictionary(dict, "SpectralData"));
        if (Cos.get(dict, "DestOutputProfile") instanceof COSStream stream) {
            try {
                return new OutputIntent(condition(dict), spaces.profile(stream), spectra, hints);
            } catch (IOException e) {
                log("output profile unreadable", e);
            }
        }
        return new OutputIntent(condition(dict), null, spectra, hints);
    }

    /** One document may characterise many inks, each under its own key; it is unpacked once. A damaged one is kept, as no bytes. */
    private static Map<String, byte[]> spectra(COSDictionary dict) {
        Map<String, byte[]> out = new LinkedHashMap<>();
        Map<COSStream, byte[]> unpacked = new IdentityHashMap<>();
        for (COSName name : dict == null ? List.<COSName>of() : List.copyOf(dict.keySet())) {
            if (out.size() < MAX_SPECTRAL_INKS && dict.getDictionaryObject(name) instanceof COSStream stream) {
                byte[] known = unpacked.get(stream);
                out.put(name.getName(), known == null ? unpack(stream, unpacked) : known);
            }
        }
        return out;
    }

    private static byte[] unpack(COSStream stream, Map<COSStream, byte[]> unpacked) {
        byte[] bytes = new byte[0];
        try {
            bytes = StreamData.all(stream, MAX_SPECTRAL_BYTES);
        } catch (IOException e) {
            log("spectral data unreadable", e);
        }
        unpacked.put(stream, bytes);
        return bytes;
    }

    private static void log(String what, IOException e) {
        Logger.getLogger(OutputIntents.class.getName()).log(Level.FINE, what, e);
    }

    private static String condition(COSDictionary intent) {
        for (String key : List.of("OutputCondition", "OutputConditionIdentifier", "Info")) {
            COSBase value = Cos.get(intent, key);
            if (value instanceof COSString text && !text.getString().isBlank()) {
                return text.getString();
            }
        }
        return "unnamed";
    }
}
