package inkground.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes the clean files whose separations are committed, by the names of their cases; the command that separates them is in
 * PROVENANCE.txt beside them. Separate them anew, since the test compares both.
 */
final class CleanReferences {
    private CleanReferences() {}

    /**
     * @param names of cases, with or without their dashes
     * @throws Exception if one cannot be written
     */
    public static void main(String[] names) throws Exception {
        Path art = Files.createTempFile("art", ".pdf");
        List<CleanFileTest.Case> cases = CleanFileTest.cases().toList();
        for (String name : names) {
            CleanFileTest.Case one = cases.stream()
                    .filter(c -> c.fileName().equals(name.replace(' ', '-')))
                    .findAny()
                    .orElseThrow(() -> new IOException("no case " + name));
            one.pdf().write(art);
            CleanFileTest.write(art, one.bare(), CleanFileTest.REFERENCE.resolve(one.fileName() + ".pdf"));
        }
        Files.delete(art);
    }
}
