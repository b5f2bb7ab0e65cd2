package inkground.findings;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.substrate.PrintProcess;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Lines narrower and gaps narrower than a process holds, measured on the plane of each ink but technical ones.
 *
 * <p>From {@value #PX_PER_MINIMUM} pixels to the minimum, the least of {@link #dpi}, widths of lines and gaps are right within 0.02 mm,
 * and areas of lines, gaps, rings, crosses and dots within 0.5 %. The width of a dot is known from its area, within 6 % if it is 4
 * pixels across, and down to three quarters of it if it is two. Where a line narrows by and by, it is thin from the minimum itself,
 * known to half a column of pixels; it is followed to its tip. Where it opens into something broad, that end is right within a square
 * pixel and a half, so that a bridge less than a few pixels long may be far off or not found. Three limits: a line less than two pixels
 * wide on top of another ink is taken as up to half a pixel wider, since its tint is not known from its edge; lines and gaps less than
 * a fifth of the minimum, and dots less than a third of it, may be too faint to be told from tone; and a line of just the minimum that
 * goes on from a thinner one may count with it.
 * In photographs strong detail counts like lines.
 *
 * @param places where they are, the narrowest first
 * @param lineCm2 area of the thin lines of all inks, in cm²
 * @param gapCm2 area of the thin gaps, in cm²
 */
public record ThinFeatures(List<Place> places, double lineCm2, double gapCm2) {
    /** Pixels that a minimum width has at the resolution of {@link #dpi}. */
    public static final double PX_PER_MINIMUM = 2.5;

    private static final double LEAST_DPI = 150;
    private static final double MOST_DPI = 1200;
    private static final int FULL_REACH_PX = 2;
    private static final int SOLID_ENOUGH = 16;

    /** Copies the list. */
    public ThinFeatures {
        places = List.copyOf(places);
    }

    /** What is too narrow. */
    public enum Kind {
        /** Ink that may not hold. */
        LINE,
        /** Bare space between ink that may fill in. */
        GAP;

        /** @return the lower-case word */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * The least widths that hold.
     *
     * @param lineMm thinnest line, 0 to 20; 0 finds none
     * @param gapMm narrowest gap, 0 to 20; 0 finds none
     */
    public record Limits(double lineMm, double gapMm) {
        /** Checks the ranges. */
        public Limits {
            if (!(lineMm >= 0 && lineMm <= 20 && gapMm >= 0 && gapMm <= 20)) {
                throw new IllegalArgumentException("least widths of " + lineMm + " and " + gapMm + " mm");
            }
        }

        /** @return those of a process */
        public static Limits of(PrintProcess process) {
            return new Limits(process.minLineMm(), process.minGapMm());
        }

        double mm(Kind kind) {
            return kind == Kind.LINE ? lineMm : gapMm;
        }
    }

    /**
     * A place; features of one ink and kind that lie within some millimetres of each other are one.
     *
     * @param ink which
     * @param kind line or gap
     * @param box around it, in points of page space
     * @param xPt where it is narrowest, page space
     * @param yPt where it is narrowest, page space
     * @param widthMm width there, in mm
     * @param cm2 area of what is too narrow, in cm²
     */
    public record Place(Ink ink, Kind kind, Box box, double xPt, double yPt, double widthMm, double cm2) {}

    /** @return the resolution to measure at: the smaller minimum has {@value #PX_PER_MINIMUM} pixels; 150 to 1,200 dpi */
    public static double dpi(Limits limits) {
        double least = Math.min(
                limits.lineMm() > 0 ? limits.lineMm() : Double.MAX_VALUE,
                limits.gapMm() > 0 ? limits.gapMm() : Double.MAX_VALUE);
        return Math.max(LEAST_DPI, Math.min(MOST_DPI, Math.ceil(PX_PER_MINIMUM * 25.4 / least)));
    }

    /**
     * Measures a region band by band; memory depends on its width, not on its height.
     *
     * @param region at the resolution of {@link #dpi}, or a finer one
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static ThinFeatures of(
            PlaneSource source, PlateRequest region, Limits limits, Cancel cancel, Progress progress) throws Refusal {
        Map<Integer, PlaceGrid> grids = new HashMap<>();
        List<Ink> inks = new ArrayList<>();
        int margin = marginPx(limits, region);
        for (int y = region.y0(); y < region.y1(); y += PlaneSource.ROWS_AT_ONCE) {
            cancel.check();
            progress.report("measuring widths", (double) (y - region.y0()) / region.height());
            int end = Math.min(region.y1(), y + PlaneSource.ROWS_AT_ONCE);
            int top = y - region.y0() - margin;
            PlateRequest band = region.part(region.x0(), y, region.x1(), end).grown(margin);
            InkPlanes planes = source.planes(band, cancel);
            inks = planes.inks().inks();
            scan(planes, limits, cancel, (ink, kind, scan) -> {
                PlaceGrid grid = grids.computeIfAbsent(
                        2 * ink + kind.ordinal(),
                        k -> new PlaceGrid(region.width(), region.height(), region.mmPerPx()));
                scan.each((i, j, thin, widthPx, share) -> {
                    if (share != 0 && inside(i, j, band, margin)) {
                        grid.add(i - margin, top + j, thin ? widthPx : Double.MAX_VALUE, share);
                    }
                });
            });
        }
        progress.report("measuring widths", 1);
        return gathered(grids, inks, region);
    }

    /** Whether a pixel lies within the margin of a region that has one. */
    static boolean inside(int x, int y, PlateRequest grown, int margin) {
        return x >= margin && y >= margin && x < grown.width() - margin && y < grown.height() - margin;
    }

    private static ThinFeatures gathered(Map<Integer, PlaceGrid> grids, List<Ink> inks, PlateRequest region) {
        double mm = region.mmPerPx();
        double[] cm2 = new double[2];
        List<Place> places = new ArrayList<>();
        grids.forEach((key, grid) -> {
            for (PlaceGrid.Place p : grid.places()) {
                if (p.least() == Double.MAX_VALUE) {
                    continue; // a rim whose line lies in the margin
                }
                double area = p.sum() * mm * mm / 100;
                cm2[key % 2] += area;
                double pt = 1 / region.pxPerPt();
                Box box = new Box(
                        (region.x0() + p.x0()) * pt,
                        (region.y0() + p.y0()) * pt,
                        (region.x0() + p.x1()) * pt,
                        (region.y0() + p.y1()) * pt);
                places.add(new Place(
                        inks.get(key / 2),
                        Kind.values()[key % 2],
                        box,
                        (region.x0() + p.leastX() + 0.5) * pt,
                        (region.y0() + p.leastY() + 0.5) * pt,
                        p.least() * mm,
                        area));
            }
        });
        places.sort(Comparator.comparingDouble(Place::widthMm));
        return new ThinFeatures(places, cm2[0], cm2[1]);
    }

    /** Receives what was measured on one plane. */
    interface Sink {
        void scanned(int ink, Kind kind, ThinScan scan);
    }

    static int marginPx(Limits limits, PlateRequest request) {
        return ThinScan.marginPx(Math.max(limits.lineMm(), limits.gapMm()) / request.mmPerPx());
    }

    /** Measures all planes of a region that already has its margin. */
    static void scan(InkPlanes planes, Limits limits, Cancel cancel, Sink sink) {
        byte[] laid = planes.raster(planes.laidPlane());
        for (int ink = 0; ink < planes.inks().size(); ink++) {
            if (planes.inks().get(ink).kind() == InkKind.TECHNICAL || even(planes, ink)) {
                continue;
            }
            byte[] tints = planes.raster(ink);
            int reach = marginPx(limits, planes.request());
            Tiles varying = Tiles.varying(tints, planes.width(), planes.height(), reach, ThinScan.LEAST_RISE);
            if (varying.none()) {
                continue;
            }
            for (Kind kind : Kind.values()) {
                double px = limits.mm(kind) / planes.request().mmPerPx();
                if (px > 0) {
                    cancel.check();
                    ThinScan scan = new ThinScan(
                            kind == Kind.LINE ? tints : Squares.invert(tints),
                            kind == Kind.LINE ? full(tints, laid, planes, varying) : solid(tints.length),
                            varying,
                            planes.width(),
                            planes.height(),
                            px,
                            cancel);
                    sink.scanned(ink, kind, scan);
                }
            }
        }
    }

    /** The tint inside lines: at an edge on nothing it is known exactly, elsewhere it is the largest nearby. */
    private static byte[] full(byte[] tints, byte[] laid, InkPlanes planes, Tiles where) {
        byte[] inside = tints.clone();
        for (int i = 0; i < tints.length; i++) {
            int cover = laid[i] & 255;
            if (cover >= SOLID_ENOUGH && cover < 255) {
                inside[i] = (byte) Math.min(255, ((tints[i] & 255) * 255 + cover / 2) / cover);
            }
        }
        return Squares.largest(inside, planes.width(), planes.height(), FULL_REACH_PX, where);
    }

    private static byte[] solid(int size) {
        byte[] out = new byte[size];
        Arrays.fill(out, (byte) 255);
        return out;
    }

    private static boolean even(InkPlanes planes, int ink) {
        int first = planes.uniform(ink, 0, 0);
        for (int y = 0; y < planes.cellsDown(); y++) {
            for (int x = 0; x < planes.cellsAcross(); x++) {
                if (first < 0 || planes.uniform(ink, x, y) != first) {
                    return false;
                }
            }
        }
        return true;
    }
}
