package inkground.artwork.pdf;

import inkground.base.Refusal;

/** Carries a refusal out of the content-stream engine, whose methods cannot throw one. */
final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Refusal refusal;

    Stopped(Refusal refusal) {
        super(refusal.getMessage(), refusal);
        this.refusal = refusal;
    }

    Refusal refusal() {
        return refusal;
    }
}
