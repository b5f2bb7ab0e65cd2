package inkground.cli;

import inkground.app.Job;
import inkground.app.SessionFile;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import java.nio.file.Path;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** How large a picture or an SVG is, where the user knows better than its file. */
final class SizeOptions {
    @ArgGroup
    private Size size;

    /** One of two ways to say how large a picture or an SVG is. */
    static final class Size {
        @Option(
                names = "--width-mm",
                paramLabel = "MM",
                description =
                        "Width that a picture or an SVG is taken to have, where its file does not say or says wrongly.")
        private Double widthMm;

        @Option(
                names = "--picture-dpi",
                paramLabel = "D",
                description = "The same by its samples (of an SVG, its px) per inch.")
        private Double dpi;
    }

    /**
     * @param otherwise the size where neither option is given
     * @throws Refusal if the figure given is not within the limits
     */
    PictureSize or(PictureSize otherwise) throws Refusal {
        if (size == null) {
            return otherwise;
        }
        return size.widthMm != null
                ? PictureSize.wide(size.widthMm, "--width-mm")
                : PictureSize.at(size.dpi, "--picture-dpi");
    }

    /**
     * Opens artwork in the size of the options, else in the one chosen before. Where it cannot have that one, since another file
     * took the place of the one it was chosen for, in its own, which is told.
     *
     * @param kept what was chosen before
     * @throws Refusal if the artwork cannot be opened, or not in the size of the options
     */
    Job open(Path file, Job.Choices kept, Console console) throws Refusal {
        Job.Choices choices = kept.sized(or(kept.size()));
        try {
            return Job.open(file, choices, console.cancel(), console.progress());
        } catch (Refusal e) {
            if (given() || !kept.size().chosen()) {
                throw e;
            }
            Job job = Job.open(file, kept.sized(PictureSize.STATED), console.cancel(), console.progress());
            console.tell(SessionFile.sizeNotTaken(e));
            return job;
        }
    }

    boolean given() {
        return size != null;
    }
}
