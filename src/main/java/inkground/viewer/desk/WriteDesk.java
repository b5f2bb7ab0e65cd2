package inkground.viewer.desk;

import inkground.artwork.ColourAssignment;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.handoff.CleanFile;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javafx.beans.property.BooleanProperty;

/**
 * Writes files for the client and the printer, one at a time: a newer one stops the one that is being written. Files that are no
 * longer shown stay open as long as one is being written, which may still need them. Used on the window's thread only.
 */
public final class WriteDesk {
    /** Writes a file about a page. */
    @FunctionalInterface
    public interface PageWriter {
        /** Called off the window's thread; writes the whole file or nothing. */
        void write(OpenPage page, Cancel cancel, Progress progress) throws Refusal;
    }

    private interface Export<T> extends BackgroundWork.Task<T> {
        @Override
        default boolean isExport() {
            return true;
        }
    }

    private final ViewerState state;
    private final BackgroundWork work;
    private final RenderScheduler exporting;
    private final List<OpenFile> retired = new ArrayList<>();

    WriteDesk(ViewerState state, BackgroundWork work) {
        this.state = state;
        this.work = work;
        exporting = work.scheduler("exporting");
    }

    /**
     * Writes a file about the open page.
     *
     * @param target the file
     * @param sheet the sheet that asked for it, which is closed once it is written
     * @param written what to say then, before the name of the file
     */
    public void write(Path target, BooleanProperty sheet, String written, PageWriter writer) {
        OpenPage page = state.page.get();
        export(
                target,
                (cancel, activity) -> {
                    writer.write(page, cancel, activity);
                    return target;
                },
                file -> {
                    sheet.set(false);
                    state.news.set(written + ": " + file);
                });
    }

    /** Writes the clean file. */
    public void clean(Path target, boolean replace) {
        OpenFile file = state.file.get();
        ColourAssignment assignment = state.history.get().assignment();
        export(
                target,
                (cancel, activity) -> file.clean(assignment, target, replace, cancel, activity),
                (CleanFile.Result result) -> {
                    state.colours.cleanSheet.set(false);
                    state.news.set("Clean file written and compared: " + target + "; " + words(result));
                });
    }

    private static String words(CleanFile.Result result) {
        String removed = result.removed() + (result.removed() == 1 ? " object" : " objects") + " taken out";
        return result.knockedOut() == 0
                ? removed
                : removed + ", " + result.knockedOut() + " of them knocked out of what lay beneath";
    }

    private <T> void export(Path target, Export<T> task, Consumer<T> done) {
        state.trouble.set(null);
        work.start("Writing " + target.getFileName(), exporting, task, done, this::closeRetired);
    }

    /**
     * Closes a file that is no longer shown, once nothing that is being written needs it.
     *
     * @param file null for none
     */
    void retire(OpenFile file) {
        if (file != null) {
            retired.add(file);
            closeRetired();
        }
    }

    private void closeRetired() {
        if (!exporting.busy()) {
            closeAll();
        }
    }

    private void closeAll() {
        retired.forEach(OpenFile::close);
        retired.clear();
    }

    /** Closes what is retired, whatever is being written; that is to be stopped before. */
    void close() {
        closeAll();
    }
}
