package inkground.cli;

import picocli.CommandLine.Option;

/** The one page that is meant. */
final class PageOption {
    @Option(
            names = "--page",
            paramLabel = "N",
            defaultValue = "1",
            converter = PageNumber.class,
            description = "Page, from 1. Default: ${DEFAULT-VALUE}.")
    private int page;

    /** @return number from 1 */
    int page() {
        return page;
    }
}
