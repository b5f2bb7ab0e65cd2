package inkground.substrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A length that grows with a garment: a sum of millimetres and of shares of the measures of its size, written such as
 * {@code 0.5*chest-20}. Immutable.
 *
 * @param constantMm what does not grow
 * @param terms shares of measures
 */
public record MeasureSum(double constantMm, List<Term> terms) {
    private static final Pattern TERM =
            Pattern.compile("([+-]?)(?:(\\d+(?:\\.\\d+)?)(?:\\*([a-zA-Z]\\w*))?|([a-zA-Z]\\w*))");
    private static final int MOST_TERMS = 12;

    /** Copies the list. */
    public MeasureSum {
        terms = List.copyOf(terms);
    }

    /**
     * A share of one measure.
     *
     * @param factor of the measure
     * @param measure its name
     */
    public record Term(double factor, String measure) {}

    /**
     * Reads a sum.
     *
     * @param known names of the measures there are
     * @throws IllegalArgumentException with the reason, for the user
     */
    public static MeasureSum parse(String text, Set<String> known) {
        double constant = 0;
        List<Term> terms = new ArrayList<>();
        Matcher term = TERM.matcher(text);
        int at = 0;
        while (at < text.length()) {
            if (!term.find(at)
                    || term.start() != at
                    || at > 0 && term.group(1).isEmpty()
                    || terms.size() == MOST_TERMS) {
                throw new IllegalArgumentException("'" + text + "' is no sum of lengths");
            }
            double factor = term.group(1).equals("-") ? -1 : 1;
            factor *= term.group(2) == null ? 1 : Double.parseDouble(term.group(2));
            String name = term.group(3) == null ? term.group(4) : term.group(3);
            if (name == null) {
                constant += factor;
            } else if (known.contains(name)) {
                terms.add(new Term(factor, name));
            } else {
                throw new IllegalArgumentException("'" + name + "' is no measure of this cut's sizes, which are "
                        + String.join(", ", known.stream().sorted().toList()));
            }
            at = term.end();
        }
        if (text.isEmpty()) {
            throw new IllegalArgumentException("a length is missing");
        }
        return new MeasureSum(constant, terms);
    }

    /** @return the length at one size, in millimetres */
    public double mm(Map<String, Double> measuresMm) {
        double sum = constantMm;
        for (Term term : terms) {
            sum += term.factor() * measuresMm.get(term.measure());
        }
        return sum;
    }
}
