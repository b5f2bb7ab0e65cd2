package inkground.cli;

import inkground.base.Refusal;
import inkground.garment.Form;
import inkground.substrate.Cut;
import inkground.substrate.Substrates;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the cuts of garments. */
@Command(name = "cuts", description = "List the cuts and sizes of garments that artwork can be placed on.")
final class CutsCommand implements Callable<Integer> {
    private final Console console;

    @Option(names = "--json", description = "Write JSON, with the measures and print areas of every size, in mm.")
    private boolean json;

    CutsCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() throws Refusal {
        List<Cut> cuts = Substrates.load().cuts();
        if (json) {
            List<Object> array = new ArrayList<>();
            cuts.forEach(cut -> array.add(asJson(cut)));
            console.json(array);
            return ExitCode.FINE;
        }
        Table table = new Table("id", "name", "sizes", "sides", "print areas at the usual size, mm");
        for (Cut cut : cuts) {
            table.row(
                    cut.id(),
                    cut.name(),
                    cut.sizes().stream().map(Cut.Size::name).collect(Collectors.joining(" ")),
                    cut.faces().stream().map(f -> f.side().word()).collect(Collectors.joining(" ")),
                    cut.faces().stream()
                            .flatMap(f -> areas(cut, f).stream())
                            .distinct()
                            .collect(Collectors.joining(", ")));
        }
        table.lines().forEach(console::say);
        return ExitCode.FINE;
    }

    private static List<String> areas(Cut cut, Cut.Face face) {
        Cut.Size usual = cut.size(cut.usualSize()).orElseThrow();
        return Form.of(cut, usual, face).areas().stream()
                .map(a -> a.name() + " " + Math.round(a.boxMm().width()) + " x "
                        + Math.round(a.boxMm().height()))
                .toList();
    }

    private static Map<String, Object> asJson(Cut cut) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("id", cut.id());
        one.put("name", cut.name());
        one.put("source", cut.source());
        one.put("usualSize", cut.usualSize());
        List<Object> sizes = new ArrayList<>();
        for (Cut.Size size : cut.sizes()) {
            Map<String, Object> s = new LinkedHashMap<>();
            s.put("name", size.name());
            s.put("measuresMm", new java.util.TreeMap<>(size.measuresMm()));
            List<Object> areas = new ArrayList<>();
            for (Cut.Face face : cut.faces()) {
                for (Form.Area area : Form.of(cut, size, face).areas()) {
                    Map<String, Object> a = new LinkedHashMap<>();
                    a.put("side", face.side().word());
                    a.put("name", area.name());
                    a.put("below", face.from());
                    a.put("topMm", area.boxMm().y0());
                    a.put("leftMm", area.boxMm().x0());
                    a.put("widthMm", area.boxMm().width());
                    a.put("heightMm", area.boxMm().height());
                    areas.add(a);
                }
            }
            s.put("printAreas", areas);
            sizes.add(s);
        }
        one.put("sizes", sizes);
        one.put("cautions", cut.cautions());
        one.put("notes", cut.notes());
        return one;
    }
}
