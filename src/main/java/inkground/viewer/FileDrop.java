package inkground.viewer;

import inkground.app.Approvals;
import inkground.app.ArtworkFiles;
import inkground.app.AssignmentFile;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.state.ViewerState;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.Scene;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;

/** Takes files that are dropped on the window, and says of those that are of no use here what they are for. */
final class FileDrop {
    /** Palettes, and measured or characterised colour: names by custom of their programs, no source. */
    private static final List<String> COLOUR_DATA =
            List.of("icc", "icm", "cxf", "cgats", "it8", "ti3", "ase", "gpl", "json");

    /** Holds what stands before the columns of every characterisation file in use. */
    private static final int HEAD_BYTES = 1 << 14;

    private final ViewerState state;
    private final ProofDesk desk;
    private final Consumer<Path> open;

    /** @param open opens artwork, once what was decided is kept or given up */
    FileDrop(ViewerState state, ProofDesk desk, Consumer<Path> open) {
        this.state = state;
        this.desk = desk;
        this.open = open;
    }

    /** Takes what is dropped on a scene, where nothing in it takes it first. */
    void on(Scene scene) {
        scene.setOnDragOver(this::over);
        scene.setOnDragDropped(e -> {
            List<File> files = e.getDragboard().getFiles();
            take(files);
            e.setDropCompleted(!files.isEmpty());
            e.consume();
        });
    }

    private void over(DragEvent e) {
        if (e.getDragboard().hasFiles()) {
            e.acceptTransferModes(TransferMode.COPY);
        }
        e.consume();
    }

    /**
     * Opens the first artwork among files, compares with an approval record, or takes the rules kept beside another artwork; without
     * any of them the user is told about the first file.
     */
    void take(List<File> files) {
        if (files.isEmpty()) {
            return;
        }
        Path file = files.stream()
                .filter(f -> ArtworkFiles.ENDINGS.contains(ending(f.toPath())))
                .findFirst()
                .orElse(files.get(0))
                .toPath();
        if (Approvals.isRecord(file)) {
            desk.comparison().open(file);
        } else if (Files.isDirectory(file)) {
            state.trouble.set(file.getFileName() + " is a folder. Drop the artwork in it, one file at a time.");
        } else if (file.getFileName().toString().endsWith(AssignmentFile.ENDING)) {
            rules(file);
        } else if (COLOUR_DATA.contains(ending(file)) || isCharacterisation(file)) {
            state.trouble.set(file.getFileName()
                    + " is colour data, not artwork. A measured paper or garment is added with 'Own'; the print"
                    + " condition comes with the artwork, or on the command line with --condition and --inks.");
        } else {
            open.accept(file);
        }
    }

    private void rules(Path file) {
        if (state.page.get() == null) {
            state.trouble.set(
                    "Open the artwork first; then " + file.getFileName() + " says what its colours are printed as.");
        } else {
            desk.keeping().takeRules(file);
        }
    }

    /** @return whether a text holds measured colours, told by the keyword that ISO 28178 has before its columns */
    private static boolean isCharacterisation(Path file) {
        if (!ending(file).equals("txt")) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            String head = new String(in.readNBytes(HEAD_BYTES), StandardCharsets.ISO_8859_1);
            return head.lines().anyMatch(line -> line.strip().equals("BEGIN_DATA_FORMAT"));
        } catch (IOException e) {
            return false; // whoever opens it as artwork says why
        }
    }

    private static String ending(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.substring(name.lastIndexOf('.') + 1);
    }
}
