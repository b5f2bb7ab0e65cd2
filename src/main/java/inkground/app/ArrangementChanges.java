package inkground.app;

import inkground.app.PageComparison.Side;
import inkground.appearance.InkColour;
import inkground.appearance.Stack;
import inkground.appearance.Underbase;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.colour.Lab;
import inkground.garment.Placement;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What is printed otherwise by choice, not by the artwork: substrate, underbase, order, opacity, colour rules. */
final class ArrangementChanges {
    private final List<String> lines = new ArrayList<>();

    private ArrangementChanges() {}

    /** @return one line for each thing that is not the same, for the user; inks are meant by name */
    static List<String> lines(Side before, Side after) {
        ArrangementChanges changes = new ArrangementChanges();
        changes.add("substrate", before, after, ArrangementChanges::substrate);
        changes.add("underbase", before, after, side -> words(side.stack().underbase()));
        changes.order(before.stack(), after.stack());
        changes.opacities(before.stack(), after.stack());
        changes.rules(before.page().assignment(), after.page().assignment());
        changes.add("inks not shown", before, after, ArrangementChanges::hidden);
        changes.add("layers not printed", before, after, ArrangementChanges::layersOff);
        changes.add("overprint", before, after, side -> side.overprint() ? "honoured" : "ignored");
        changes.add("place on the garment", before, after, side -> words(side.placement()));
        return List.copyOf(changes.lines);
    }

    private void add(String what, Side before, Side after, Function<Side, String> words) {
        String was = words.apply(before);
        String is = words.apply(after);
        if (!was.equals(is)) {
            lines.add(what + ": " + was + " → " + is);
        }
    }

    private static String substrate(Side side) {
        Lab lab = side.stack().substrate().lab();
        return side.stack().substrate().name()
                + String.format(Locale.ROOT, " (Lab %.1f %.1f %.1f)", lab.L(), lab.a(), lab.b());
    }

    private static String words(Underbase base) {
        if (base == null) {
            return "none";
        }
        String words = String.format(
                Locale.ROOT,
                "%.0f %% white of opacity %.2f, %d %s",
                base.tint() * 100,
                base.white().opacity(),
                base.hits(),
                base.hits() == 1 ? "hit" : "hits");
        if (base.chokeMm() != 0) {
            words += String.format(
                    Locale.ROOT, ", %s %.2f mm", base.chokeMm() > 0 ? "choke" : "spread", Math.abs(base.chokeMm()));
        }
        if (!base.under().isEmpty()) {
            words += ", only under " + String.join(", ", new TreeSet<>(base.under()));
        }
        return base.knockedOutUnder().isEmpty()
                ? words
                : words + ", not under " + String.join(", ", new TreeSet<>(base.knockedOutUnder()));
    }

    /** Only inks of both can change places. */
    private void order(Stack before, Stack after) {
        List<String> was = order(before);
        List<String> is = order(after);
        List<String> wasHere = was.stream().filter(is::contains).toList();
        List<String> isHere = is.stream().filter(was::contains).toList();
        if (!wasHere.equals(isHere)) {
            lines.add("print order: " + String.join(", ", wasHere) + " → " + String.join(", ", isHere));
        }
    }

    private static List<String> order(Stack stack) {
        return stack.printOrder().stream()
                .map(plane -> stack.inks().get(plane).ink().name())
                .toList();
    }

    private void opacities(Stack before, Stack after) {
        Map<String, Double> was = new HashMap<>();
        before.inks().forEach(colour -> was.put(colour.ink().name(), colour.opacity()));
        after.inks().forEach(colour -> {
            Double opacity = was.get(colour.ink().name());
            if (opacity != null && opacity != colour.opacity()) {
                lines.add(String.format(
                        Locale.ROOT, "opacity of %s: %.2f → %.2f", colour.ink().name(), opacity, colour.opacity()));
            }
        });
    }

    private void rules(ColourAssignment before, ColourAssignment after) {
        List<String> was = before.rules().stream().map(AssignmentFile::words).toList();
        List<String> is = after.rules().stream().map(AssignmentFile::words).toList();
        was.stream().filter(rule -> !is.contains(rule)).forEach(rule -> lines.add("no longer: " + rule));
        is.stream().filter(rule -> !was.contains(rule)).forEach(rule -> lines.add("new: " + rule));
        if (!before.equals(after) && was.containsAll(is) && is.containsAll(was)) {
            lines.add("the colour rules come in another order");
        }
    }

    private static String hidden(Side side) {
        return listed(side.stack().inks().stream()
                .map(InkColour::ink)
                .filter(ink -> ink.kind() != InkKind.TECHNICAL)
                .filter(ink -> !side.stack().shown().contains(side.page().inks().indexOf(ink.name())))
                .map(Ink::name)
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    private static String layersOff(Side side) {
        return listed(side.page().displayList().layers().stream()
                .filter(layer -> !side.layersOn().contains(layer.id()))
                .map(Layer::name)
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    private static String listed(TreeSet<String> names) {
        return names.isEmpty() ? "none" : String.join(", ", names);
    }

    private static String words(Placement placement) {
        List<String> words = new ArrayList<>();
        words.add(placement.side().word());
        placement.cut().ifPresent(words::add);
        placement.size().ifPresent(size -> words.add("size " + size));
        placement.belowMm().ifPresent(mm -> words.add(String.format(Locale.ROOT, "%.1f mm below the collar", mm)));
        if (placement.offCentreMm() != 0) {
            words.add(String.format(Locale.ROOT, "%.1f mm off centre", placement.offCentreMm()));
        }
        placement.widthMm().ifPresent(mm -> words.add(String.format(Locale.ROOT, "%.1f mm wide", mm)));
        words.add("measured to its " + placement.measured().word());
        return String.join(", ", words);
    }
}
