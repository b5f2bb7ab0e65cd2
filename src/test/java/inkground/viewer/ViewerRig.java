package inkground.viewer;

import inkground.viewer.desk.BackgroundWork;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.prefs.AbstractPreferences;
import java.util.prefs.Preferences;
import javafx.application.Platform;

/** Executors and preferences for tests. */
public final class ViewerRig {
    private ViewerRig() {}

    /** @return everything runs at once on the calling thread */
    static BackgroundWork.Threads sameThread() {
        return new BackgroundWork.Threads() {
            @Override
            public Executor background(String name) {
                return Runnable::run;
            }

            @Override
            public Executor ui() {
                return Runnable::run;
            }

            @Override
            public void close() {}
        };
    }

    /** @return real threads, and the JavaFX thread */
    static BackgroundWork.Threads real() {
        List<ExecutorService> all = new CopyOnWriteArrayList<>();
        return new BackgroundWork.Threads() {
            @Override
            public Executor background(String name) {
                ExecutorService one = Executors.newSingleThreadExecutor(r -> {
                    Thread thread = new Thread(r, name);
                    thread.setDaemon(true);
                    return thread;
                });
                all.add(one);
                return one;
            }

            @Override
            public Executor ui() {
                return Platform::runLater;
            }

            @Override
            public void close() {
                all.forEach(ExecutorService::shutdown);
            }
        };
    }

    /** @return preferences that live in memory only */
    public static Preferences preferences() {
        return new InMemory();
    }

    private static final class InMemory extends AbstractPreferences {
        private final java.util.Map<String, String> values = new java.util.HashMap<>();

        InMemory() {
            super(null, "");
        }

        @Override
        protected void putSpi(String key, String value) {
            values.put(key, value);
        }

        @Override
        protected String getSpi(String key) {
            return values.get(key);
        }

        @Override
        protected void removeSpi(String key) {
            values.remove(key);
        }

        @Override
        protected void removeNodeSpi() {}

        @Override
        protected String[] keysSpi() {
            return values.keySet().toArray(new String[0]);
        }

        @Override
        protected String[] childrenNamesSpi() {
            return new String[0];
        }

        @Override
        protected AbstractPreferences childSpi(String name) {
            throw new IllegalStateException("no children in tests");
        }

        @Override
        protected void syncSpi() {}

        @Override
        protected void flushSpi() {}
    }
}
