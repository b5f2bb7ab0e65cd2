package inkground.app;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.artwork.TintTransform;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.geometry.Box;
import inkground.plate.ColourReader;
import inkground.plate.InkMapping;
import inkground.plate.PictureColours;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Every colour that a page paints.
 *
 * @param colours flat colours, the one most seen first
 * @param gradients number of objects painted with a shading
 * @param images each image, in painting order; one placed twice is there once
 */
public record ColourInventory(List<ColourUse> colours, int gradients, List<Picture> images) {
    /** ΔE00 below which two colours are probably meant to be one. */
    public static final double NEAR_DE00 = 3;

    /** Coverage is exact, so that areas need no fine raster; this one keeps 8-bit rounding below a per mille. */
    private static final double DPI = 100;

    /** A place that is picked is a square of this many to the inch: 0.06 mm, finer than a line that can be printed. */
    private static final double PICK_DPI = 400;

    /** Colours whose areas are measured in one go; below the number of inks a job can have. */
    private static final int AT_ONCE = 24;

    private static final Colour REST = new Colour(marker("rest"), 1);

    /**
     * An image on the page.
     *
     * @param colours that it has
     * @param extent box of all its places, page space, points
     * @param cm2 area inside the trim that its places take together
     */
    public record Picture(PictureColours colours, Box extent, double cm2) {
        /** @return its flat colours as colours of the page; one that does not reach its edges has no extent */
        public List<ColourUse> uses() {
            return colours.flats().stream()
                    .map(flat -> new ColourUse(
                            flat.colour(),
                            flat.lab(),
                            0,
                            flat.share() * cm2,
                            flat.edgeShare() >= LEAST_EDGE ? extent : Box.EMPTY))
                    .toList();
        }
    }

    /** Share of a picture's edges from which a colour counts as reaching them. */
    private static final double LEAST_EDGE = 0.25;

    /** Copies the list. */
    public ColourInventory {
        colours = List.copyOf(colours);
        images = List.copyOf(images);
    }

    /** Colours of objects so far. */
    private static final class Tally {
        int objects;
        Box extent = Box.EMPTY;
    }

    /** Where an image lies. */
    private static final class Place {
        Box extent = Box.EMPTY;
        double cm2;

        void add(Op.Image image, Box trim) {
            Box clipped = image.clip() == null
                    ? image.bounds()
                    : image.bounds().intersect(image.clip().bounds());
            Box seen = clipped.intersect(trim);
            double points = Math.min(Math.abs(image.unitToPage().determinant()), seen.width() * seen.height());
            extent = extent.union(clipped);
            cm2 += points * Box.MM_PER_PT * Box.MM_PER_PT / 100;
        }
    }

    /** Takes stock of the layers that print by default. */
    public static ColourInventory of(PageJob page, Cancel cancel, Progress progress) throws Refusal {
        DisplayList list = page.displayList();
        Set<Integer> layers = list.defaultLayers();
        Map<Colour, Tally> tallies = new LinkedHashMap<>();
        int[] gradients = new int[1];
        Map<ImageSource, Place> images = new LinkedHashMap<>();
        Box trim = page.info().box(PageBox.TRIM);
        Repaint.each(list.ops(), layers, op -> {
            if (Repaint.paint(op) instanceof Paint.Flat flat) {
                Tally tally = tallies.computeIfAbsent(plain(flat.colour()), k -> new Tally());
                tally.objects++;
                Box box = op.clip() == null
                        ? op.bounds()
                        : op.bounds().intersect(op.clip().bounds());
                tally.extent = tally.extent.union(box);
            } else if (Repaint.paint(op) instanceof Paint.Shading) {
                gradients[0]++;
            } else if (op instanceof Op.Image image) {
                images.computeIfAbsent(image.image(), k -> new Place()).add(image, trim);
            }
        });
        ColourReader reader = new ColourReader(page.condition());
        List<Colour> keys = List.copyOf(tallies.keySet());
        List<ColourUse> out = new ArrayList<>();
        for (int from = 0; from < keys.size(); from += AT_ONCE) {
            List<Colour> part = keys.subList(from, Math.min(keys.size(), from + AT_ONCE));
            double[] areas = areas(page, part, cancel, progress);
            for (int i = 0; i < part.size(); i++) {
                Colour colour = part.get(i);
                Tally tally = tallies.get(colour);
                out.add(new ColourUse(
                        colour,
                        reader.toLab(colour.space(), colour.components()),
                        tally.objects,
                        areas[i],
                        tally.extent));
            }
        }
        out.sort(Comparator.comparingDouble(ColourUse::visibleCm2).reversed());
        List<Picture> pictures = new ArrayList<>();
        for (Map.Entry<ImageSource, Place> entry : images.entrySet()) {
            ImageSource image = entry.getKey();
            Place place = entry.getValue();
            pictures.add(new Picture(
                    PictureColours.of(image.decode(), image.space(), reader, cancel), place.extent, place.cm2));
        }
        return new ColourInventory(out, gradients[0], pictures);
    }

    private static Colour plain(Colour colour) {
        return colour.space() instanceof ColourSpace.Indexed indexed
                ? new Colour(indexed.base(), indexed.lookup(Math.round(colour.components()[0])))
                : colour;
    }

