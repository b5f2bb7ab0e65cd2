package inkground.app;

import inkground.artwork.ColourAssignment;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.handoff.CleanFile;
import java.nio.file.Path;

/** Writes the clean file: the artwork without its bare colours. */
public final class KnockOuts {
    private KnockOuts() {}

    /**
     * @param job an open PDF, with the assignment that makes colours bare
     * @param file where the clean file goes
     * @param replace whether an existing file may be replaced
     * @throws Refusal if the artwork is no PDF, a bare colour cannot be taken out truly, or the file cannot be written
     */
    public static CleanFile.Result write(Job job, Path file, boolean replace, Cancel cancel, Progress progress)
            throws Refusal {
        return write(job, job.assignment(), file, replace, cancel, progress);
    }

    /**
     * @param job an open PDF
     * @param assignment which of its colours are bare, whatever the job was opened with
     * @param file where the clean file goes
     * @param replace whether an existing file may be replaced
     * @throws Refusal if the artwork is no PDF, a bare colour cannot be taken out truly, or the file cannot be written
     */
    public static CleanFile.Result write(
            Job job, ColourAssignment assignment, Path file, boolean replace, Cancel cancel, Progress progress)
            throws Refusal {
        if (!(job.artwork() instanceof PdfArtwork pdf)) {
            throw new Refusal(
                    job.file().getFileName() + " is not a PDF; only PDF files can be knocked out. Export one.");
        }
        return CleanFile.write(new CleanFile.Order(pdf, assignment, job.condition(), file, replace), cancel, progress);
    }
}
