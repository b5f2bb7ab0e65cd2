package inkground.app;

import inkground.appearance.Appearance;
import inkground.appearance.DifferenceMap;
import inkground.appearance.ProofMap;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.findings.PlaceGrid;
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
 * Two revisions of a page, laid on each other by the top left corners of their trims: where their colours differ on a substrate,
 * and what changed in each ink.
 *
 * @param before size of the first revision's trim
 * @param after size of the second's
 * @param changedCm2 area whose colour differs by more than the limit, in cm²
 * @param changedShare that area as a share of all that was compared, 0 to 1
 * @param largestDe00 largest difference
 * @param inks one for each ink of either, those of the first revision first
 * @param places where changes lie, in mm from the top left corner of the trim; the largest first
 */
public record PageComparison(
        Size before,
        Size after,
        double changedCm2,
        double changedShare,
        double largestDe00,
        List<InkChange> inks,
        List<PlaceMm> places) {
    /** ΔE00 up to which colours count as the same: a difference that is just seen, twice over. */
    public static final double DEFAULT_LIMIT_DE00 = 2;

    private static final double DPI = 100;
    private static final long MOST_PIXELS =
            40_000_000L; // of the map of changes; larger pages are compared more coarsely

    /** Copies the lists. */
    public PageComparison {
        inks = List.copyOf(inks);
        places = List.copyOf(places);
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

    /** @return whether anything differs: colour, an ink, or the size */
    public boolean changed() {
        return changedCm2 > 0
                || before.differsFrom(after)
                || inks.stream().anyMatch(ink -> ink.change() != Change.UNCHANGED);
    }

    /**
     * What to compare.
     *
     * @param before first revision
     * @param after second revision
     * @param on what both are printed on
     * @param limitDe00 largest difference that is let pass, 0 or more
     */
    public record Order(PageJob before, PageJob after, Substrate on, double limitDe00) {
        /** Rejects a negative limit. */
        public Order {
            if (!(limitDe00 >= 0)) {
                throw new IllegalArgumentException("a limit of ΔE00 " + limitDe00);
            }
        }
    }

    /** The two pages at one scale. */
    private record Pair(Order order, PlateRequest region, DifferenceMap map) {
        static Pair of(Order order, double dpi) {
            Box trim = order.before().info().box(PageBox.TRIM);
            Box other = order.after().info().box(PageBox.TRIM);
            Box both = new Box(
                    trim.x0(),
                    trim.y0(),
                    trim.x0() + Math.max(trim.width(), other.width()),
                    trim.y0() + Math.max(trim.height(), other.height()));
            Set<Integer> layers = order.before().displayList().defaultLayers();
            PlateRequest region = PlateRequest.of(both, dpi, true, layers);
            PlateRequest corner = PlateRequest.of(
                    other, dpi, true, order.after().displayList().defaultLayers());
            PlaneSource after = PlaneSource.of(order.after().plate());
            DifferenceMap map = DifferenceMap.revisions(
                    (request, cancel) -> after.planes(
                            new PlateRequest(
                                    request.pxPerPt(),
                                    request.x0(),
                                    request.y0(),
                                    request.x1(),
                                    request.y1(),
                                    request.overprint(),
                                    corner.layersOn()),
                            cancel),
                    corner.x0() - region.x0(),
                    corner.y0() - region.y0(),
                    model(order.before(), order.on()),
                    model(order.after(), order.on()),
                    order.limitDe00());
            return new Pair(order, region, map);
        }
    }

    private static StackModel model(PageJob page, Substrate on) {
        return new StackModel(Stack.of(on, page.inkColours(), page.condition()));
    }

    /**
     * The map of changes of a page, laid on an earlier revision by the top left corners of their trims, at any scale.
     *
     * @param page whose planes are marked
     * @param before the earlier revision; all layers that it shows by default are on
     * @param model the stack of {@code page}
     * @param beforeModel the stack of {@code before}
     * @param limitDe00 largest difference that is let pass
     */
    public static ProofMap map(
            PageJob page, PageJob before, StackModel model, StackModel beforeModel, double limitDe00) {
        Box trim = page.info().box(PageBox.TRIM);
        Box other = before.info().box(PageBox.TRIM);
        Set<Integer> layers = before.displayList().defaultLayers();
        PlaneSource earlier = PlaneSource.of(before.plate());
        PlaneSource shifted = (request, cancel) -> {
            int dx = (int) Math.round((other.x0() - trim.x0()) * request.pxPerPt());
            int dy = (int) Math.round((other.y0() - trim.y0()) * request.pxPerPt());
            return earlier.planes(
                    new PlateRequest(
                            request.pxPerPt(),
                            request.x0() + dx,
                            request.y0() + dy,
                            request.x1() + dx,
                            request.y1() + dy,
                            request.overprint(),
                            layers),
                    cancel);
        };
        return DifferenceMap.revisions(shifted, 0, 0, model, beforeModel, limitDe00);
    }

    /** Compares two pages. */
    public static PageComparison of(Order order, Cancel cancel, Progress progress) throws Refusal {
        Pair pair = Pair.of(order, DPI);
        double pixels = (double) pair.region().width() * pair.region().height();
        if (pixels > MOST_PIXELS) {
            pair = Pair.of(order, DPI * Math.sqrt(MOST_PIXELS / pixels));
        }
        PlateRequest region = pair.region();
        DifferenceMap map = pair.map();
        PlaceGrid places = new PlaceGrid(region.width(), region.height(), region.mmPerPx());
        PlaneChanges changes =
                new PlaneChanges(order.before().inks(), order.after().inks());
        Changed changed = new Changed();
        for (int y = region.y0(); y < region.y1(); y += PlaneSource.ROWS_AT_ONCE) {
            progress.report("comparing", (double) (y - region.y0()) / region.height());
            int end = Math.min(region.y1(), y + PlaneSource.ROWS_AT_ONCE);
            // one pixel more on each side: an edge pixel counts by its share of what its neighbours have
            PlateRequest part = region.part(region.x0(), y, region.x1(), end).grown(1);
            InkPlanes band = PlaneSource.of(order.before().plate()).planes(part, cancel);
            InkPlanes with = map.compared(band, cancel);
            changes.add(band, with);
            changed.add(map.differences(band, with, cancel), part, order.limitDe00(), places, y - region.y0());
        }
        progress.report("comparing", 1);
        double cm2PerPx = region.mmPerPx() * region.mmPerPx() / 100;
        return new PageComparison(
                Size.of(order.before()),
                Size.of(order.after()),
                changed.pixels * cm2PerPx,
                changed.pixels / ((double) region.width() * region.height()),
                changed.largest,
                changes.inks(cm2PerPx),
                places.places().stream()
                        .map(p -> PlaceMm.of(p, region.mmPerPx()))
                        .toList());
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
        Order reversed = new Order(order.after(), order.before(), order.on(), order.limitDe00());
        Pair pair = Pair.of(reversed, dpi);
        PlateRequest region = pair.region();
        if ((long) region.width() * region.height() > Proofs.MOST_PIXELS) {
            throw new Refusal("The map would have " + region.width() + " × " + region.height()
                    + " pixels; the limit is " + Proofs.MOST_PIXELS / 1_000_000 + " million. Use a lower resolution.");
        }
        SafeFiles.file(file, replace, temporary -> {
            BufferedImage picture = new BufferedImage(region.width(), region.height(), BufferedImage.TYPE_INT_RGB);
            int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
            StackModel model = model(order.after(), order.on());
            PlaneSource.of(order.after().plate()).stream(region, cancel, progress, band -> {
                int offset = (band.request().y0() - region.y0()) * region.width();
                Appearance.paint(band, model, pixels, offset, region.width(), cancel);
                pair.map().paint(band, pixels, offset, region.width(), cancel);
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
