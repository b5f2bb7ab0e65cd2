package inkground.app;

import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.DisplayList;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.plate.InkMapping;
import inkground.plate.InkPlanes;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds what may be the garment's colour painted in for preview, and what would happen if it were just deleted. */
public final class Grounds {
    /** ΔE00 up to which a colour may be meant as the garment's: a preview is matched by eye. */
    public static final double NEAR_GARMENT_DE00 = 12;

    private static final double FILLS = 0.9;
    private static final double EDGE_PT = 1;
    private static final double DPI = 100;
    /** Tint in 255ths that counts as uncovered ink; less is the rounding of edges. */
    private static final int UNCOVERED = 16;

    private Grounds() {}

    /** Why a colour may be a painted-in ground. */
    public enum Reason {
        /** Its objects span the page. */
        FILLS_THE_PAGE,
        /** It reaches an edge of the page on the left or right and at the top or bottom. */
        REACHES_THE_EDGES,
        /** It is close to the colour of the chosen garment. */
        NEAR_THE_GARMENT;

        /** @return as words for the user */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * One candidate.
     *
     * @param use the colour
     * @param reasons why, at least one
     * @param garmentDe00 difference from the garment's colour; NaN when none was chosen
     */
    public record Candidate(ColourUse use, Set<Reason> reasons, double garmentDe00) {
        /** Copies the set. */
        public Candidate {
            reasons = Set.copyOf(reasons);
        }

        /** @return the assignment that makes it bare */
        public ColourAssignment nominated() {
            return new ColourAssignment(List.of(new ColourAssignment.Rule(use.source(), new Bare())));
        }
    }

    /**
     * A candidate, and what deleting its objects would do.
     *
     * @param candidate the colour and the reasons
     * @param deletion what comes to light
     */
    public record Ground(Candidate candidate, Deletion deletion) {
        /** @return one line for the user */
        public String words() {
            ColourUse use = candidate.use();
            return use.words() + " (" + use.hex() + "): "
                    + candidate.reasons().stream().sorted().map(Reason::words).collect(Collectors.joining(", ")) + "; "
                    + deletion.words();
        }
    }

    /**
     * Finds the candidates of a page and tries out what deleting each would do.
     *
     * @param inventory of the page
     * @param garment colour of the chosen garment, or null
     * @return the most likely first
     */
    public static List<Ground> survey(
            PageJob page, ColourInventory inventory, Lab garment, Cancel cancel, Progress progress) throws Refusal {
        List<Ground> out = new ArrayList<>();
        for (Candidate candidate : candidates(page, inventory, garment)) {
            out.add(new Ground(candidate, deletion(page, candidate.nominated(), cancel, progress)));
        }
        return List.copyOf(out);
    }

    /**
     * @param inventory of the page
     * @param garment colour of the chosen garment, or null
     * @return candidates, those with most reasons and area first; colours without ink are none
     */
    public static List<Candidate> candidates(PageJob page, ColourInventory inventory, Lab garment) {
        Box trim = page.info().box(PageBox.TRIM);
        List<Candidate> out = new ArrayList<>();
        for (ColourUse use : inventory.all()) {
            double difference = garment == null ? Double.NaN : Cie.deltaE00(use.lab(), garment);
            Set<Reason> reasons = reasons(use, trim, difference);
            if (!reasons.isEmpty() && page.plate().mapping().inked(use.colour())) {
                out.add(new Candidate(use, reasons, difference));
            }
        }
        out.sort(Comparator.<Candidate>comparingInt(c -> -c.reasons().size())
                .thenComparing(c -> -c.use().visibleCm2()));
        return out;
    }

