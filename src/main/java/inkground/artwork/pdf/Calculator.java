package inkground.artwork.pdf;

import inkground.artwork.TintTransform;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A PostScript calculator function: ISO 32000-2 §7.10.5. Numbers are doubles, truth values 1 and 0; integer operators
 * take the whole part of reals, which the standard would call an error but files contain. A step that cannot be done (too
 * few operands) ends the program; what is missing then reads as 0.
 */
final class Calculator implements TintTransform {
    private static final int MAX_STACK = 200; // annex C of ISO 32000-1 names 100
    private static final int MAX_DEPTH = 32;
    private static final int MAX_TOKENS = 200_000;

    private final double[] domain;
    private final double[] range;
    private final List<Step> program;

    private Calculator(double[] domain, double[] range, List<Step> program) {
        this.domain = domain;
        this.range = range;
        this.program = program;
    }

    /**
     * @param domain lowest and highest value of each input
     * @param range lowest and highest value of each output
     * @throws IOException if the program is malformed
     */
    static Calculator parse(String source, double[] domain, double[] range) throws IOException {
        String[] tokens = source.replaceAll("%[^\\r\\n]*", " ")
                .replace("{", " { ")
                .replace("}", " } ")
                .replace('\0', ' ')
                .trim()
                .split("\\s+");
        if (tokens.length > MAX_TOKENS || !"{".equals(tokens[0])) {
            throw new IOException("a calculator function that is too long or does not start with a brace");
        }
        int[] at = {1};
        return new Calculator(domain, range, block(tokens, at, 0));
    }

    private static List<Step> block(String[] tokens, int[] at, int depth) throws IOException {
        if (depth > MAX_DEPTH) {
            throw new IOException("a calculator function nested too deeply");
        }
        List<Step> steps = new ArrayList<>();
        List<List<Step>> blocks = new ArrayList<>();
        while (at[0] < tokens.length) {
            String token = tokens[at[0]++];
            switch (token) {
                case "}" -> {
                    return List.copyOf(steps);
                }
                case "{" -> blocks.add(block(tokens, at, depth + 1));
                case "if", "ifelse" -> {
                    int needed = "if".equals(token) ? 1 : 2;
                    if (blocks.size() != needed) {
                        throw new IOException("a calculator function with " + token + " out of place");
                    }
                    steps.add(branch(blocks.get(0), needed == 2 ? blocks.get(1) : List.of()));
                    blocks.clear();
                }
                default -> steps.add(step(token));
            }
        }
        throw new IOException("a calculator function that does not end");
    }

    private static Step branch(List<Step> then, List<Step> otherwise) {
        return stack -> run(stack.pop() != 0 ? then : otherwise, stack);
    }

    private static Step step(String token) throws IOException {
        Step named = STEPS.get(token);
        if (named != null) {
            return named;
        }
        try {
            double number = Double.parseDouble(token);
            return stack -> stack.push(number);
        } catch (NumberFormatException e) {
            throw new IOException("a calculator function with the unknown operator " + token, e);
        }
    }

    private static void run(List<Step> steps, Stack stack) {
        for (Step step : steps) {
            step.run(stack);
        }
    }

    @Override
    public int outputs() {
        return range.length / 2;
    }

    @Override
    public void apply(float[] in, float[] out) {
        Stack stack = new Stack();
        for (int i = 0; i < domain.length / 2; i++) {
            stack.push(Functions.clip(in[i], domain[2 * i], domain[2 * i + 1]));
        }
        try {
            run(program, stack);
        } catch (Unable e) {
            // See the class comment: the results so far are used.
            stack.fill(outputs());
        }
        for (int i = outputs() - 1; i >= 0; i--) {
            double value = stack.size > 0 ? stack.pop() : 0;
            out[i] = Functions.clip(Double.isNaN(value) ? 0 : value, range[2 * i], range[2 * i + 1]);
        }
    }

    private interface Step {
        void run(Stack stack);
    }

    private interface One {
        double of(double a);
    }

    private interface Two {
        double of(double a, double b);
    }

    private static Step one(One f) {
        return s -> s.push(f.of(s.pop()));
    }

    private static Step two(Two f) {
        return s -> {
            double b = s.pop();
            s.push(f.of(s.pop(), b));
        };
    }

    private static double truth(boolean value) {
        return value ? 1 : 0;
    }

