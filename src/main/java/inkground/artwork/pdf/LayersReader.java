package inkground.artwork.pdf;

import inkground.artwork.Layer;
import inkground.artwork.Visibility;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;

/** Optional content: ISO 32000-2 §8.11. Groups become layers; memberships become conditions on layers. */
final class LayersReader {
    private static final int MAX_EXPRESSION_DEPTH = 32;

    private final Map<COSDictionary, Integer> ids = new IdentityHashMap<>();
    private final List<Layer> layers = new ArrayList<>();

    /** Reads the groups of a document and their state when printed by the default configuration. */
    LayersReader(COSDictionary catalog) {
        COSDictionary properties = Cos.dictionary(catalog, "OCProperties");
        COSArray groups = Cos.array(properties, "OCGs");
        if (groups == null) {
            return;
        }
        COSDictionary config = Cos.dictionary(properties, "D");
        Map<COSDictionary, Boolean> states = states(config);
        boolean base = !"OFF".equals(Cos.nameOf(config, "BaseState"));
        for (int i = 0; i < groups.size(); i++) {
            if (groups.getObject(i) instanceof COSDictionary group && !ids.containsKey(group)) {
                int id = layers.size();
                ids.put(group, id);
                String name = Cos.get(group, "Name") instanceof COSString s ? s.getString() : "layer " + (id + 1);
                layers.add(new Layer(id, name, states.getOrDefault(group, base)));
            }
        }
    }

    List<Layer> layers() {
        return List.copyOf(layers);
    }

    /** The condition of an OCG or OCMD; always visible when the object is neither. */
    Visibility of(COSBase optionalContent) {
        if (!(Cos.resolve(optionalContent) instanceof COSDictionary dict)) {
            return Visibility.ALWAYS;
        }
        return "OCMD".equals(Cos.nameOf(dict, "Type")) ? membership(dict) : group(dict);
    }

    /** The condition that holds when both hold. */
    static Visibility both(Visibility a, Visibility b) {
        if (a.equals(Visibility.ALWAYS)) {
            return b;
        }
        return b.equals(Visibility.ALWAYS) || a.equals(b) ? a : new Visibility.AllOf(List.of(a, b));
    }

    private static Map<COSDictionary, Boolean> states(COSDictionary config) {
        Map<COSDictionary, Boolean> states = new IdentityHashMap<>();
        for (COSDictionary group : dictionaries(Cos.get(config, "ON"))) {
            states.put(group, true);
        }
        for (COSDictionary group : dictionaries(Cos.get(config, "OFF"))) {
            states.put(group, false);
        }
        for (COSDictionary application : dictionaries(Cos.get(config, "AS"))) {
            if ("Print".equals(Cos.nameOf(application, "Event"))) {
                applyPrintUsage(application, states);
            }
        }
        return states;
    }

    private static void applyPrintUsage(COSDictionary application, Map<COSDictionary, Boolean> states) {
        COSArray categories = Cos.array(application, "Category");
        if (categories == null || categories.indexOfObject(Cos.name("Print")) < 0) {
            return;
        }
        for (COSDictionary group : dictionaries(Cos.get(application, "OCGs"))) {
            String state = Cos.nameOf(Cos.dictionary(Cos.dictionary(group, "Usage"), "Print"), "PrintState");
            if (state != null) {
                states.put(group, !"OFF".equals(state));
            }
        }
    }

    private static List<COSDictionary> dictionaries(COSBase base) {
        List<COSDictionary> out = new ArrayList<>();
        if (base instanceof COSDictionary one) {
            out.add(one);
        } else if (base instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (array.getObject(i) instanceof COSDictionary dict) {
                    out.add(dict);
                }
            }
        }
        return out;
    }

    private Visibility group(COSDictionary dict) {
        Integer id = ids.get(dict);
        return id == null ? Visibility.ALWAYS : new Visibility.Of(id);
    }

    private Visibility membership(COSDictionary dict) {
        COSArray expression = Cos.array(dict, "VE");
        if (expression != null) {
            return expression(expression, 0);
        }
        List<Visibility> parts = new ArrayList<>();
        for (COSDictionary group : dictionaries(Cos.get(dict, "OCGs"))) {
            if (ids.containsKey(group)) {
                parts.add(group(group));
            }
        }
        if (parts.isEmpty()) {
            return Visibility.ALWAYS; // §8.11.2.2: without groups the membership has no effect
        }
        String policy = Cos.nameOf(dict, "P");
        boolean single = parts.size() == 1 && (policy == null || policy.endsWith("On"));
        if (single) {
            return parts.get(0);
        }
        return switch (policy == null ? "AnyOn" : policy) {
            case "AllOn" -> new Visibility.AllOf(parts);
            case "AnyOff" -> new Visibility.Not(new Visibility.AllOf(parts));
            case "AllOff" -> new Visibility.Not(new Visibility.AnyOf(parts));
            default -> new Visibility.AnyOf(parts);
        };
    }

    private Visibility expression(COSBase base, int depth) {
        if (!(base instanceof COSArray array) || depth > MAX_EXPRESSION_DEPTH) {
            return of(base);
        }
        List<Visibility> parts = new ArrayList<>();
        for (int i = 1; i < array.size(); i++) {
            parts.add(expression(array.getObject(i), depth + 1));
        }
        String word = array.size() > 0 && array.getObject(0) instanceof COSName n ? n.getName() : "";
        return switch (word) {
            case "Or" -> new Visibility.AnyOf(parts);
            case "Not" -> parts.isEmpty() ? Visibility.ALWAYS : new Visibility.Not(parts.get(0));
            default -> new Visibility.AllOf(parts);
        };
    }
}
