/** The command line: arguments in, words, JSON and exit codes out. All work is done by the use cases in {@code app}. */
package inkground.cli;