    private static double shift(double a, double by) {
        int value = (int) a;
        int bits = (int) by;
        return Math.abs(bits) > 31 ? 0 : bits >= 0 ? value << bits : value >> -bits;
    }

    private static double atan(double num, double den) {
        double degrees = Math.toDegrees(Math.atan2(num, den));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    /** Not of a truth value, or of all bits of any other integer. */
    private static double not(double a) {
        return a == 0 || a == 1 ? 1 - a : ~(int) a;
    }

    private static final Map<String, Step> STEPS = Map.ofEntries(
            Map.entry("abs", one(Math::abs)),
            Map.entry("neg", one(a -> -a)),
            Map.entry("ceiling", one(Math::ceil)),
            Map.entry("floor", one(Math::floor)),
            Map.entry("round", one(a -> Math.floor(a + 0.5))),
            Map.entry("truncate", one(a -> a < 0 ? Math.ceil(a) : Math.floor(a))),
            Map.entry("cvi", one(a -> (int) a)),
            Map.entry("cvr", one(a -> a)),
            Map.entry("sqrt", one(a -> Math.sqrt(Math.max(0, a)))),
            Map.entry("sin", one(a -> Math.sin(Math.toRadians(a)))),
            Map.entry("cos", one(a -> Math.cos(Math.toRadians(a)))),
            Map.entry("ln", one(Math::log)),
            Map.entry("log", one(Math::log10)),
            Map.entry("not", one(Calculator::not)),
            Map.entry("add", two(Double::sum)),
            Map.entry("sub", two((a, b) -> a - b)),
            Map.entry("mul", two((a, b) -> a * b)),
            Map.entry("div", two((a, b) -> b == 0 ? 0 : a / b)),
            Map.entry("idiv", two((a, b) -> (int) b == 0 ? 0 : (int) a / (int) b)),
            Map.entry("mod", two((a, b) -> (int) b == 0 ? 0 : (int) a % (int) b)),
            Map.entry("exp", two(Math::pow)),
            Map.entry("atan", two(Calculator::atan)),
            Map.entry("bitshift", two(Calculator::shift)),
            Map.entry("and", two((a, b) -> (int) a & (int) b)),
            Map.entry("or", two((a, b) -> (int) a | (int) b)),
            Map.entry("xor", two((a, b) -> (int) a ^ (int) b)),
            Map.entry("eq", two((a, b) -> truth(a == b))),
            Map.entry("ne", two((a, b) -> truth(a != b))),
            Map.entry("gt", two((a, b) -> truth(a > b))),
            Map.entry("ge", two((a, b) -> truth(a >= b))),
            Map.entry("lt", two((a, b) -> truth(a < b))),
            Map.entry("le", two((a, b) -> truth(a <= b))),
            Map.entry("true", s -> s.push(1)),
            Map.entry("false", s -> s.push(0)),
            Map.entry("pop", Stack::pop),
            Map.entry("dup", s -> s.copy(1)),
            Map.entry("copy", s -> s.copy((int) s.pop())),
            Map.entry("index", s -> s.index((int) s.pop())),
            Map.entry("exch", s -> s.roll(2, 1)),
            Map.entry("roll", s -> {
                int by = (int) s.pop();
                s.roll((int) s.pop(), by);
            }));

    /** The program cannot go on. */
    private static final class Unable extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Unable() {
            super("stack", null, false, false);
        }
    }

    /** Operands, of bounded number. */
    private static final class Stack {
        private final double[] values = new double[MAX_STACK];
        private int size;

        void push(double value) {
            if (size == MAX_STACK) {
                throw new Unable();
            }
            values[size++] = value;
        }

        double pop() {
            need(1);
            return values[--size];
        }

        void copy(int count) {
            need(count);
            int from = size - count;
            for (int i = 0; i < count; i++) {
                push(values[from + i]);
            }
        }

        void index(int depth) {
            need(depth + 1);
            push(values[size - 1 - depth]);
        }

        void roll(int count, int by) {
            need(count);
            if (count == 0) {
                return;
            }
            double[] turned = new double[count];
            int from = size - count;
            for (int i = 0; i < count; i++) {
                turned[Math.floorMod(i + by, count)] = values[from + i];
            }
            System.arraycopy(turned, 0, values, from, count);
        }

        /** Adds zeros on top until there are {@code count} values. */
        void fill(int count) {
            while (size < count) {
                push(0);
            }
        }

        private void need(int count) {
            if (count < 0 || count > size) {
                throw new Unable();
            }
        }
    }
}
