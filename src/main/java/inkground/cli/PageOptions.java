package inkground.cli;

import inkground.artwork.PageBox;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which page and which part of it, and whether files may be replaced. */
final class PageOptions {
    @Mixin
    private PageOption page;

    @Option(
            names = "--box",
            paramLabel = "BOX",
            converter = BoxConverter.class,
            completionCandidates = BoxConverter.class,
            description =
                    "Part of the page: ${COMPLETION-CANDIDATES}. Default: media for separations, trim for proofs.")
    private PageBox box;

    @Option(names = "--replace", description = "Replace files that exist already.")
    private boolean replace;

    int page() {
        return page.page();
    }

    PageBox box(PageBox otherwise) {
        return box == null ? otherwise : box;
    }

    boolean replace() {
        return replace;
    }
}
