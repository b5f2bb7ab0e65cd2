package inkground.artwork;

import java.util.List;

/**
 * Everything one page paints, in order. Immutable and independent of the file format; every later stage works from it.
 *
 * @param page geometry
 * @param ops painting operations, first painted first
 * @param layers of the artwork
 * @param groupSpace blending colour space of the page group; null for the process inks
 * @param approximations what reading could not keep exactly
 */
public record DisplayList(
        PageInfo page, List<Op> ops, List<Layer> layers, ColourSpace groupSpace, List<Approximation> approximations) {
    /** Copies the lists. */
    public DisplayList {
        ops = List.copyOf(ops);
        layers = List.copyOf(layers);
        approximations = List.copyOf(approximations);
    }

    /** @return ids of the layers that are on by default */
    public java.util.Set<Integer> defaultLayers() {
        return layers.stream().filter(Layer::on).map(Layer::id).collect(java.util.stream.Collectors.toSet());
    }
}
