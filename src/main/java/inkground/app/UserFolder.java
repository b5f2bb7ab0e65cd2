package inkground.app;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/** Where a user's own data of this program belongs on each system. */
final class UserFolder {
    private UserFolder() {}

    /** @return the folder; it need not be there */
    static Path data() {
        return data(System.getProperty("os.name", ""), Path.of(System.getProperty("user.home", ".")), System.getenv());
    }

    /**
     * @param system name of the operating system
     * @param home the user's
     * @param environment of the process
     */
    static Path data(String system, Path home, Map<String, String> environment) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            return given(environment.get("APPDATA"), home.resolve("AppData/Roaming"))
                    .resolve("Inkground");
        }
        if (name.startsWith("mac")) {
            return home.resolve("Library/Application Support/Inkground");
        }
        // XDG Base Directory Specification 0.8: a relative path is to be ignored.
        return given(environment.get("XDG_DATA_HOME"), home.resolve(".local/share"))
                .resolve("inkground");
    }

    private static Path given(String path, Path otherwise) {
        return path == null || path.isBlank() || !Path.of(path).isAbsolute() ? otherwise : Path.of(path);
    }
}
