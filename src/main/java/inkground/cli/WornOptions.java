package inkground.cli;

import inkground.app.PageJob;
import inkground.app.WornProofs;
import inkground.appearance.Stack;
import inkground.base.Refusal;
import inkground.garment.Form;
import inkground.garment.Placement;
import inkground.substrate.Cut;
import inkground.substrate.Library;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Where a proof lays the artwork on which garment. */
final class WornOptions {
    @Option(
            names = "--worn",
            paramLabel = "CUT[:SIZE[:SIDE]]",
            description =
                    "Show the artwork on a garment: a cut, its size, and front or back; 'inkground cuts' lists them.")
    private String worn;

    @Option(
            names = "--below-collar",
            paramLabel = "MM",
            description =
                    "From the seam of the collar down to the artwork's top. Default: as kept in --assign, else usual for the cut.")
    private Double belowMm;

    @Option(
            names = "--off-centre",
            paramLabel = "MM",
            description =
                    "From the centre line to the artwork's middle, to the right as seen. Default: as kept, else 0.")
    private Double offCentreMm;

    @Option(
            names = "--print-width",
            paramLabel = "MM",
            description = "Width of the artwork as printed. Default: as kept, else its own.")
    private Double widthMm;

    @Option(
            names = "--measure-to",
            paramLabel = "EDGE",
            description =
                    "What counts as the artwork's edge: trim, or ink for the box around all ink. Default: as kept, else trim.")
    private String measured;

    @Option(names = "--no-folds", description = "Show the garment flat, without grain of the fabric and folds.")
    private boolean flat;

    private Form form;
    private Placement placement;

    /** @return whether the artwork is to be shown on a garment */
    boolean chosen() {
        return worn != null;
    }

    /**
     * Makes sense of the options.
     *
     * @param kept where the artwork lies, but for what the options say
     * @throws ParameterException if there is no such garment, or it is to be made of paper
     */
    void check(Substrate on, Placement kept, CommandSpec spec) throws Refusal {
        if (worn == null) {
            return;
        }
        if (on.kind() != Substrate.Kind.GARMENT) {
            throw new ParameterException(
                    spec.commandLine(), "'" + on.id() + "' is paper, which is not worn; name a garment with --on");
        }
        Library library = Substrates.load();
        String[] parts = worn.split(":", -1);
        Cut cut = library.cutById(parts[0])
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(), "there is no cut '" + parts[0] + "'; 'inkground cuts' lists them"));
        String sizeName = parts.length > 1 && !parts[1].isEmpty() ? parts[1] : sizeKept(cut, kept);
        Cut.Size size = cut.size(sizeName)
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        "'" + cut.id() + "' has no size '" + sizeName + "'; it has "
                                + cut.sizes().stream().map(Cut.Size::name).collect(Collectors.joining(", "))));
        Cut.Face face = cut.face(side(parts, cut, kept, spec))
                .orElseThrow(() -> new ParameterException(spec.commandLine(), "'" + cut.id() + "' has no such side"));
        form = Form.of(cut, size, face);
        try {
            placement = new Placement(
                    Optional.of(cut.id()),
                    Optional.of(size.name()),
                    face.side(),
                    Optional.ofNullable(belowMm).or(kept::belowMm),
                    offCentreMm == null ? kept.offCentreMm() : offCentreMm,
                    Optional.ofNullable(widthMm).or(kept::widthMm),
                    measured == null ? kept.measured() : measure(spec));
        } catch (IllegalArgumentException e) {
            throw new ParameterException(
                    spec.commandLine(), "out of range: " + e.getMessage() + "; widths go from 5 to 2000 mm", e);
        }
    }

    /** The size that was kept says nothing about another cut. */
    private static String sizeKept(Cut cut, Placement kept) {
        boolean same = kept.cut().map(cut.id()::equals).orElse(true);
        return kept.size().filter(name -> same && cut.size(name).isPresent()).orElse(cut.usualSize());
    }

    private static Cut.Side side(String[] parts, Cut cut, Placement kept, CommandSpec spec) {
        if (parts.length > 3) {
            throw new ParameterException(spec.commandLine(), "--worn takes CUT, CUT:SIZE or CUT:SIZE:SIDE");
        }
        if (parts.length < 3) {
            return cut.face(kept.side()).orElse(cut.faces().get(0)).side();
        }
        String word = parts[2];
        return Arrays.stream(Cut.Side.values())
                .filter(s -> s.word().equals(word))
                .findFirst()
                .orElseThrow(() ->
                        new ParameterException(spec.commandLine(), "'" + word + "' is no side; use front or back"));
    }

    private Placement.Measured measure(CommandSpec spec) {
        return Arrays.stream(Placement.Measured.values())
                .filter(m -> m.word().equals(measured))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(), "'" + measured + "' is no edge of the artwork; use trim or ink"));
    }

    /** Writes the proof and says where the artwork lies. */
    void write(PageJob page, Stack stack, Double dpi, Set<Integer> layersOn, Path out, boolean replace, Console console)
            throws Refusal {
        WornProofs.Result result = WornProofs.write(
                new WornProofs.Order(
                        page,
                        stack,
                        placement,
                        form,
                        !flat,
                        dpi == null ? WornProofs.USUAL_DPI : dpi,
                        true,
                        layersOn,
                        out,
                        replace),
                console.cancel(),
                console.progress());
        console.say(result.file() + ": " + result.widthPx() + " x " + result.heightPx() + " px, " + form.words() + ".");
        result.caption().stream().limit(3).forEach(console::say);
        form.cut().cautions().forEach(caution -> console.say("caution: " + caution));
    }
}
