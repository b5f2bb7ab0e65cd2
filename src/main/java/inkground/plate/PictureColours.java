package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Cancel;
import inkground.colour.Cie;
import inkground.colour.Lab;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The flat colours of a picture: clusters in Lab that hold a good share of it. Colours along soft edges lie between two flat
 * ones and are counted as mixtures, not as colours; what is neither is tone, as in a photograph.
 *
 * @param flats flat colours, the largest first
 * @param mixedShare share of the samples that lie between two flat colours, 0 to 1
 * @param toneShare share of the samples that are neither flat nor a mixture, 0 to 1
 */
public record PictureColours(List<Flat> flats, double mixedShare, double toneShare) {
    /** Radius of a cluster, ΔE00. */
    private static final double RADIUS = 4;

    /** A flat colour holds at least this share of the picture … */
    private static final double LEAST_SHARE = 0.002;

    /** … or this much, if it could as well be a soft edge between two larger ones; … */
    private static final double LEAST_SHARE_BETWEEN = 0.02;

    /** … and its own samples are this much denser than those of the soft edges around it. */
    private static final double LEAST_PEAK = 0.4;

    /** Largest distance from the line between two flat colours, in Lab after gamma: a mixture bends a little there. */
    private static final double MIXTURE_DE76 = 9;

    private static final int MOST_SAMPLES = 400_000;
    private static final int MOST_FLATS = 24;

    /** Copies the list. */
    public PictureColours {
        flats = List.copyOf(flats);
    }

    /**
     * A flat colour.
     *
     * @param colour the one that most of its samples have; of the palette's base space where there is a palette
     * @param lab its centre
     * @param share of the picture's opaque samples, 0 to 1
     * @param edgeShare share of the samples along the picture's four edges, 0 to 1
     */
    public record Flat(Colour colour, Lab lab, double share, double edgeShare) {}

    /** Counts of one quantised colour. */
    private static final class Bin {
        Lab lab;
        long count;
        long edge;
        float[] common; // by majority vote
        private long votes;

        void add(float[] colour) {
            count++;
            if (votes == 0) {
                common = colour;
            }
            votes += Arrays.equals(common, colour) ? 1 : -1;
        }
    }

    /**
     * Takes stock of a picture; large ones are sampled evenly.
     *
     * @param pixels decoded
     * @param space of the samples
     * @param reader for colours
     */
    public static PictureColours of(Pixels pixels, ColourSpace space, ColourReader reader, Cancel cancel) {
        Map<Integer, Bin> bins = new HashMap<>();
        Count counted = count(pixels, space, reader, bins, cancel);
        long total = counted.samples();
        List<Bin> order = new ArrayList<>(bins.values());
        order.sort(Comparator.comparingLong((Bin b) -> b.count).reversed());
        List<Bin> centres = new ArrayList<>();
        List<Flat> flats = new ArrayList<>();
        for (Bin bin : order) {
            boolean free = centres.stream().allMatch(c -> Cie.deltaE00(c.lab, bin.lab) > 2 * RADIUS);
            if (bin.count < LEAST_SHARE * LEAST_PEAK * total || centres.size() == MOST_FLATS) {
                break;
            }
            long near = 0;
            long nearEdge = 0;
            for (Bin other : order) {
                boolean close = Cie.deltaE00(other.lab, bin.lab) <= RADIUS;
                near += close ? other.count : 0;
                nearEdge += close ? other.edge : 0;
            }
            double least = between(bin.lab, flats) ? LEAST_SHARE_BETWEEN : LEAST_SHARE;
            if (free && near >= least * total && bin.count >= LEAST_PEAK * near) {
                centres.add(bin);
                double edge = (double) nearEdge / Math.max(1, counted.edge());
                Colour common = colour(space, bin.common);
                Lab lab = reader.toLab(common.space(), common.components());
                flats.add(new Flat(common, lab, (double) near / total, edge));
            }
        }
        long mixed = 0;
        long tone = 0;
        for (Bin bin : order) {
            if (flats.stream().noneMatch(f -> Cie.deltaE00(f.lab(), bin.lab) <= RADIUS)) {
                if (between(bin.lab, flats)) {
                    mixed += bin.count;
                } else {
                    tone += bin.count;
                }
            }
        }
        flats.sort(Comparator.comparingDouble(Flat::share).reversed());
        return new PictureColours(flats, (double) mixed / Math.max(1, total), (double) tone / Math.max(1, total));
    }

    /**
     * What was counted.
     *
     * @param samples that are opaque
     * @param edge samples along the four edges, opaque or not
     */
    private record Count(long samples, long edge) {}

    private static Count count(
            Pixels pixels, ColourSpace space, ColourReader reader, Map<Integer, Bin> bins, Cancel cancel) {
        int n = pixels.components();
        int size = pixels.width() * pixels.height();
        int step = Math.max(1, size / MOST_SAMPLES);
        while (step > 1 && pixels.width() % step == 0) {
            step++; // else the same columns in every row
        }
        boolean sameMask = pixels.mask() != null
                && pixels.mask().width() == pixels.width()
                && pixels.mask().height() == pixels.height();
        long total = 0;
        long edges = 0;
        for (int i = 0; i < size; i += step) {
            if ((i & 0xfff) < step) {
                cancel.check();
            }
            boolean edge = onEdge(pixels, i);
            edges += edge ? 1 : 0;
            if (sameMask && (pixels.mask().samples()[i] & 255) < 128) {
                continue;
            }
            int key = 0;
            float[] colour = new float[n];
            for (int c = 0; c < n; c++) {
                int sample = pixels.samples()[i * n + c] & 255;
                boolean index = space instanceof ColourSpace.Indexed;
                key = key * 131 + (index ? sample : sample >> 1);
                colour[c] = index ? sample : space.min(c) + (space.max(c) - space.min(c)) * sample / 255f;
            }
            Bin bin = bins.computeIfAbsent(key, k -> new Bin());
            if (bin.lab == null) {
                bin.lab = reader.toLab(space, new Colour(space, colour).components());
            }
            bin.add(colour);
            bin.edge += edge ? 1 : 0;
            total++;
        }
        return new Count(total, edges);
    }

    private static boolean onEdge(Pixels pixels, int i) {
        int x = i % pixels.width();
        int y = i / pixels.width();
        return x == 0 || y == 0 || x == pixels.width() - 1 || y == pixels.height() - 1;
    }

    private static Colour colour(ColourSpace space, float[] components) {
        return space instanceof ColourSpace.Indexed indexed
                ? new Colour(indexed.base(), indexed.lookup(Math.round(components[0])))
                : new Colour(space, components);
    }

    private static boolean between(Lab lab, List<Flat> flats) {
        for (int i = 0; i < flats.size(); i++) {
            for (int j = i + 1; j < flats.size(); j++) {
                if (distance(lab, flats.get(i).lab(), flats.get(j).lab()) <= MIXTURE_DE76) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double distance(Lab p, Lab a, Lab b) {
        double[] ab = {b.L() - a.L(), b.a() - a.a(), b.b() - a.b()};
        double[] ap = {p.L() - a.L(), p.a() - a.a(), p.b() - a.b()};
        double t = (ab[0] * ap[0] + ab[1] * ap[1] + ab[2] * ap[2])
                / Math.max(1e-9, ab[0] * ab[0] + ab[1] * ab[1] + ab[2] * ab[2]);
        double u = Math.max(0, Math.min(1, t));
        return Math.sqrt(
                Math.pow(ap[0] - u * ab[0], 2) + Math.pow(ap[1] - u * ab[1], 2) + Math.pow(ap[2] - u * ab[2], 2));
    }
}
