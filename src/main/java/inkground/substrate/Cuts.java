package inkground.substrate;

import inkground.base.Refusal;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Reads one file of {@code cuts/*.json}. Every length may be a number in millimetres or a {@link MeasureSum} in double quotes;
 * each path is the right half of a {@link CutPath}.
 */
final class Cuts {
    private static final int MOST = 60;

    private final JsonFields fields;
    private List<Cut.Size> sizes;
    private Set<String> measures;

    private Cuts(JsonFields fields) {
        this.fields = fields;
    }

    /** @return the cut; the caller ends the fields */
    static Cut read(String id, JsonFields fields) throws Refusal {
        return new Cuts(fields).read(id);
    }

    private Cut read(String id) throws Refusal {
        String name = fields.text("name");
        Set<Texture.Kind> cloth = fields.words("cloth", Texture.Kind.class);
        sizes = sizes();
        measures = sizes.get(0).measuresMm().keySet();
        String usual = fields.text("usualSize");
        if (sizes.stream().noneMatch(s -> s.name().equals(usual))) {
            throw fields.bad("usualSize", "there is no size '" + usual + "'", "Name one of the sizes");
        }
        return new Cut(
                id,
                name,
                cloth,
                fields.text("source"),
                sizes,
                usual,
                faces(),
                fields.whole("seed", 0, Integer.MAX_VALUE),
                fields.texts("cautions"),
                fields.texts("notes"),
                fields.whole("order", 0, 1_000_000));
    }

    private List<Cut.Size> sizes() throws Refusal {
        List<Cut.Size> out = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (JsonFields one : fields.objects("sizes", 1, MOST)) {
            Cut.Size size = new Cut.Size(one.text("name"), one.lengths("measures", 0, 5000));
            if (!names.add(size.name())) {
                throw one.bad("name", "'" + size.name() + "' is the name of two sizes", "Give one of them another");
            }
            if (!out.isEmpty()
                    && !out.get(0)
                            .measuresMm()
                            .keySet()
                            .equals(size.measuresMm().keySet())) {
                throw one.bad(
                        "measures",
                        "the measures are not those of the first size",
                        "Give "
                                + String.join(
                                        ", ",
                                        out.get(0).measuresMm().keySet().stream()
                                                .sorted()
                                                .toList()));
            }
            one.end();
            out.add(size);
        }
        return out;
    }

    private List<Cut.Face> faces() throws Refusal {
        Map<Cut.Side, Cut.Face> out = new HashMap<>();
        List<Cut.Face> faces = new ArrayList<>();
        for (JsonFields one : fields.objects("faces", 1, Cut.Side.values().length)) {
            Cut.Face face = face(one);
            if (out.put(face.side(), face) != null) {
                throw one.bad("side", "there are two of this side", "Remove one or correct its side");
            }
            one.end();
            faces.add(face);
        }
        return faces;
    }

    private Cut.Face face(JsonFields f) throws Refusal {
        Cut.Side side = f.word("side", Cut.Side.class);
        CutPath outline = path(f, "outline");
        if (sizes.stream().anyMatch(s -> !outline.spansFromCentreToCentre(s.measuresMm()))) {
            throw f.bad("outline", "it does not start and end on the centre line", "Let its first and last x be 0");
        }
        List<Cut.Part> parts = new ArrayList<>();
        for (JsonFields part : f.objects("parts", 0, MOST)) {
            parts.add(new Cut.Part(
                    part.text("name"),
                    path(part, "path"),
                    part.number("shade", 0.2, 1.2),
                    part.word("lies", Cut.Part.Lies.class)));
            part.end();
        }
        List<Cut.Line> lines = new ArrayList<>();
        for (JsonFields line : f.objects("lines", 0, MOST)) {
            lines.add(new Cut.Line(line.text("name"), line.word("kind", Cut.Line.Kind.class), path(line, "path")));
            line.end();
        }
        List<Cut.Fold> folds = new ArrayList<>();
        for (JsonFields fold : f.objects("folds", 0, MOST)) {
            folds.add(new Cut.Fold(path(fold, "path"), fold.number("widthMm", 5, 200), fold.number("heightMm", 0, 20)));
            fold.end();
        }
        return new Cut.Face(side, f.text("from"), sum(f, "usualBelowMm", 0), outline, parts, lines, folds, areas(f));
    }

    private List<Cut.Area> areas(JsonFields f) throws Refusal {
        List<Cut.Area> areas = new ArrayList<>();
        for (JsonFields area : f.objects("printAreas", 1, MOST)) {
            areas.add(new Cut.Area(
                    area.text("name"),
                    sum(area, "belowMm", -5000),
                    sum(area, "centreMm", -5000),
                    sum(area, "widthMm", 1),
                    sum(area, "heightMm", 1)));
            area.end();
        }
        return areas;
    }

    private MeasureSum sum(JsonFields f, String name, double least) throws Refusal {
        MeasureSum sum = f.parsed(
                name,
                text -> MeasureSum.parse(text, measures),
                "Write a number, or a sum such as \"0.5*chest-20\" of numbers and measures");
        for (Cut.Size size : sizes) {
            double mm = sum.mm(size.measuresMm());
            if (!(mm >= least && mm <= 5000)) {
                throw f.bad(
                        name,
                        "at size " + size.name() + " it is " + Math.round(mm) + " mm",
                        "Let it be from " + Math.round(least) + " to 5000 mm");
            }
        }
        return sum;
    }

    private CutPath path(JsonFields f, String name) throws Refusal {
        CutPath path = f.parsed(
                name,
                text -> CutPath.parse(text, measures),
                "Write M x y, L x y and C x1 y1 x2 y2 x y with blanks between");
        for (Cut.Size size : sizes) {
            Outline outline = path.closed(size.measuresMm());
            if (outline.bounds().width() > 10_000 || outline.bounds().height() > 10_000) {
                throw f.bad(name, "at size " + size.name() + " it is larger than 10 m", "Correct its numbers");
            }
        }
        return path;
    }
}
