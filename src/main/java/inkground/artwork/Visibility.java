package inkground.artwork;

import java.util.List;
import java.util.Set;

/** Under which layers something shows: optional content, ISO 32000-2 §8.11. */
public sealed interface Visibility {
    /** Shows always. */
    Visibility ALWAYS = new AllOf(List.of());

    /**
     * @param layersOn ids of the layers that are on
     * @return whether it shows
     */
    boolean shows(Set<Integer> layersOn);

    /**
     * Shows with one layer.
     *
     * @param layerId {@link Layer#id}
     */
    record Of(int layerId) implements Visibility {
        @Override
        public boolean shows(Set<Integer> layersOn) {
            return layersOn.contains(layerId);
        }
    }

    /** Shows when all parts do; always for no parts. */
    record AllOf(List<Visibility> parts) implements Visibility {
        /** Copies the list. */
        public AllOf {
            parts = List.copyOf(parts);
        }

        @Override
        public boolean shows(Set<Integer> layersOn) {
            return parts.stream().allMatch(p -> p.shows(layersOn));
        }
    }

    /** Shows when any part does. */
    record AnyOf(List<Visibility> parts) implements Visibility {
        /** Copies the list. */
        public AnyOf {
            parts = List.copyOf(parts);
        }

        @Override
        public boolean shows(Set<Integer> layersOn) {
            return parts.stream().anyMatch(p -> p.shows(layersOn));
        }
    }

    /** Shows when the part does not. */
    record Not(Visibility part) implements Visibility {
        @Override
        public boolean shows(Set<Integer> layersOn) {
            return !part.shows(layersOn);
        }
    }
}