    /**
     * Finds the flat colour that is seen at a place.
     *
     * @param xPt page x, points
     * @param yPt page y, points
     * @param layersOn ids of the layers that are on
     * @return the one that covers most of that place; empty if none of these colours does
     */
    public Optional<ColourUse> at(PageJob page, double xPt, double yPt, Set<Integer> layersOn, Cancel cancel)
            throws Refusal {
        double half = 36 / PICK_DPI;
        Box spot = new Box(xPt - half, yPt - half, xPt + half, yPt + half);
        PlateRequest request = PlateRequest.of(spot, PICK_DPI, false, layersOn);
        ColourUse found = null;
        double most = 0;
        for (int from = 0; from < colours.size(); from += AT_ONCE) {
            List<ColourUse> part = colours.subList(from, Math.min(colours.size(), from + AT_ONCE));
            double[] shares =
                    shares(page, part.stream().map(ColourUse::colour).toList(), request, cancel, Progress.NONE);
            for (int i = 0; i < shares.length; i++) {
                if (shares[i] > most) {
                    most = shares[i];
                    found = part.get(i);
                }
            }
        }
        return Optional.ofNullable(found);
    }

    private static double[] areas(PageJob page, List<Colour> colours, Cancel cancel, Progress progress) throws Refusal {
        Box trim = page.info().box(PageBox.TRIM);
        // overprint off: a colour that overprints is still what is seen last
        PlateRequest request =
                PlateRequest.of(trim, DPI, false, page.displayList().defaultLayers());
        double[] out = shares(page, colours, request, cancel, progress);
        double pageCm2 = trim.widthMm() * trim.heightMm() / 100;
        for (int i = 0; i < out.length; i++) {
            out[i] *= pageCm2;
        }
        return out;
    }

    /**
     * Paints each colour as an ink of its own: what its plane holds is what is seen of it.
     *
     * @return share of the region that each colour covers, 0 to 1
     */
    private static double[] shares(
            PageJob page, List<Colour> colours, PlateRequest request, Cancel cancel, Progress progress) throws Refusal {
        Map<Colour, Colour> markers = new LinkedHashMap<>();
        colours.forEach(colour -> markers.put(colour, new Colour(marker("colour " + markers.size()), 1)));
        DisplayList marked = Repaint.of(page.displayList(), c -> Optional.of(markers.getOrDefault(plain(c), REST)));
        List<ColourSpace.Separation> first = markers.values().stream()
                .map(c -> (ColourSpace.Separation) c.space())
                .toList();
        InkMapping mapping = InkMapping.of(first, marked, page.condition());
        InkUse.Sum sum = new InkUse.Sum();
        new Plate(marked, mapping).stream(request, Separations.ROWS_AT_ONCE, cancel, progress, sum::add);
        double[] out = new double[colours.size()];
        for (InkUse use : sum.uses()) {
            for (int i = 0; i < out.length; i++) {
                if (use.ink().name().equals(first.get(i).name())) {
                    out[i] = use.meanTint();
                }
            }
        }
        return out;
    }

    private static ColourSpace.Separation marker(String name) {
        return new ColourSpace.Separation("inventory: " + name, Colour.BLACK.space(), new TintTransform() {
            @Override
            public int outputs() {
                return 1;
            }

            @Override
            public void apply(float[] in, float[] out) {
                out[0] = 1 - in[0];
            }
        });
    }

    /** @return flat colours of vector objects and then those of images, where the page has no object of that colour */
    public List<ColourUse> all() {
        List<ColourUse> out = new ArrayList<>(colours);
        images.stream().flatMap(image -> image.uses().stream()).forEach(use -> {
            if (out.stream().noneMatch(other -> other.rgb() == use.rgb())) {
                out.add(use);
            }
        });
        return List.copyOf(out);
    }

    /**
     * Groups of colours that differ by less than a limit but are not the same, so that a printer would ask which is meant.
     * Tints of one ink are never grouped with each other: they need no further ink.
     *
     * @param de00 largest ΔE00 from the group's first colour, the most seen one
     * @return groups of two colours or more
     */
    public List<List<ColourUse>> nearDuplicates(double de00) {
        return grouped(colours, de00).stream().filter(group -> group.size() > 1).toList();
    }

    /** As {@link #nearDuplicates}, of any colours, and those that stand alone by themselves. */
    static List<List<ColourUse>> grouped(List<ColourUse> colours, double de00) {
        List<List<ColourUse>> out = new ArrayList<>();
        List<ColourUse> left = new ArrayList<>(colours);
        while (!left.isEmpty()) {
            ColourUse first = left.remove(0);
            List<ColourUse> group = new ArrayList<>(List.of(first));
            for (ColourUse other : List.copyOf(left)) {
                if (Cie.deltaE00(first.lab(), other.lab()) <= de00 && !sameInk(first, other)) {
                    group.add(other);
                    left.remove(other);
                }
            }
            out.add(group);
        }
        return out;
    }

    private static boolean sameInk(ColourUse a, ColourUse b) {
        return a.source() instanceof ColourAssignment.InkNamed && a.source().equals(b.source());
    }
}
