package inkground.substrate;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The shape of a garment: how it is cut and sewn, in several sizes, apart from its colour. Drawn for this project; the measures
 * of a maker's own size chart win.
 *
 * @param id short and unique, of lower-case letters, digits and hyphens
 * @param name for the user
 * @param cloth kinds of surface it is usually made of
 * @param source where its measures come from
 * @param sizes smallest first, all with the same measures
 * @param usualSize name of the size shown first
 * @param faces front and, where there is one, back
 * @param seed of its folds
 * @param cautions for the health of printer and wearer
 * @param notes plain remarks for the user
 * @param order place in lists; equal places are sorted by name
 */
public record Cut(
        String id,
        String name,
        Set<Texture.Kind> cloth,
        String source,
        List<Size> sizes,
        String usualSize,
        List<Face> faces,
        long seed,
        List<String> cautions,
        List<String> notes,
        int order) {
    /** Which face of a garment. */
    public enum Side {
        /** Worn in front. */
        FRONT("front"),
        /** Worn behind. */
        BACK("back");

        private final String word;

        Side(String word) {
            this.word = word;
        }

        /** @return its word for files and the user */
        public String word() {
            return word;
        }
    }

    /** Copies the collections and checks that the usual size and the faces are there. */
    public Cut {
        cloth = Set.copyOf(cloth);
        sizes = List.copyOf(sizes);
        faces = List.copyOf(faces);
        cautions = List.copyOf(cautions);
        notes = List.copyOf(notes);
        String wanted = usualSize;
        if (faces.isEmpty() || sizes.stream().noneMatch(s -> s.name().equals(wanted))) {
            throw new IllegalArgumentException("a cut needs a face, and its usual size among its sizes");
        }
    }

    /**
     * One size.
     *
     * @param name such as M
     * @param measuresMm by name, in millimetres, of the garment laid flat
     */
    public record Size(String name, Map<String, Double> measuresMm) {
        /** Copies the map. */
        public Size {
            measuresMm = Map.copyOf(measuresMm);
        }
    }

    /**
     * One face, laid flat. All paths have the centre line at x = 0 and their origin at the point that placements are measured
     * from.
     *
     * @param side which
     * @param from what that point is, such as "seam of the collar"
     * @param usualBelowMm usual distance from there to the top of a print
     * @param outline of the cloth that can take print; the half starts and ends on the centre line
     * @param parts shapes under or over that cloth
     * @param lines seams and the like
     * @param folds soft folds
     * @param areas that can be printed, at least one
     */
    public record Face(
            Side side,
            String from,
            MeasureSum usualBelowMm,
            CutPath outline,
            List<Part> parts,
            List<Line> lines,
            List<Fold> folds,
            List<Area> areas) {
        /** Copies the lists. */
        public Face {
            parts = List.copyOf(parts);
            lines = List.copyOf(lines);
            folds = List.copyOf(folds);
            areas = List.copyOf(areas);
        }
    }

    /**
     * A shape besides the printable cloth.
     *
     * @param name for the user
     * @param path its edge
     * @param shade factor of its light, 0.2 to 1.2
     * @param lies where
     */
    public record Part(String name, CutPath path, double shade, Lies lies) {
        /** Where a part lies. */
        public enum Lies {
            /** Behind the cloth: the inside of the back at the neck. */
            UNDER,
            /** Sewn on and printed like the cloth: a pocket. */
            ON,
            /** Over it, hiding print: a hood, a collar. */
            OVER
        }
    }

    /**
     * A line.
     *
     * @param name for the user, such as "hem"
     * @param kind what it is
     * @param path its course
     */
    public record Line(String name, Kind kind, CutPath path) {
        /** What a line is. */
        public enum Kind {
            /** Two pieces sewn together: a ridge that a print should not cross. */
            SEAM,
            /** A row of stitches, as of a hem. */
            STITCH,
            /** An edge of cloth, as of a pocket. */
            EDGE,
            /** A cord. */
            CORD
        }
    }

    /**
     * A soft fold: a ridge along a line. The two halves of a garment fold alike but not the same.
     *
     * @param path its course
     * @param widthMm across, 5 to 200
     * @param heightMm 0 to 20
     */
    public record Fold(CutPath path, double widthMm, double heightMm) {}

    /**
     * An area that can be printed.
     *
     * @param name for the user, such as "chest"
     * @param belowMm its top, from where placements are measured
     * @param centreMm its middle, right of the centre line as seen
     * @param widthMm width
     * @param heightMm height
     */
    public record Area(String name, MeasureSum belowMm, MeasureSum centreMm, MeasureSum widthMm, MeasureSum heightMm) {}

    /** @return the size of this name, if there is one */
    public Optional<Size> size(String wanted) {
        return sizes.stream().filter(s -> s.name().equals(wanted)).findFirst();
    }

    /** @return the face of this side, if there is one */
    public Optional<Face> face(Side side) {
        return faces.stream().filter(f -> f.side() == side).findFirst();
    }
}
