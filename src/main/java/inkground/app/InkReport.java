package inkground.app;

import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.PlateRequest;
import java.util.List;

/**
 * Which inks a page uses, and how much of them inside its trim.
 *
 * @param page from 1
 * @param trimWidthMm width of the trim box in mm
 * @param trimHeightMm height of the trim box in mm
 * @param inks one per ink, in plane order
 * @param notes what is not exact
 */
public record InkReport(int page, double trimWidthMm, double trimHeightMm, List<InkUse> inks, List<String> notes) {
    /** Fine enough that a hairline counts by its area to a few per cent; coarse enough to be quick. */
    public static final double DPI = 150;

    /** Copies the lists. */
    public InkReport {
        inks = List.copyOf(inks);
        notes = List.copyOf(notes);
    }

    /** Measures a page at {@link #DPI}. */
    public static InkReport of(PageJob page, Cancel cancel, Progress progress) throws Refusal {
        InkUse.Sum sum = new InkUse.Sum();
        var trim = page.info().box(PageBox.TRIM);
        PlateRequest request =
                PlateRequest.of(trim, DPI, true, page.displayList().defaultLayers());
        page.plate().stream(request, Separations.ROWS_AT_ONCE, cancel, progress, sum::add);
        return new InkReport(page.info().number(), trim.widthMm(), trim.heightMm(), sum.uses(), page.notes());
    }
}
