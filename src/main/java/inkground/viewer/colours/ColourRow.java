package inkground.viewer.colours;

import inkground.app.ColourInventory;
import inkground.app.ColourInventory.Picture;
import inkground.app.ColourRules.Subject;
import inkground.app.ColourUse;
import inkground.plate.PictureColours;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** One line of the list of colours. */
sealed interface ColourRow {
    /**
     * Words between colours.
     *
     * @param words what follows or what is to be said
     * @param group colours that are meant together; empty for none
     */
    record Heading(String words, List<Entry> group) implements ColourRow {}

    /**
     * One colour.
     *
     * @param subject what a rule for it is about
     * @param use where it is painted
     * @param words its numbers
     * @param figures how much there is of it
     * @param grouped whether it stands in a group
     */
    record Entry(Subject subject, ColourUse use, String words, String figures, boolean grouped) implements ColourRow {
        int rgb() {
            return use.rgb();
        }
    }

    /**
     * @return groups of near-duplicates first where they are first met, tiny colours and hidden ones at the end, then the
     *     pictures
     */
    static List<ColourRow> of(ColourInventory colours) {
        List<ColourRow> rows = new ArrayList<>();
        Set<ColourUse> done = new HashSet<>();
        List<List<ColourUse>> groups = colours.nearDuplicates(ColourInventory.NEAR_DE00).stream()
                .map(group -> group.stream().filter(use -> !use.hidden()).toList())
                .filter(group -> group.size() > 1)
                .toList();
        for (ColourUse use : colours.colours()) {
            if (use.hidden() || use.tiny() || done.contains(use)) {
                continue;
            }
            groups.stream()
                    .filter(group -> group.contains(use))
                    .findFirst()
                    .ifPresentOrElse(group -> group(group, rows, done), () -> rows.add(entry(use, false)));
        }
        section("Tiny: often left over by mistake", rest(colours, done, false), rows);
        section("Hidden beneath other paint, or outside the trim", rest(colours, done, true), rows);
        if (colours.gradients() > 0) {
            rows.add(new Heading(
                    count(colours.gradients(), "gradient") + " besides: their colours follow the rules of their ends",
                    List.of()));
        }
        pictures(colours.images(), rows);
        return rows;
    }

    private static void group(List<ColourUse> group, List<ColourRow> rows, Set<ColourUse> done) {
        List<Entry> entries = group.stream().map(use -> entry(use, true)).toList();
        rows.add(new Heading(
                String.format(
                        Locale.ROOT, "%d near-duplicates, ΔE00 at most %.0f", group.size(), ColourInventory.NEAR_DE00),
                entries));
        rows.addAll(entries);
        done.addAll(group);
    }

    private static List<Entry> rest(ColourInventory colours, Set<ColourUse> done, boolean hidden) {
        return colours.colours().stream()
                .filter(use -> !done.contains(use) && (hidden ? use.hidden() : use.tiny()))
                .map(use -> entry(use, false))
                .toList();
    }

    private static void section(String words, List<Entry> entries, List<ColourRow> rows) {
        if (!entries.isEmpty()) {
            rows.add(new Heading(words, List.of()));
            rows.addAll(entries);
        }
    }

    private static Entry entry(ColourUse use, boolean grouped) {
        String area = use.hidden() ? "not seen" : Ui.area(use.visibleCm2()) + " cm²";
        return new Entry(Subject.of(use), use, use.words(), area + ", " + count(use.objects(), "object"), grouped);
    }

    private static void pictures(List<Picture> pictures, List<ColourRow> rows) {
        for (int i = 0; i < pictures.size(); i++) {
            PictureColours colours = pictures.get(i).colours();
            rows.add(new Heading(
                    "Picture" + (pictures.size() > 1 ? " " + (i + 1) : "") + ": " + summary(colours), List.of()));
            for (ColourUse use : pictures.get(i).uses()) {
                rows.add(new Entry(
                        Subject.of(use), use, use.words(), Ui.area(use.visibleCm2()) + " cm² of the picture", true));
            }
        }
    }

    private static String summary(PictureColours picture) {
        if (picture.flats().isEmpty()) {
            return "tone, as of a photograph; it has no flat colours to assign";
        }
        return count(picture.flats().size(), "flat colour") + "; " + percent(picture.mixedShare())
                + " mixtures of two of them (soft edges, printed as both inks), " + percent(picture.toneShare())
                + " tone";
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, share < 0.1 ? "%.1f %%" : "%.0f %%", share * 100);
    }

    private static String count(int n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }
}
