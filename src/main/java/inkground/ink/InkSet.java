package inkground.ink;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The inks of one job in a fixed order: the index of an ink is the index of its plane. Immutable. Process inks stand
 * first, in the order cyan, magenta, yellow, black; the others follow as they first appear.
 */
public final class InkSet {
    /** Most inks in one job. Sixty-four lets a set of inks be one {@code long}. */
    public static final int MAX_INKS = 64;

    private final List<Ink> inks;
    private final Map<String, Integer> indexByName = new LinkedHashMap<>();

    /**
     * @param inks in plane order, names distinct, at most {@link #MAX_INKS}
     */
    public InkSet(List<Ink> inks) {
        if (inks.size() > MAX_INKS) {
            throw new IllegalArgumentException(inks.size() + " inks; the limit is " + MAX_INKS);
        }
        this.inks = List.copyOf(inks);
        for (Ink ink : this.inks) {
            if (indexByName.put(ink.name(), indexByName.size()) != null) {
                throw new IllegalArgumentException("two inks are named " + ink.name());
            }
        }
    }

    /** @return all inks in plane order; unmodifiable */
    public List<Ink> inks() {
        return inks;
    }

    /** @return number of inks */
    public int size() {
        return inks.size();
    }

    /** @return the ink of plane {@code index} */
    public Ink get(int index) {
        return inks.get(index);
    }

    /** @return plane index of the ink of this exact name, or -1 */
    public int indexOf(String name) {
        return indexByName.getOrDefault(name, -1);
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof InkSet other && inks.equals(other.inks);
    }

    @Override
    public int hashCode() {
        return inks.hashCode();
    }

    @Override
    public String toString() {
        return inks.stream().map(Ink::name).toList().toString();
    }
}
