package inkground.viewer.desk;

import inkground.app.PageJob;
import inkground.appearance.BareMap;
import inkground.appearance.ColourMap;
import inkground.appearance.ProofMap;
import inkground.appearance.StackModel;
import inkground.appearance.TotalInkMap;
import inkground.appearance.VanishMap;
import inkground.plate.PlaneSource;
import inkground.viewer.state.MapChoice;

/** The maps that the window offers. */
final class Maps {
    private Maps() {}

    /** @return the map of a page on a stack */
    static ProofMap of(MapChoice choice, PageJob page, StackModel model) {
        return switch (choice.kind()) {
            case BARE -> new BareMap(page.inks());
            case VANISH -> new VanishMap(PlaneSource.of(page.plate()), model);
            case REACH -> ColourMap.reach(model, choice.totalInkPercent() / 100, choice.limitDe00());
            case SHIFT -> ColourMap.shift(model, choice.limitDe00());
            case SCREEN -> ColourMap.notDisplayed(model, choice.limitDe00());
            case TOTAL_INK -> new TotalInkMap(page.inks(), choice.totalInkPercent());
        };
    }
}
