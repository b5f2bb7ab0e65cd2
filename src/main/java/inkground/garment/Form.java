package inkground.garment;

import inkground.geometry.Box;
import inkground.geometry.Outline;
import inkground.substrate.Cut;
import inkground.substrate.Texture;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One face of one cut in one size, laid flat. All lengths are millimetres; the origin is the point that placements are measured
 * from, x grows to the right as seen and y down. Immutable.
 *
 * @param cut its cut
 * @param size its size
 * @param face its face
 * @param outline of the cloth that can take print
 * @param parts besides it, in the order in which they are drawn
 * @param lines seams and the like
 * @param areas that can be printed, at least one
 * @param boundsMm box around everything
 */
public record Form(
        Cut cut,
        Cut.Size size,
        Cut.Face face,
        Outline outline,
        List<Part> parts,
        List<Line> lines,
        List<Area> areas,
        Box boundsMm) {
    /** A shape besides the printable cloth; see {@link Cut.Part}. */
    public record Part(String name, Outline outline, double shade, Cut.Part.Lies lies) {}

    /** A line; see {@link Cut.Line}. */
    public record Line(String name, Cut.Line.Kind kind, Outline outline) {}

    /** An area that can be printed. */
    public record Area(String name, Box boxMm) {}

    /** Copies the lists. */
    public Form {
        parts = List.copyOf(parts);
        lines = List.copyOf(lines);
        areas = List.copyOf(areas);
    }

    /** @return the form of a face at a size */
    public static Form of(Cut cut, Cut.Size size, Cut.Face face) {
        Map<String, Double> mm = size.measuresMm();
        Outline outline = face.outline().closed(mm);
        List<Part> parts = face.parts().stream()
                .map(p -> new Part(p.name(), p.path().closed(mm), p.shade(), p.lies()))
                .toList();
        List<Line> lines = face.lines().stream()
                .map(l -> new Line(l.name(), l.kind(), l.path().open(mm)))
                .toList();
        List<Area> areas =
                face.areas().stream().map(a -> new Area(a.name(), box(a, mm))).toList();
        Box bounds = outline.bounds();
        for (Part part : parts) {
            bounds = bounds.union(part.outline().bounds());
        }
        return new Form(cut, size, face, outline, parts, lines, areas, bounds);
    }

    private static Box box(Cut.Area area, Map<String, Double> mm) {
        double width = area.widthMm().mm(mm);
        double left = area.centreMm().mm(mm) - width / 2;
        double top = area.belowMm().mm(mm);
        return new Box(left, top, left + width, top + area.heightMm().mm(mm));
    }

    /**
     * The form that a placement means.
     *
     * @param cuts to choose from, in order
     * @param cloth kind of surface of the substrate
     * @return empty where there are no cuts
     */
    public static Optional<Form> of(Placement placement, List<Cut> cuts, Texture.Kind cloth) {
        Optional<Cut> named = placement
                .cut()
                .flatMap(id -> cuts.stream().filter(c -> c.id().equals(id)).findFirst());
        return named.or(() -> usual(cuts, cloth)).map(cut -> {
            Cut.Size size = placement.size().flatMap(cut::size).orElseGet(() -> cut.size(cut.usualSize())
                    .orElseThrow());
            Cut.Face face = cut.face(placement.side()).orElse(cut.faces().get(0));
            return of(cut, size, face);
        });
    }

    /** @return the first cut that is made of this kind of cloth, else the first of all */
    public static Optional<Cut> usual(List<Cut> cuts, Texture.Kind cloth) {
        return cuts.stream().filter(c -> c.cloth().contains(cloth)).findFirst().or(() -> cuts.stream()
                .findFirst());
    }

    /** @return usual distance from the origin down to the top of a print, in mm */
    public double usualBelowMm() {
        return face.usualBelowMm().mm(size.measuresMm());
    }

    /** @return cut, size and side, for the user */
    public String words() {
        return cut.name() + " " + size.name() + ", " + face.side().word();
    }
}
