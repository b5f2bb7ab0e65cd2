package inkground.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files are written whole or not at all. */
class SafeFilesTest {
    @TempDir
    Path folder;

    @Test
    void anExistingFileIsKeptUnlessReplacingIsAskedFor() throws Exception {
        Path target = Files.writeString(folder.resolve("a.txt"), "old");
        assertThatThrownBy(() -> SafeFiles.file(target, false, t -> Files.writeString(t, "new")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("--replace");
        assertThat(target).hasContent("old");
        SafeFiles.file(target, true, t -> Files.writeString(t, "new"));
        assertThat(target).hasContent("new");
    }

    @Test
    void aFailureOrACancelledWriteLeavesNothingBehind() throws Exception {
        Path target = folder.resolve("a.txt");
        assertThatThrownBy(() -> SafeFiles.file(target, false, t -> {
                    Files.writeString(t, "half");
                    throw new IOException("disk full");
                }))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("disk full");
        assertThatThrownBy(() -> SafeFiles.folder(folder.resolve("set"), false, t -> {
                    Files.writeString(t.resolve("one"), "half");
                    throw new CancellationException();
                }))
                .isInstanceOf(CancellationException.class);
        assertThat(names()).isEmpty();
    }

    @Test
    void aSetOfFilesIsRefusedAsAWholeWhenOneOfThemExists() throws Exception {
        Path set = Files.createDirectory(folder.resolve("set"));
        Files.writeString(set.resolve("b"), "mine");
        SafeFiles.Writer both = t -> {
            Files.writeString(t.resolve("a"), "1");
            Files.writeString(t.resolve("b"), "2");
        };
        assertThatThrownBy(() -> SafeFiles.folder(set, false, both)).isInstanceOf(Refusal.class);
        assertThat(set.resolve("a")).doesNotExist();
        SafeFiles.folder(set, true, both);
        assertThat(set.resolve("a")).hasContent("1");
        assertThat(set.resolve("b")).hasContent("2");
        assertThat(names()).containsExactly("set");
    }

    @Test
    void whatIsWrittenHasTheRightsOfAnyNewFile() throws Exception {
        assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"), "no such rights on this system");
        Path ordinary = Files.createFile(folder.resolve("ordinary"));
        Path target = folder.resolve("written");
        SafeFiles.file(target, false, t -> Files.writeString(t, "x"));
        assertThat(Files.getPosixFilePermissions(target)).isEqualTo(Files.getPosixFilePermissions(ordinary));
    }

    @Test
    void aMissingFolderIsNamed() {
        assertThatThrownBy(() -> SafeFiles.file(folder.resolve("no/such/a.png"), false, t -> {}))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("the folder does not exist");
    }

    private String[] names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(p -> p.getFileName().toString()).sorted().toArray(String[]::new);
        }
    }
}
