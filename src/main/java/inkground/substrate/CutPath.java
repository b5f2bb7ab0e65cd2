package inkground.substrate;

import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The right half of a line of a garment, drawn in sums of its measures: {@code M x y}, {@code L x y} and {@code C x1 y1 x2 y2 x
 * y} with blanks between, in millimetres. The centre line is x = 0, y grows down from the point that placements are measured
 * from. The left half is its mirror image. Immutable.
 */
public final class CutPath {
    private static final int MOST_SEGMENTS = 200;
    /** Points as near as this to the centre line lie on it. */
    private static final double ON_CENTRE_MM = 1e-6;

    private final List<Segment> segments;

    /** @param sums of a move or line 2, of a curve 6: x and y in turn */
    private record Segment(List<MeasureSum> sums) {}

    private CutPath(List<Segment> segments) {
        this.segments = List.copyOf(segments);
    }

    /**
     * Reads a path.
     *
     * @param known names of the measures there are
     * @throws IllegalArgumentException with the reason, for the user
     */
    public static CutPath parse(String text, Set<String> known) {
        String[] words = text.strip().split("\\s+");
        List<Segment> segments = new ArrayList<>();
        int at = 0;
        while (at < words.length) {
            String letter = words[at];
            int numbers =
                    switch (letter) {
                        case "M", "L" -> 2;
                        case "C" -> 6;
                        default -> throw new IllegalArgumentException("'" + letter + "' stands where M, L or C is due");
                    };
            if (letter.equals("M") != segments.isEmpty()) {
                throw new IllegalArgumentException("the path must have one M, at its start");
            }
            if (at + numbers >= words.length || segments.size() == MOST_SEGMENTS) {
                throw new IllegalArgumentException("the path breaks off after '" + letter + "'");
            }
            List<MeasureSum> sums = new ArrayList<>();
            for (int i = 1; i <= numbers; i++) {
                sums.add(MeasureSum.parse(words[at + i], known));
            }
            segments.add(new Segment(sums));
            at += numbers + 1;
        }
        if (segments.size() < 2) {
            throw new IllegalArgumentException("the path is a single point");
        }
        return new CutPath(segments);
    }

    /** @return whether both ends of the half lie on the centre line at this size */
    public boolean spansFromCentreToCentre(Map<String, Double> measuresMm) {
        List<double[]> half = half(measuresMm);
        return onCentre(half.get(0)) && onCentre(half.get(half.size() - 1));
    }

    /** @return both halves as closed shapes; one shape where the half starts and ends on the centre line */
    public Outline closed(Map<String, Double> measuresMm) {
        List<double[]> half = half(measuresMm);
        Outline.Builder out = new Outline.Builder();
        if (onCentre(half.get(0)) && onCentre(half.get(half.size() - 1))) {
            append(out, half, true);
            append(out, mirrored(half), false);
            return out.close().build();
        }
        append(out, half, true);
        out.close();
        append(out, mirrored(half), true);
        return out.close().build();
    }

    /** @return both halves as lines; one line where the half starts on the centre line */
    public Outline open(Map<String, Double> measuresMm) {
        List<double[]> half = half(measuresMm);
        Outline.Builder out = new Outline.Builder();
        append(out, mirrored(half), true);
        append(out, half, !onCentre(half.get(0)));
        return out.build();
    }

    /** @return the right half alone, as a line */
    public Outline rightHalf(Map<String, Double> measuresMm) {
        Outline.Builder out = new Outline.Builder();
        append(out, half(measuresMm), true);
        return out.build();
    }

    private List<double[]> half(Map<String, Double> measuresMm) {
        return segments.stream()
                .map(s ->
                        s.sums().stream().mapToDouble(sum -> sum.mm(measuresMm)).toArray())
                .toList();
    }

    private static boolean onCentre(double[] segment) {
        return Math.abs(segment[segment.length - 2]) < ON_CENTRE_MM;
    }

    /** The mirror image, drawn from its end to its start. */
    private static List<double[]> mirrored(List<double[]> half) {
        List<double[]> out = new ArrayList<>();
        double[] last = half.get(half.size() - 1);
        out.add(new double[] {-last[last.length - 2], last[last.length - 1]});
        for (int i = half.size() - 1; i > 0; i--) {
            double[] segment = half.get(i);
            double[] before = half.get(i - 1);
            double x = -before[before.length - 2];
            double y = before[before.length - 1];
            out.add(
                    segment.length == 2
                            ? new double[] {x, y}
                            : new double[] {-segment[2], segment[3], -segment[0], segment[1], x, y});
        }
        return Collections.unmodifiableList(out);
    }

    private static void append(Outline.Builder out, List<double[]> path, boolean move) {
        for (int i = 0; i < path.size(); i++) {
            double[] s = path.get(i);
            if (i == 0 && move) {
                out.move(s[0], s[1]);
            } else if (i > 0 && s.length == 2) {
                out.line(s[0], s[1]);
            } else if (i > 0) {
                out.curve(s[0], s[1], s[2], s[3], s[4], s[5]);
            }
        }
    }
}
