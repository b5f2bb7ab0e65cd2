package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Stream;

/** Tells whether something is meant by the words that the user typed: each of them must begin a word of it. */
public final class Search {
    private final String[] wanted;

    /**
     * @param query as typed; empty finds everything
     */
    public Search(String query) {
        wanted = words(query).toArray(String[]::new);
    }

    /** @return whether nothing is asked for */
    public boolean isEmpty() {
        return wanted.length == 0;
    }

    /** @return whether a substrate is meant, by its name, kind, texture or colour */
    public boolean finds(SubstrateCard card) {
        String kind = card.garment() ? "garment cloth" : "paper";
        String own = card.own() ? "own" : "";
        return findsIn(
                String.join(" ", card.name(), card.texture(), kind, own, String.join(" ", ColourWords.of(card.lab()))));
    }

    /** @return whether an ink is meant, by its name or kind */
    public boolean finds(InkCard ink) {
        return findsIn(ink.ink().name() + " ink " + ink.ink().kind().name());
    }

    private boolean findsIn(String text) {
        String[] there = words(text).toArray(String[]::new);
        return Arrays.stream(wanted).allMatch(w -> Arrays.stream(there).anyMatch(t -> t.startsWith(w)));
    }

    private static Stream<String> words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}+", "")
                .toLowerCase(Locale.ROOT);
        return Arrays.stream(plain.split("[^\\p{L}\\p{N}]+")).filter(w -> !w.isEmpty());
    }
}
