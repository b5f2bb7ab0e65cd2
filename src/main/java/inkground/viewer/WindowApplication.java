package inkground.viewer;

import inkground.viewer.desk.BackgroundWork;
import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.ViewerState;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.prefs.Preferences;
import java.util.stream.Stream;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;

/** The toolkit's side of {@link ViewerApp}: public only because the toolkit makes it. */
public final class WindowApplication extends Application {
    private static final Logger LOG = Logger.getLogger(WindowApplication.class.getName());
    private static final String DEMO = "regatta-shirt.pdf";

    private ViewerWindow window;

    /** Made by the toolkit. */
    public WindowApplication() {}

    @Override
    public void start(Stage stage) {
        ViewerState state = new ViewerState();
        Thread.currentThread().setUncaughtExceptionHandler((thread, e) -> unexpected(state, e));
        Recents recents = new Recents(Preferences.userRoot().node("inkground/viewer"));
        ProofDesk desk = new ProofDesk(state, new JobEngine(demo()), recents, new DaemonThreads());
        // Both are read while the window is built.
        getParameters().getRaw().stream().findFirst().map(Path::of).ifPresent(desk.files()::open);
        desk.stockRack();
        window = new ViewerWindow(state, desk);
        StagePlace place = new StagePlace(stage, recents);
        place.restore();
        window.show(stage);
        place.keepWhenHidden();
    }

    @Override
    public void stop() {
        if (window != null) {
            window.close();
        }
    }

    private static void unexpected(ViewerState state, Throwable e) {
        LOG.warning("unexpected: " + e);
        LOG.log(Level.FINE, "its trace", e);
        state.trouble.set("Something went wrong in the window. What is open is not affected; try again.");
    }

    /** The demo artwork lies beside the program; when run from the sources, in the project's folder. */
    private static Optional<Path> demo() {
        String home = System.getProperty("inkground.home");
        return Stream.concat(Stream.ofNullable(home).map(h -> Path.of(h, "demo")), Stream.of(Path.of("demo")))
                .map(folder -> folder.resolve(DEMO))
                .filter(Files::isRegularFile)
                .findFirst();
    }

    /** One thread for each scheduler; none of them keeps the program running. */
    private static final class DaemonThreads implements BackgroundWork.Threads {
        private final List<ExecutorService> services = new CopyOnWriteArrayList<>();

        @Override
        public Executor background(String name) {
            ExecutorService service = Executors.newSingleThreadExecutor(work -> {
                Thread thread = new Thread(work, name);
                thread.setDaemon(true);
                return thread;
            });
            services.add(service);
            return service;
        }

        @Override
        public Executor ui() {
            return Platform::runLater;
        }

        @Override
        public void close() {
            services.forEach(ExecutorService::shutdown);
        }
    }
}
