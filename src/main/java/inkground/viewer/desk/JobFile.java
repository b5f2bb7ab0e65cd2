package inkground.viewer.desk;

import inkground.app.Approvals;
import inkground.app.Arrangement;
import inkground.app.Job;
import inkground.app.KnockOuts;
import inkground.app.PageJob;
import inkground.app.PrintedStack;
import inkground.appearance.InkColour;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintCondition;
import inkground.geometry.Box;
import inkground.handoff.CleanFile;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrate;
import inkground.viewer.state.ProofEngine.ApproveRequest;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.PageThumb;
import inkground.viewer.state.ProofEngine.Painter;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** An opened file of the window over a job. */
final class JobFile implements OpenFile {
    private final Job job;
    private final Runnable closing;
    private final Function<PageJob, OpenPage> pages;
    private final Function<String, Substrate> substrates;

    /**
     * @param closing closes the job and what it lies in
     * @param pages shows a page that was read
     * @param substrates finds one that the rack showed, by its id
     */
    JobFile(Job job, Runnable closing, Function<PageJob, OpenPage> pages, Function<String, Substrate> substrates) {
        this.job = job;
        this.closing = closing;
        this.pages = pages;
        this.substrates = substrates;
    }

    @Override
    public Path path() {
        return job.file();
    }

    @Override
    public int pageCount() {
        return job.pages().size();
    }

    @Override
    public PictureSize size() {
        return job.choices().size();
    }

    @Override
    public Optional<Sizing> sizing(int page) {
        return job.sizing(page);
    }

    @Override
    public OpenPage page(int number, ColourAssignment assignment, Cancel cancel, Progress progress) throws Refusal {
        return pages.apply(job.page(number, assignment, cancel, progress));
    }

    @Override
    public PageThumb thumb(int number, ColourAssignment assignment, int edgePx, Cancel cancel) throws Refusal {
        PageJob page = job.passing(number, assignment, cancel, Progress.NONE);
        Box media = page.info().box(PageBox.MEDIA);
        double dpi = 72 * edgePx / Math.max(media.width(), media.height());
        Set<Integer> on = page.displayList().layers().stream()
                .filter(Layer::on)
                .map(Layer::id)
                .collect(Collectors.toSet());
        PlateRequest whole = PlateRequest.of(media, dpi, true, on);
        return new JobThumb(
                page.plate().render(whole, cancel, Progress.NONE), page.inkColours(), page.condition(), substrates);
    }

    @Override
    public CleanFile.Result clean(
            ColourAssignment assignment, Path target, boolean replace, Cancel cancel, Progress progress)
            throws Refusal {
        return KnockOuts.write(job, assignment, target, replace, cancel, progress);
    }

    @Override
    public void approve(ApproveRequest request, Cancel cancel, Progress progress) throws Refusal {
        Approvals.write(
                new Approvals.Order(
                        job,
                        request.page(),
                        substrates.apply(request.substrateId()),
                        request.arrangement(),
                        request.hiddenInks(),
                        OptionalDouble.empty(),
                        request.printing(),
                        request.overprint(),
                        request.layersOn(),
                        request.worn().map(worn -> new Approvals.Worn(worn.form(), worn.cloth())),
                        request.by(),
                        OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS),
                        request.target(),
                        request.replace()),
                cancel,
                progress);
    }

    @Override
    public void close() {
        closing.run();
    }

    private record JobThumb(
            InkPlanes planes,
            List<InkColour> inkColours,
            PrintCondition condition,
            Function<String, Substrate> substrates)
            implements PageThumb {
        @Override
        public Painter painter(String substrateId, Arrangement arrangement) {
            Stack usual = Stack.of(substrates.apply(substrateId), inkColours, condition);
            return new StackPainter(null, new StackModel(PrintedStack.arranged(usual, arrangement)), null, null, -1);
        }
    }
}
