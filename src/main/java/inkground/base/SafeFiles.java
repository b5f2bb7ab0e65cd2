package inkground.base;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;
import java.util.stream.Stream;

/** Writes files and folders whole or not at all: into a temporary neighbour first, then moved into place. */
public final class SafeFiles {
    private SafeFiles() {}

    /** Writes the content of a file or fills a folder. */
    @FunctionalInterface
    public interface Writer {
        /**
         * @param temporary where to write; moved into place afterwards
         */
        void write(Path temporary) throws IOException, Refusal;
    }

    /**
     * Writes one file.
     *
     * @param target where it goes; its folder must exist
     * @param replace whether an existing file may be replaced
     * @throws Refusal if the target exists and may not be replaced, or cannot be written
     */
    public static void file(Path target, boolean replace, Writer writer) throws Refusal {
        refuseExisting(target, replace);
        Path temporary = null;
        try {
            temporary = Files.createFile(neighbour(target));
            writer.write(temporary);
            // asked again: the file may have appeared while we wrote
            refuseExisting(target, replace);
            move(temporary, target);
        } catch (IOException e) {
            throw new Refusal(
                    "Cannot write " + target + ": " + reason(e) + ". Choose another place or free some space.", e);
        } finally {
            discard(temporary);
        }
    }

    /**
     * Writes a set of files into a folder, which is made if it is not there. All are finished before the first is moved into
     * place; none is when one that exists may not be replaced.
     *
     * @param folder where they go
     * @param replace whether existing files of the same names may be replaced
     */
    public static void folder(Path folder, boolean replace, Writer writer) throws Refusal {
        Path temporary = null;
        try {
            Files.createDirectories(folderOf(folder));
            temporary = Files.createDirectory(neighbour(folder));
            writer.write(temporary);
            Path[] files;
            try (Stream<Path> list = Files.list(temporary)) {
                files = list.sorted().toArray(Path[]::new);
            }
            for (Path file : files) {
                refuseExisting(folder.resolve(file.getFileName()), replace);
            }
            Files.createDirectories(folder);
            for (Path file : files) {
                move(file, folder.resolve(file.getFileName()));
            }
        } catch (IOException e) {
            throw new Refusal(
                    "Cannot write to " + folder + ": " + reason(e) + ". Choose another place or free some space.", e);
        } finally {
            discard(temporary);
        }
    }

    private static void refuseExisting(Path target, boolean replace) throws Refusal {
        if (Files.isDirectory(target)) {
            throw new Refusal(target + " is a folder. Give the name of a file.");
        }
        if (Files.exists(target) && !replace) {
            throw new Refusal(target + " exists already. Use --replace to replace it, or give another name.");
        }
    }

    // Not the JDK's temporary files: those are for their owner's eyes only, and so would be what they become.
    private static Path neighbour(Path target) {
        return folderOf(target).resolve(".inkground-" + UUID.randomUUID() + ".part");
    }

    private static Path folderOf(Path target) {
        Path folder = target.toAbsolutePath().getParent();
        return folder == null ? target.toAbsolutePath() : folder;
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(IOException e) {
        if (e instanceof java.nio.file.NoSuchFileException) {
            return "the folder does not exist";
        }
        if (e instanceof java.nio.file.AccessDeniedException) {
            return "access is denied";
        }
        if (e instanceof FileSystemException f && f.getReason() != null) {
            return f.getReason();
        }
        return e.getMessage() == null ? "the disk reports an error" : e.getMessage();
    }

    /** Removes what is left of an attempt, and says so where that fails. */
    private static void discard(Path temporary) throws Refusal {
        if (temporary == null || !Files.exists(temporary)) {
            return;
        }
        try (Stream<Path> tree = Files.walk(temporary)) {
            for (Path path : tree.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            throw new Refusal("Cannot remove the temporary file " + temporary + ": " + reason(e) + ".", e);
        }
    }
}
