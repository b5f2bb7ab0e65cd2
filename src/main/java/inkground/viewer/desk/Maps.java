package inkground.viewer.desk;

import inkground.app.PageJob;
import inkground.appearance.BareMap;
import inkground.appearance.ColourMap;
import inkground.appearance.DifferenceMap;
import inkground.appearance.ProofMap;
import inkground.appearance.RegisterMap;
import inkground.appearance.StackModel;
import inkground.appearance.TotalInkMap;
import inkground.appearance.VanishMap;
import inkground.findings.ThinFeatures;
import inkground.findings.ThinMap;
import inkground.plate.PlaneSource;
import inkground.viewer.state.MapChoice;
import inkground.viewer.state.MapLimits;

/** The maps that the window offers. */
final class Maps {
    /** The angle between one ink's way off and the next one's: all differ, whatever their number. */
    private static final double GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

    private Maps() {}

    /** How far each ink lies off, in mm, in plane order. */
    record Play(double[] dxMm, double[] dyMm) {}

    /** @return where the inks lie in one phase of their play: each goes round at the tolerance, none with another */
    static Play play(MapChoice choice, int inks) {
        double[] dx = new double[inks];
        double[] dy = new double[inks];
        for (int i = 0; i < inks; i++) {
            double angle = i * GOLDEN_ANGLE + 2 * Math.PI * choice.phase() / MapChoice.PHASES;
            dx[i] = choice.limits().registerMm() * Math.cos(angle);
            dy[i] = choice.limits().registerMm() * Math.sin(angle);
        }
        return new Play(dx, dy);
    }

    /** @return the least widths that hold */
    static ThinFeatures.Limits widths(MapLimits limits) {
        return new ThinFeatures.Limits(limits.minLineMm(), limits.minGapMm());
    }

    /** @return the map of a page on a stack */
    static ProofMap of(MapChoice choice, PageJob page, StackModel model) {
        PlaneSource source = PlaneSource.of(page.plate());
        MapLimits limits = choice.limits();
        return switch (choice.kind()) {
            case BARE -> new BareMap(page.inks());
            case VANISH -> new VanishMap(source, model);
            case REACH -> ColourMap.reach(model, limits.totalInkPercent() / 100, limits.de00());
            case SHIFT -> ColourMap.shift(model, limits.de00());
            case SCREEN -> ColourMap.notDisplayed(model, limits.de00());
            case OVERPRINT -> DifferenceMap.overprint(source, model, limits.de00());
            case CHANGES -> throw new IllegalArgumentException("changes have another page to look at");
            case TOTAL_INK -> new TotalInkMap(page.inks(), limits.totalInkPercent());
            case THIN -> new ThinMap(source, widths(limits));
            case REGISTER -> {
                Play play = play(choice, page.inks().size());
                yield new RegisterMap(source, play.dxMm(), play.dyMm());
            }
        };
    }
}
