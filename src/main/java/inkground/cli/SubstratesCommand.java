package inkground.cli;

import inkground.app.OwnSubstrates;
import inkground.base.Refusal;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists papers and garments: the program's, then the user's own. */
@Command(name = "substrates", description = "List the papers and garments that proofs can be made on, your own last.")
final class SubstratesCommand implements Callable<Integer> {
    private final Console console;

    @Option(names = "--json", description = "Write JSON.")
    private boolean json;

    SubstratesCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        List<Substrate> all = new ArrayList<>(Substrates.load().all());
        OwnSubstrates.Shelf own = OwnSubstrates.ofUser()
                .readBeside(all.stream().map(Substrate::id).collect(Collectors.toSet()));
        all.addAll(own.substrates());
        own.faults().forEach(console::tell);
        if (json) {
            List<Object> array = new ArrayList<>();
            all.forEach(
                    substrate -> array.add(asJson(substrate, own.substrates().contains(substrate))));
            console.json(array);
            return ExitCode.FINE;
        }
        Table table = new Table("id", "kind", "name", "L*", "a*", "b*", "source");
        for (Substrate s : all) {
            table.row(
                    s.id(),
                    kind(s),
                    s.name(),
                    decimal(s.lab().L()),
                    decimal(s.lab().a()),
                    decimal(s.lab().b()),
                    s.source());
        }
        table.lines().forEach(console::say);
        return ExitCode.FINE;
    }

    private static Map<String, Object> asJson(Substrate s, boolean own) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("id", s.id());
        one.put("name", s.name());
        one.put("kind", kind(s));
        one.put("own", own);
        one.put("lab", List.of(s.lab().L(), s.lab().a(), s.lab().b()));
        one.put("source", s.source());
        one.put("hidingPower", s.hidingPower());
        one.put("underbaseAdvised", s.underbaseAdvised());
        one.put("notes", s.notes());
        return one;
    }

    private static String kind(Substrate s) {
        return s.kind().name().toLowerCase(Locale.ROOT);
    }

    private static String decimal(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
