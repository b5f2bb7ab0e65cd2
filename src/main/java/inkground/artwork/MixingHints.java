package inkground.artwork;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a file says of how its inks mix when they are printed over one another: the mixing hints of DeviceN spaces and of the output
 * intent, ISO 32000-2 §8.6.6.5 and §14.11.5.
 *
 * @param solidities how much each ink hides, by name, 0 a pure filter to 1 opaque
 * @param others solidity of inks that are not named; empty where none is stated
 * @param printingOrder names of inks, first printed first; empty where none is stated
 * @param dotGain by name, from the tint to the area that it covers in print
 */
public record MixingHints(
        Map<String, Double> solidities,
        Optional<Double> others,
        List<String> printingOrder,
        Map<String, TintTransform> dotGain) {
    /** Nothing is said. */
    public static final MixingHints NONE = new MixingHints(Map.of(), Optional.empty(), List.of(), Map.of());

    /** Copies the collections. */
    public MixingHints {
        solidities = Collections.unmodifiableMap(new LinkedHashMap<>(solidities));
        printingOrder = List.copyOf(printingOrder);
        dotGain = Collections.unmodifiableMap(new LinkedHashMap<>(dotGain));
    }

    /** @return the solidity stated for an ink, by its name or for all others */
    public Optional<Double> solidity(String ink) {
        return solidities.containsKey(ink) ? Optional.of(solidities.get(ink)) : others;
    }

    /** @return these hints, and those of the other where these say nothing */
    public MixingHints before(MixingHints other) {
        Map<String, Double> all = new LinkedHashMap<>(solidities);
        other.solidities.forEach(all::putIfAbsent);
        Map<String, TintTransform> gains = new LinkedHashMap<>(dotGain);
        other.dotGain.forEach(gains::putIfAbsent);
        return new MixingHints(
                all, others.or(other::others), printingOrder.isEmpty() ? other.printingOrder : printingOrder, gains);
    }
}
