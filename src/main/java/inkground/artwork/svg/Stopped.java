package inkground.artwork.svg;

import inkground.base.Refusal;

/** Carries a refusal out through code that cannot throw one. */
final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Refusal refusal;

    Stopped(Refusal refusal) {
        super(refusal);
        this.refusal = refusal;
    }

    Refusal refusal() {
        return refusal;
    }
}
