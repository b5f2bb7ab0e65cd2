package inkground.bench;

import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the benchmarks of this package; takes the arguments that JMH takes. */
public final class BenchMain {
    private BenchMain() {}

    /**
     * @param args for JMH, such as {@code -p file=regatta-shirt.pdf -f 3}
     * @throws RunnerException if a benchmark fails
     * @throws CommandLineOptionException if JMH does not know an argument
     */
    public static void main(String[] args) throws RunnerException, CommandLineOptionException {
        CommandLineOptions given = new CommandLineOptions(args);
        new Runner(new OptionsBuilder()
                        .parent(given)
                        .include(given.getIncludes().isEmpty() ? PageBench.class.getSimpleName() : "(?!)")
                        .build())
                .run();
    }
}
