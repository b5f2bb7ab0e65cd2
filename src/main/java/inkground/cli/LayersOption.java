package inkground.cli;

import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Layers of the artwork that are switched off by name. */
final class LayersOption {
    @Option(
            names = "--without-layer",
            paramLabel = "NAME",
            description = "Switch off a layer of the artwork, such as a painted-in garment colour. May be repeated.")
    private List<String> off = new ArrayList<>();

    /**
     * @return ids of the layers that are on by default and not switched off
     * @throws Refusal if the artwork has no layer of one of the names
     */
    Set<Integer> on(DisplayList list) throws Refusal {
        return without(off, list);
    }

    /**
     * @param off names of layers; each must be in the artwork
     * @return ids of the layers that are on by default and not switched off
     * @throws Refusal if the artwork has no layer of one of the names
     */
    static Set<Integer> without(List<String> off, DisplayList list) throws Refusal {
        Set<Integer> on = new TreeSet<>(list.defaultLayers());
        for (String name : off) {
            List<Integer> named = list.layers().stream()
                    .filter(layer -> layer.name().equals(name))
                    .map(Layer::id)
                    .toList();
            if (named.isEmpty()) {
                String known = list.layers().stream()
                        .map(layer -> "'" + layer.name() + "'")
                        .collect(Collectors.joining(", "));
                throw new Refusal("There is no layer '" + name + "'. "
                        + (known.isEmpty() ? "The artwork has no layers." : "The artwork has: " + known + "."));
            }
            named.forEach(on::remove);
        }
        return on;
    }
}