    private static Set<Reason> reasons(ColourUse use, Box trim, double garmentDe00) {
        Set<Reason> out = EnumSet.noneOf(Reason.class);
        Box seen = use.extent().intersect(trim);
        double share = use.visibleCm2() / (trim.widthMm() * trim.heightMm() / 100);
        if (seen.width() * seen.height() >= FILLS * trim.width() * trim.height() && share > 0.25) {
            out.add(Reason.FILLS_THE_PAGE);
        }
        Box e = use.extent();
        boolean sideways = e.x0() <= trim.x0() + EDGE_PT || e.x1() >= trim.x1() - EDGE_PT;
        boolean upright = e.y0() <= trim.y0() + EDGE_PT || e.y1() >= trim.y1() - EDGE_PT;
        if (sideways && upright && !e.isEmpty() && !use.hidden()) {
            out.add(Reason.REACHES_THE_EDGES);
        }
        if (garmentDe00 <= NEAR_GARMENT_DE00) {
            out.add(Reason.NEAR_THE_GARMENT);
        }
        return out;
    }

    /**
     * What deleting the objects of bare colours would do.
     *
     * @param objects how many there are; 0 when the colour is a part of others
     * @param inks ink that would come to light, with its area; empty when nothing would
     */
    public record Deletion(int objects, List<Uncovered> inks) {
        /** Copies the list. */
        public Deletion {
            inks = List.copyOf(inks);
        }

        /** @return one sentence for the user */
        public String words() {
            if (objects == 0) {
                return "it is part of a picture or a gradient, where there is no object to delete";
            }
            String what = "deleting " + (objects == 1 ? "this object" : "these " + objects + " objects");
            if (inks.isEmpty()) {
                return what + " would uncover nothing";
            }
            return what + " would uncover "
                    + inks.stream()
                            .map(u -> String.format(
                                    Locale.ROOT,
                                    "%.1f cm² of %s",
                                    u.cm2(),
                                    u.ink().name()))
                            .collect(Collectors.joining(", "));
        }
    }

    /**
     * Ink that would come to light.
     *
     * @param cm2 area in cm²
     */
    public record Uncovered(Ink ink, double cm2) {}

    /**
     * Compares the page with the nominated colours bare, and with their objects deleted.
     *
     * @param nominated rules; those that make colours bare count
     */
    public static Deletion deletion(PageJob page, ColourAssignment nominated, Cancel cancel, Progress progress)
            throws Refusal {
        DisplayList list = page.displayList();
        InkMapping mapping = InkMapping.of(
                page.declared(), list, page.condition(), page.plate().mapping().black(), nominated);
        DisplayList without = Repaint.of(list, c -> mapping.isBare(c) ? Optional.empty() : Optional.of(c));
        int[] objects = new int[1];
        Repaint.each(list.ops(), list.defaultLayers(), op -> {
            if (Repaint.paint(op) instanceof Paint.Flat flat && mapping.isBare(flat.colour())) {
                objects[0]++;
            }
        });
        Plate bare = new Plate(list, mapping);
        Plate deleted = new Plate(without, mapping);
        PlateRequest request = PlateRequest.of(page.info().box(PageBox.TRIM), DPI, true, list.defaultLayers());
        long[] pixels = new long[mapping.inks().size()];
        bare.stream(request, Separations.ROWS_AT_ONCE, cancel, progress, band -> {
            InkPlanes other = deleted.render(band.request(), cancel, Progress.NONE);
            count(band, other, pixels);
        });
        double cmPerPx = 2.54 / DPI;
        List<Uncovered> inks = new ArrayList<>();
        for (int p = 0; p < pixels.length; p++) {
            if (pixels[p] > 0) {
                inks.add(new Uncovered(mapping.inks().get(p), pixels[p] * cmPerPx * cmPerPx));
            }
        }
        return new Deletion(objects[0], inks);
    }

    private static void count(InkPlanes bare, InkPlanes deleted, long[] pixels) {
        byte[] one = new byte[bare.width()];
        byte[] other = new byte[bare.width()];
        for (int p = 0; p < pixels.length; p++) {
            for (int y = 0; y < bare.height(); y++) {
                bare.row(p, y, one, 0);
                deleted.row(p, y, other, 0);
                for (int x = 0; x < one.length; x++) {
                    pixels[p] += (other[x] & 255) - (one[x] & 255) >= UNCOVERED ? 1 : 0;
                }
            }
        }
    }
}
