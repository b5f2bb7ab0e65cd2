package inkground.artwork.pdf;

import inkground.artwork.MixingHints;
import inkground.artwork.TintTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;

/** Reads a mixing hints dictionary: ISO 32000-2 table 72. What of it is damaged counts as not stated, since it is all optional. */
final class Hints {
    private static final String ALL_OTHERS = "Default";
    private static final int MAX_NAMES = 1000;

    private Hints() {}

    /** @param dict null for none */
    static MixingHints of(COSDictionary dict) {
        if (dict == null) {
            return MixingHints.NONE;
        }
        Map<String, Double> solidities = new LinkedHashMap<>();
        COSDictionary stated = Cos.dictionary(dict, "Solidities");
        for (String name : names(stated)) {
            if (Cos.get(stated, name) instanceof COSNumber n && n.floatValue() >= 0 && n.floatValue() <= 1) {
                solidities.put(name, (double) n.floatValue());
            }
        }
        Optional<Double> others = Optional.ofNullable(solidities.remove(ALL_OTHERS));
        return new MixingHints(solidities, others, order(Cos.array(dict, "PrintingOrder")), gains(dict));
    }

    private static List<String> order(COSArray array) {
        List<String> out = new ArrayList<>();
        for (int i = 0; array != null && i < Math.min(MAX_NAMES, array.size()); i++) {
            if (array.getObject(i) instanceof COSName name && !out.contains(name.getName())) {
                out.add(name.getName());
            }
        }
        return out;
    }

    private static Map<String, TintTransform> gains(COSDictionary dict) {
        Map<String, TintTransform> out = new LinkedHashMap<>();
        COSDictionary stated = Cos.dictionary(dict, "DotGain");
        for (String name : names(stated)) {
            try {
                out.put(name, Functions.of(Cos.get(stated, name), 1, 1));
            } catch (IOException | RuntimeException e) {
                continue; // the ink then gains nothing, as one that is not listed
            }
        }
        return out;
    }

    private static List<String> names(COSDictionary dict) {
        return dict == null
                ? List.of()
                : dict.keySet().stream().map(COSName::getName).limit(MAX_NAMES).toList();
    }
}
