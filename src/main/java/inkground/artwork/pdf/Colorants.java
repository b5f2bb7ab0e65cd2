package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.MixingHints;
import inkground.artwork.TintTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** Finds every colorant that a page's resources declare, painted or not. */
final class Colorants {
    private static final Set<String> NOT_SPOT = Set.of("All", "None", "Cyan", "Magenta", "Yellow", "Black");
    private static final int MAX_VISITED = 100_000;
    private static final int MAX_DEPTH = 28;

    private final ColourSpaces spaces;
    /** Separation spaces by name, wherever they were stated. */
    private final Map<String, ColourSpace.Separation> stated = new LinkedHashMap<>();
    /** Every colorant in order of appearance, with what stands in where no separation of it is stated. */
    private final Map<String, ColourSpace.Separation> declared = new LinkedHashMap<>();

    private MixingHints hints = MixingHints.NONE;

    private final Set<COSBase> visited = Collections.newSetFromMap(new IdentityHashMap<>());

    private Colorants(ColourSpaces spaces) {
        this.spaces = spaces;
    }

    static Colorants of(COSDictionary page, COSDictionary resources, ColourSpaces spaces) {
        Colorants walk = new Colorants(spaces);
        walk.resources(resources, 0);
        walk.space(Cos.get(Cos.dictionary(page, "Group"), "CS"), resources);
        COSArray annotations = Cos.array(page, "Annots");
        for (int i = 0; annotations != null && i < annotations.size(); i++) {
            if (annotations.getObject(i) instanceof COSDictionary annotation) {
                COSDictionary appearance = Cos.dictionary(Cos.dictionary(annotation, "AP"), "N");
                walk.content(appearance, resources, 0);
            }
        }
        return walk;
    }

    /** Each colorant once, in order of appearance. */
    List<ColourSpace.Separation> declared() {
        List<ColourSpace.Separation> out = new ArrayList<>();
        declared.forEach((name, fallback) -> out.add(stated.getOrDefault(name, fallback)));
        return List.copyOf(out);
    }

    /** The mixing hints of all DeviceN spaces; of two that differ the first counts. */
    MixingHints hints() {
        return hints;
    }

    private void resources(COSDictionary resources, int depth) {
        if (resources == null || depth > MAX_DEPTH || visited.size() > MAX_VISITED || !visited.add(resources)) {
            return;
        }
        for (COSBase space : values(resources, "ColorSpace")) {
            space(space, resources);
        }
        for (COSBase object : values(resources, "XObject")) {
            content(object, resources, depth);
        }
        for (COSBase pattern : values(resources, "Pattern")) {
            content(pattern, resources, depth);
            space(
                    Cos.get(pattern instanceof COSDictionary d ? Cos.dictionary(d, "Shading") : null, "ColorSpace"),
                    resources);
        }
        for (COSBase shading : values(resources, "Shading")) {
            space(Cos.get(shading instanceof COSDictionary d ? d : null, "ColorSpace"), resources);
        }
        for (COSBase font : values(resources, "Font")) {
            resources(Cos.dictionary(font instanceof COSDictionary d ? d : null, "Resources"), depth + 1);
        }
        for (COSBase state : values(resources, "ExtGState")) {
            COSDictionary mask = Cos.dictionary(state instanceof COSDictionary d ? d : null, "SMask");
            content(Cos.get(mask, "G"), resources, depth);
        }
    }

    /** Forms, patterns and images: their own spaces and what their resources hold. */
    private void content(COSBase object, COSDictionary outer, int depth) {
        if (!(object instanceof COSDictionary dict)) {
            return;
        }
        space(Cos.get(dict, "ColorSpace"), outer);
        space(Cos.get(Cos.dictionary(dict, "Group"), "CS"), outer);
        resources(Cos.dictionary(dict, "Resources"), depth + 1);
    }

    private static List<COSBase> values(COSDictionary resources, String category) {
        COSDictionary dict = Cos.dictionary(resources, category);
        List<COSBase> out = new ArrayList<>();
        for (COSName key : dict == null ? Set.<COSName>of() : dict.keySet()) {
            COSBase value = dict.getDictionaryObject(key);
            if (value != null) {
                out.add(value);
            }
        }
        return out;
    }

    private void space(COSBase base, COSDictionary resources) {
        if (base == null) {
            return;
        }
        COSBase stated = base;
        boolean pattern = base instanceof COSArray array
                && array.size() > 1
                && array.getObject(0) instanceof COSName name
                && "Pattern".equals(name.getName());
        if (pattern) {
            stated = ((COSArray) base).getObject(1);
        }
        try {
            collect(spaces.of(stated, resources));
        } catch (IOException | RuntimeException e) {
            // A damaged space declares nothing; recording the page says so where it is used.
            return;
        }
    }

    private void collect(ColourSpace space) {
        if (space instanceof ColourSpace.Separation separation) {
            put(separation, true);
        } else if (space instanceof ColourSpace.Indexed indexed) {
            collect(indexed.base());
        } else if (space instanceof ColourSpace.DeviceN deviceN) {
            hints = hints.before(deviceN.hints());
            deviceN.colorants().forEach(c -> put(c, deviceN.names().contains(c.name())));
            for (int i = 0; i < deviceN.names().size(); i++) {
                TintTransform alone = new Alone(deviceN.tint(), deviceN.components(), i);
                String name = deviceN.names().get(i);
                if (!NOT_SPOT.contains(name)) {
                    declared.putIfAbsent(name, new ColourSpace.Separation(name, deviceN.alternate(), alone));
                }
            }
        }
    }

    private void put(ColourSpace.Separation separation, boolean used) {
        if (!NOT_SPOT.contains(separation.name())) {
            stated.putIfAbsent(separation.name(), separation);
            if (used) {
                declared.putIfAbsent(separation.name(), separation);
            }
        }
    }

    /** A DeviceN tint transform seen by one colorant, all others 0. */
    private record Alone(TintTransform all, int inputs, int index) implements TintTransform {
        @Override
        public int outputs() {
            return all.outputs();
        }

        @Override
        public void apply(float[] in, float[] out) {
            float[] tints = new float[inputs];
            tints[index] = in[0];
            all.apply(tints, out);
        }
    }
}
