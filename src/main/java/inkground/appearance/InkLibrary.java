package inkground.appearance;

import inkground.colour.Lab;
import inkground.colour.ToneCurve;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Colours of named inks that are better known than what the artwork says of them: the user's own measurements, or spectra that the
 * artwork carries. Immutable.
 *
 * @param entries by name, each name once
 */
public record InkLibrary(Map<String, Entry> entries) {
    /** No inks. */
    public static final InkLibrary EMPTY = new InkLibrary(Map.of());
    /** Most inks in a library. */
    public static final int MAX_INKS = 20_000;

    /** Copies the map, in order. */
    public InkLibrary {
        entries = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    /**
     * One ink.
     *
     * @param name as the artwork has it
     * @param solid on white paper, media-relative: the paper is (100, 0, 0)
     * @param opacity contrast ratio, 0 to 1; empty where it was not measured or stated
     * @param overBlack the solid over perfect black; null where it was not measured
     * @param tone tone value of ISO 20654 by tint; null where tints were not measured
     * @param source where the colour comes from, for the user
     */
    public record Entry(String name, Lab solid, OptionalDouble opacity, Lab overBlack, ToneCurve tone, String source) {
        /** Checks the opacity. */
        public Entry {
            boolean fits = opacity.isEmpty() || opacity.getAsDouble() >= 0 && opacity.getAsDouble() <= 1;
            if (name == null || name.isEmpty() || solid == null || source == null || !fits) {
                throw new IllegalArgumentException(
                        "a library's ink needs name, solid, source and an opacity from 0 to 1");
            }
        }

        /** An ink of which the solid is known, and perhaps the opacity. */
        public Entry(String name, Lab solid, OptionalDouble opacity, String source) {
            this(name, solid, opacity, null, null, source);
        }
    }

    /** @return a library of these inks; of two with one name the first counts */
    public static InkLibrary of(List<Entry> entries) {
        Map<String, Entry> byName = new LinkedHashMap<>();
        entries.forEach(e -> byName.putIfAbsent(e.name(), e));
        return new InkLibrary(byName);
    }

    /** @return the ink of this exact name, if it is known */
    public Optional<Entry> find(String name) {
        return Optional.ofNullable(entries.get(name));
    }

    /** @return this library, and for names it lacks the other */
    public InkLibrary before(InkLibrary other) {
        Map<String, Entry> all = new LinkedHashMap<>(entries);
        other.entries.forEach(all::putIfAbsent);
        return new InkLibrary(all);
    }
}
