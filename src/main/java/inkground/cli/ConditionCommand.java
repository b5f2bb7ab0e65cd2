package inkground.cli;

import inkground.app.ConditionReport;
import inkground.base.Refusal;
import inkground.colour.Characterisation.Repeats;
import inkground.colour.Lab;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tells what a characterisation file or output profile says. */
@Command(
        name = "condition",
        description = {
            "Read a characterisation file (CGATS.17, ISO 28178) or a CMYK output profile: its paper, its primaries, its tone"
                    + " value increase, and how well the ink model built from primaries and single-ink ramps alone"
                    + " predicts all other patches (CIEDE2000)."
        })
final class ConditionCommand implements Callable<Integer> {
    // Steps shown to a person; JSON holds all.
    private static final double[] SHOWN = {0.2, 0.4, 0.5, 0.7, 0.8};
    private static final double SAME_TINT = 0.002;
    // Beyond four inks the primaries, and those that are missing, fill screens; JSON holds all.
    private static final int MOST_LINES = 16;

    private final Console console;

    @Parameters(paramLabel = "FILE", description = "The file, or the name of a bundled condition: FOGRA39L, TR006.")
    private String file;

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    ConditionCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        ConditionReport report = ConditionReport.of(file);
        if (json) {
            console.json(asJson(report));
        } else {
            asWords(report);
        }
        return ExitCode.FINE;
    }

    private void asWords(ConditionReport r) {
        console.say(r.name() + ": " + r.source());
        console.say(r.patchesRead() + " distinct patches of " + String.join(", ", r.inks()));
        if (r.repeats().patches() > 0) {
            console.say(words(r.repeats()));
        }
        r.gaps().stream().limit(MOST_LINES).forEach(console::say);
        if (r.gaps().size() > MOST_LINES) {
            console.say((r.gaps().size() - MOST_LINES) + " more such gaps; --json tells all");
        }
        Table primaries = new Table("printed", "L*", "a*", "b*");
        primaryRow(primaries, "paper", r.paper());
        r.primaries().stream()
                .limit(MOST_LINES)
                .forEach(p -> primaryRow(primaries, String.join(" + ", p.inks()), p.lab()));
        primaries.lines().forEach(console::say);
        console.say("tone value increase (by area, in per cent)");
        ramps(r).lines().forEach(console::say);
        if (r.fit().patches() == 0) {
            console.say("no other patches to try the ink model on");
            return;
        }
        console.say(String.format(
                Locale.ROOT,
                "model from primaries and ramps alone, tried on %d other patches (dE00): mean %.2f, 95 of 100 within %.2f,"
                        + " largest %.2f; n %.2f",
                r.fit().patches(),
                r.fit().meanDe00(),
                r.fit().p95De00(),
                r.fit().maxDe00(),
                r.n()));
    }

    private static String words(Repeats repeats) {
        String many = repeats.patches() + " of them were measured more than once, " + repeats.measurements()
                + " times in all, and are averaged; ";
        return repeats.maxDe00() == 0
                ? many + "the measurements of a patch are all equal"
                : String.format(
                        Locale.ROOT,
                        "%sa measurement differs from its mean by dE00 %.2f on average, at most by %.2f (%s)",
                        many,
                        repeats.meanDe00(),
                        repeats.maxDe00(),
                        repeats.farthest());
    }

    private static void primaryRow(Table table, String name, Lab lab) {
        table.row(
                name,
                String.format(Locale.ROOT, "%.1f", lab.L()),
                String.format(Locale.ROOT, "%.1f", lab.a()),
                String.format(Locale.ROOT, "%.1f", lab.b()));
    }

    private static Table ramps(ConditionReport r) {
        Table table = new Table("ink", "at 20", "at 40", "at 50", "at 70", "at 80");
        for (ConditionReport.Ramp ramp : r.ramps()) {
            String[] cells = new String[SHOWN.length + 1];
            cells[0] = ramp.ink();
            for (int i = 0; i < SHOWN.length; i++) {
                double tint = SHOWN[i];
                cells[i + 1] = ramp.steps().stream()
                        .filter(s -> Math.abs(s.tint() - tint) < SAME_TINT)
                        .findFirst()
                        .map(s -> String.format(Locale.ROOT, "%.1f", 100 * s.increase()))
                        .orElse("-");
            }
            table.row(cells);
        }
        return table;
    }

    private static Map<String, Object> asJson(ConditionReport r) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("name", r.name());
        all.put("source", r.source());
        all.put("inks", r.inks());
        all.put("patchesRead", r.patchesRead());
        all.put("measurements", r.measurements());
        all.put("repeats", repeats(r.repeats()));
        all.put("gaps", r.gaps());
        all.put("patches", r.fit().patches());
        all.put("meanDe00", r.fit().meanDe00());
        all.put("p95De00", r.fit().p95De00());
        all.put("maxDe00", r.fit().maxDe00());
        all.put("n", r.n());
        all.put("nOfBands", r.exponents());
        all.put("paper", lab(r.paper()));
        List<Object> primaries = new ArrayList<>();
        for (ConditionReport.Primary p : r.primaries()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("inks", p.inks());
            one.put("lab", lab(p.lab()));
            one.put("measured", p.measured());
            primaries.add(one);
        }
        all.put("primaries", primaries);
        List<Object> ramps = new ArrayList<>();
        for (ConditionReport.Ramp ramp : r.ramps()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("ink", ramp.ink());
            List<Object> steps = new ArrayList<>();
            for (ConditionReport.Step s : ramp.steps()) {
                Map<String, Object> step = new LinkedHashMap<>();
                step.put("tint", s.tint());
                step.put("toneValueIncrease", s.increase());
                step.put("spotToneValue", s.spotToneValue());
                steps.add(step);
            }
            one.put("steps", steps);
            ramps.add(one);
        }
        all.put("toneValues", ramps);
        return all;
    }

    private static Map<String, Object> repeats(Repeats repeats) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("patches", repeats.patches());
        out.put("measurements", repeats.measurements());
        out.put("meanDe00", repeats.meanDe00());
        out.put("maxDe00", repeats.maxDe00());
        out.put("farthest", repeats.farthest());
        return out;
    }

    private static List<Double> lab(Lab lab) {
        return List.of(lab.L(), lab.a(), lab.b());
    }
}
