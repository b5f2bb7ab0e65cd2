package inkground.app;

import inkground.appearance.InkLibrary;
import inkground.appearance.MeasuredInk;
import inkground.artwork.OutputIntent;
import inkground.base.Refusal;
import inkground.colour.Cxf;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Spot inks that a file's output intent characterises by spectra: ISO 32000-2 §14.11.5, ISO 17972-4. */
final class SpectralInks {
    private static final String WHERE = "the file's output intent";

    private final Map<byte[], Outcome> read = new IdentityHashMap<>();
    private final List<String> notes;

    private SpectralInks(List<String> notes) {
        this.notes = notes;
    }

    /** A document that several names share is read once, damaged or not. */
    private record Outcome(Cxf document, Refusal refusal) {}

    /**
     * @param notes receives what cannot be used, a line for each ink
     * @return the inks whose measurements can be used
     */
    static InkLibrary of(OutputIntent intent, List<String> notes) {
        SpectralInks reader = new SpectralInks(notes);
        List<InkLibrary.Entry> entries = new ArrayList<>();
        intent.spectra().forEach((name, bytes) -> reader.ink(name, bytes).ifPresent(entries::add));
        return InkLibrary.of(entries);
    }

    private Optional<InkLibrary.Entry> ink(String name, byte[] bytes) {
        String where = "SpectralData of '" + name + "'";
        Outcome outcome = read.computeIfAbsent(bytes, b -> read(b, where));
        if (outcome.refusal() != null) {
            notes.add("the output intent's measurement of the ink '" + name + "' cannot be used ("
                    + outcome.refusal().getMessage() + "); its colour is taken from the next best source");
            return Optional.empty();
        }
        Optional<InkLibrary.Entry> entry = outcome.document().spotInks().stream()
                .filter(ink -> ink.name().equals(name))
                .findFirst()
                .map(ink -> MeasuredInk.of(ink, WHERE));
        if (entry.isEmpty()) {
            notes.add(where + " in the output intent has no SpotInkCharacterisation with that SpotInkName; the ink's"
                    + " colour is taken from the next best source");
        }
        return entry;
    }

    private static Outcome read(byte[] bytes, String where) {
        try {
            return new Outcome(Cxf.read(bytes, where), null);
        } catch (Refusal e) {
            return new Outcome(null, e);
        }
    }
}
