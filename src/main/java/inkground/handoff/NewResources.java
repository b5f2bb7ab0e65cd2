package inkground.handoff;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** Resources of a content stream, with some added and some replaced. The old dictionary is left as it is: others may share it. */
final class NewResources {
    private final COSDictionary old;
    private final Map<COSName, Map<COSName, COSBase>> added = new LinkedHashMap<>();

    NewResources(COSDictionary old) {
        this.old = old;
    }

    /** @return the file's own resources of a kind; empty when there are none */
    COSDictionary old(COSName kind) {
        COSDictionary own = old.getCOSDictionary(kind);
        return own == null ? new COSDictionary() : own;
    }

    /** @return the file's own resources */
    COSDictionary old() {
        return old;
    }

    /** @return the name that a new resource goes by; the same for the same object */
    COSName add(COSName kind, COSBase value) {
        Map<COSName, COSBase> ofKind = added.computeIfAbsent(kind, k -> new LinkedHashMap<>());
        for (Map.Entry<COSName, COSBase> entry : ofKind.entrySet()) {
            if (entry.getValue() == value) {
                return entry.getKey();
            }
        }
        for (int k = 1; ; k++) {
            COSName name = COSName.getPDFName("KnockedOut" + k);
            if (!old(kind).containsKey(name) && !ofKind.containsKey(name)) {
                ofKind.put(name, value);
                return name;
            }
        }
    }

    /** Puts another object in the place of a resource. */
    void replace(COSName kind, COSName name, COSBase value) {
        added.computeIfAbsent(kind, k -> new LinkedHashMap<>()).put(name, value);
    }

    boolean replaced(COSName kind, COSName name) {
        return added.getOrDefault(kind, Map.of()).containsKey(name);
    }

    /** @return a copy of the old resources with the new ones */
    COSDictionary toDictionary() {
        COSDictionary out = new COSDictionary(old);
        added.forEach((kind, values) -> {
            COSDictionary all = new COSDictionary(old(kind));
            values.forEach(all::setItem);
            out.setItem(kind, all);
        });
        return out;
    }
}
