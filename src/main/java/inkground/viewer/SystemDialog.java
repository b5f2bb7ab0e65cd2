package inkground.viewer;

import inkground.app.Approvals;
import inkground.app.ArtworkFiles;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.stage.FileChooser;
import javafx.stage.Window;

/** The system's own dialog for files. */
final class SystemDialog implements FileAsker {
    @Override
    public Optional<Path> ask(String title, Window over, Optional<Path> near) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter("Artwork", patterns()),
                        new FileChooser.ExtensionFilter("Approval record", "*" + Approvals.ENDING),
                        new FileChooser.ExtensionFilter("All files", "*.*"));
        near.map(Path::toFile).filter(File::isDirectory).ifPresent(chooser::setInitialDirectory);
        return Optional.ofNullable(chooser.showOpenDialog(over)).map(File::toPath);
    }

    /** Both ways of writing an ending: some systems tell them apart. */
    private static List<String> patterns() {
        return ArtworkFiles.ENDINGS.stream()
                .flatMap(ending -> Stream.of("*." + ending, "*." + ending.toUpperCase(Locale.ROOT)))
                .toList();
    }
}
