package inkground.app;

import inkground.appearance.Appearance;
import inkground.appearance.DifferenceMap;
import inkground.appearance.ProofMap;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.findings.PlaceGrid;
import inkground.garment.Placement;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.proof.ProofPng;
import inkground.substrate.Substrate;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Two revisions of a page, laid on each other by the top left corners of their trims: where their colours differ,
 * what changed in each ink, and what is arranged otherwise.
 *
 * @param before size of the first revision's trim
 * @param after size of the second's
 * @param changedCm2 area whose colour differs by more than the limit, in cm²
 * @param changedShare that area as a share of all that was compared, 0 to 1
 * @param largestDe00 largest difference
 * @param inks one for each ink of either, those of the first revision first
 * @param places where changes lie, in mm from the top left corner of the trim; the largest first
 * @param arrangement what is printed otherwise by the user's choice: substrate, order, opacity, underbase and the like, one line each
 */
public record PageComparison(
        Size before,
        Size after,
        double changedCm2,
        double changedShare,
        double largestDe00,
        List<InkChange> inks,
        List<PlaceMm> places,
        List<String> arrangement) {
    /** ΔE00 up to which colours count as the same: a difference that is just seen, twice over. */
    public static final double DEFAULT_LIMIT_DE00 = 2;

    private static final double DPI = 100;
    private static final long MOST_PIXELS =
            40_000_000L; // of the map of changes; larger pages are compared more coarsely

    /** Copies the lists. */
    public PageComparison {
        inks = List.copyOf(inks);
        places = List.copyOf(places);
        arrangement = List.copyOf(arrangement);
    }

    /**
     * Size of a trim.
     *
     * @param widthMm in mm
     * @param heightMm in mm
     */
    public record Size(double widthMm, double heightMm) {
        private static Size of(PageJob page) {
            Box trim = page.info().box(PageBox.TRIM);
            return new Size(trim.widthMm(), trim.heightMm());
        }

        /** @return whether two sizes are told apart: by half a millimetre */
        public boolean differsFrom(Size other) {
            return Math.abs(widthMm - other.widthMm) >= 0.5 || Math.abs(heightMm - other.heightMm) >= 0.5;
        }
    }

    /** A rectangle, in mm from the top left corner of the trim. */
    public record PlaceMm(double x0, double y0, double x1, double y1) {
        private static PlaceMm of(PlaceGrid.Place place, double mmPerPx) {
            return new PlaceMm(place.x0() * mmPerPx, place.y0() * mmPerPx, place.x1() * mmPerPx, place.y1() * mmPerPx);
        }
    }

    /** What became of an ink. */
    public enum Change {
        /** Only the second revision prints it. */
        ADDED,
        /** Only the first revision prints it. */
        REMOVED,
        /** It prints in other places or in other tints. */
        CHANGED,
        /** It prints the same. */
        UNCHANGED;

        /** @return the lower-case word */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * One ink in both revisions.
     *
     * @param ink which
     * @param beforeCm2 area that it covers in the first revision, in cm²; a pixel at an edge counts by its share
     * @param afterCm2 area that it covers in the second
     * @param changedCm2 area where its tint differs by more than {@link PlaneChanges#STEP} of 255
     */
    public record InkChange(Ink ink, double beforeCm2, double afterCm2, double changedCm2) {
        /** @return what became of it */
        public Change change() {
            if (beforeCm2 == 0 && afterCm2 > 0) {
                return Change.ADDED;
            } else if (afterCm2 == 0 && beforeCm2 > 0) {
                return Change.REMOVED;
            }
            return changedCm2 > 0 ? Change.CHANGED : Change.UNCHANGED;
        }
    }

    /** @return whether anything differs: colour, an ink, the size, or how it is arranged */
    public boolean changed() {
        return changedCm2 > 0
                || !arrangement.isEmpty()
                || before.differsFrom(after)
                || inks.stream().anyMatch(ink -> ink.change() != Change.UNCHANGED);
    }

    /**
     * A page as it is printed, of one revision or of a record.
     *
     * @param page which
     * @param stack on what it is printed, which of its inks, in which order
     * @param layersOn ids of the layers that are on
     * @param overprint whether overprint is honoured
     * @param placement where it lies on a garment
     */
    public record Side(PageJob page, Stack stack, Set<Integer> layersOn, boolean overprint, Placement placement) {
        /** Copies the set. */
        public Side {
            layersOn = Set.copyOf(layersOn);
        }

        /** @return a page as its file has it */
        public static Side of(PageJob page, Substrate on) {
            return new Side(page, page.stackOn(on), page.displayList().defaultLayers(), true, Placement.USUAL);
        }

        /** @return a page as it is arranged; its colour rules are the page's own */
        public static Side of(PageJob page, Substrate on, Arrangement arrangement) {
            return new Side(
                    page,
                    PrintedStack.arranged(page.stackOn(on), arrangement),
                    page.displayList().defaultLayers(),
                    true,
                    arrangement.placement());
        }

        private PlateRequest region(Box box, double dpi) {
            return PlateRequest.of(box, dpi, overprint, layersOn);
        }

        private PlaneSource planes() {
            return PlaneSource.of(page.plate());
        }
    }

    /**
     * What to compare.
     *
     * @param before first revision
     * @param after second revision
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public record Order(Side before, Side after, double limitDe00) {
        /** Rejects a negative limit. */
        public Order {
            if (!(limitDe00 >= 0)) {
                throw new IllegalArgumentException("a limit of ΔE00 " + limitDe00);
            }
        }

        private Order reversed() {
            return new Order(after, before, limitDe00);
        }
    }

    /**
     * The map of changes of a page, laid on another revision by the top left corners of their trims, to the nearest pixel of any
     * scale.
     *
     * @param page whose planes are marked
     * @param model the stack of {@code page}
     * @param other the other revision
     * @param alike whether overprint is honoured in the other as in what is marked; else as the side says
     * @param limitDe00 largest difference that is let pass
     */
    public static DifferenceMap map(PageInfo page, StackModel model, Side other, boolean alike, double limitDe00) {
        Box trim = page.box(PageBox.TRIM);
        Box otherTrim = other.page().info().box(PageBox.TRIM);
        PlaneSource planes = other.planes();
        PlaneSource shifted = (request, cancel) -> {
            // the distance is rounded, not each corner: two roundings can lie a pixel apart
            int dx = (int) Math.round((otherTrim.x0() - trim.x0()) * request.pxPerPt());
            int dy = (int) Math.round((otherTrim.y0() - trim.y0()) * request.pxPerPt());
            return planes.planes(
                    new PlateRequest(
                            request.pxPerPt(),
                            request.x0() + dx,
                            request.y0() + dy,
                            request.x1() + dx,
                            request.y1() + dy,
                            alike ? request.overprint() : other.overprint(),
                            other.layersOn()),
                    cancel);
        };
        return DifferenceMap.revisions(shifted, model, new StackModel(other.stack()), limitDe00);
    }

    /** The map of an order over its first revision. */
    private static DifferenceMap map(Order order) {
        Side before = order.before();
        return map(before.page().info(), new StackModel(before.stack()), order.after(), false, order.limitDe00());
    }

    /** The first revision's device pixels from the common corner of the trims to the farther ends of both. */
    private static PlateRequest region(Order order, double dpi) {
        Box trim = order.before().page().info().box(PageBox.TRIM);
        Box other = order.after().page().info().box(PageBox.TRIM);
        Box both = new Box(
                trim.x0(),
                trim.y0(),
                trim.x0() + Math.max(trim.width(), other.width()),
                trim.y0() + Math.max(trim.height(), other.height()));
        return order.before().region(both, dpi);
    }

    /** Compares two pages. */
    public static PageComparison of(Order order, Cancel cancel, Progress progress) throws Refusal {
        PlateRequest region = region(order, DPI);
        double pixels = (double) region.width() * region.height();
        if (pixels > MOST_PIXELS) {
            region = region(order, DPI * Math.sqrt(MOST_PIXELS / pixels));
        }
        return compare(order, region, cancel, progress);
    }

    private static PageComparison compare(Order order, PlateRequest region, Cancel cancel, Progress progress)
            throws Refusal {
        PageJob before = order.before().page();
        PageJob after = order.after().page();
        DifferenceMap map = map(order);
        PlaceGrid places = new PlaceGrid(region.width(), region.height(), region.mmPerPx());
        PlaneChanges changes = new PlaneChanges(before.inks(), after.inks());
        Changed changed = new Changed();
        for (int y = region.y0(); y < region.y1(); y += PlaneSource.ROWS_AT_ONCE) {
            progress.report("comparing", (double) (y - region.y0()) / region.height());
            int end = Math.min(region.y1(), y + PlaneSource.ROWS_AT_ONCE);
            // one pixel more on each side: an edge pixel counts by its share of what its neighbours have
            PlateRequest part = region.part(region.x0(), y, region.x1(), end).grown(1);
            InkPlanes band = order.before().planes().planes(part, cancel);
            InkPlanes with = map.compared(band, cancel);
            changes.add(band, with);
            changed.add(map.differences(band, with, cancel), part, order.limitDe00(), places, y - region.y0());
        }
        progress.report("comparing", 1);
        double cm2PerPx = region.mmPerPx() * region.mmPerPx() / 100;
        return new PageComparison(
                Size.of(before),
                Size.of(after),
                changed.pixels * cm2PerPx,
                changed.pixels / ((double) region.width() * region.height()),
                changed.largest,
                changes.inks(cm2PerPx),
                places.places().stream()
                        .map(p -> PlaceMm.of(p, region.mmPerPx()))
                        .toList(),
                ArrangementChanges.lines(order.before(), order.after()));
    }

    /** Pixels beyond the limit, so far. */
    private static final class Changed {
        private double pixels;
        private double largest;

        void add(float[] differences, PlateRequest grown, double limit, PlaceGrid places, int firstRow) {
            int width = grown.width();
            for (int y = 1; y < grown.height() - 1; y++) {
                for (int x = 1; x < width - 1; x++) {
                    float difference = differences[y * width + x];
                    largest = Math.max(largest, difference);
                    if (difference > limit) {
                        pixels += PlaneChanges.share(differences, width, y * width + x);
                        places.add(x - 1, firstRow + y - 1, 0, 1);
                    }
                }
            }
        }
    }

    /**
     * Writes the second revision's proof with the map of changes over it.
     *
     * @param dpi pixels per inch, above 0
     * @param replace whether an existing file may be replaced
     * @throws Refusal if the picture would be too large, or cannot be written
     */
    public static Proofs.Result writeMap(
            Order order, double dpi, Path file, boolean replace, Cancel cancel, Progress progress) throws Refusal {
        Order reversed = order.reversed();
        PlateRequest region = region(reversed, dpi);
        if ((long) region.width() * region.height() > Proofs.MOST_PIXELS) {
            throw new Refusal("The map would have " + region.width() + " × " + region.height()
                    + " pixels; the limit is " + Proofs.MOST_PIXELS / 1_000_000 + " million. Use a lower resolution.");
        }
        SafeFiles.file(file, replace, temporary -> {
            BufferedImage picture = new BufferedImage(region.width(), region.height(), BufferedImage.TYPE_INT_RGB);
            int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
            StackModel model = new StackModel(order.after().stack());
            ProofMap map = map(reversed);
            order.after().planes().stream(region, cancel, progress, band -> {
                int offset = (band.request().y0() - region.y0()) * region.width();
                Appearance.paint(band, model, pixels, offset, region.width(), cancel);
                map.paint(band, pixels, offset, region.width(), cancel);
            });
            ProofPng.write(
                    picture,
                    dpi,
                    Map.of("Title", "Map of changes", "Comment", Proofs.CAUTION, "Software", "Inkground"),
                    temporary);
            cancel.check();
        });
        return new Proofs.Result(file, region.width(), region.height());
    }
}
