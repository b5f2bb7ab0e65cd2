package inkground.app;

import inkground.appearance.GamutSurvey;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrate;

/**
 * How far the colours that a page asks for are from what its inks give on a substrate, and the print from what a screen shows.
 *
 * @param on the substrate
 * @param limitDe00 difference that is let pass
 * @param cm2PerPixel area of one counted pixel
 * @param found what was counted inside the trim
 */
public record GamutReport(Substrate on, double limitDe00, double cm2PerPixel, GamutSurvey.Found found) {
    /** Difference that is let pass by custom: seen side by side, hardly noticed apart. Common practice, no source. */
    public static final double USUAL_DE00 = 3;
    /** Most ink on one spot by custom, 1 for one solid. */
    public static final double USUAL_TOTAL_INK = 3;

    /**
     * Measures a page at {@link InkReport#DPI}, with its default layers.
     *
     * @param stack the page's inks on the substrate
     */
    public static GamutReport of(PageJob page, Stack stack, double limitDe00, Cancel cancel, Progress progress)
            throws Refusal {
        StackModel model = new StackModel(stack);
        GamutSurvey survey = new GamutSurvey(model, USUAL_TOTAL_INK, limitDe00);
        PlateRequest request = PlateRequest.of(
                page.info().box(PageBox.TRIM),
                InkReport.DPI,
                true,
                page.displayList().defaultLayers());
        page.plate().stream(request, Separations.ROWS_AT_ONCE, cancel, progress, planes -> survey.add(planes, cancel));
        double mmPerPx = Box.MM_PER_PT / request.pxPerPt();
        return new GamutReport(stack.substrate(), limitDe00, mmPerPx * mmPerPx / 100, survey.found(cancel));
    }

    /** @return area of so many pixels in cm² */
    public double cm2(double pixels) {
        return pixels * cm2PerPixel;
    }

    /** @return share of so many pixels in the trim, 0 to 1 */
    public double share(double pixels) {
        return found.pixels() == 0 ? 0 : pixels / found.pixels();
    }
}
