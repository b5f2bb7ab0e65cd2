package inkground.findings;

import inkground.findings.Chords.Chord;
import java.util.HashMap;
import java.util.Map;

/** Where the thin lines of one raster open into something broad: each is followed from its last thin pixels to there. */
final class Mouths {
    private static final int MOUTH_PX = 4; // in which a line opens, beyond its last thin pixel
    private static final int MOUTH_BACK_PX = 3;
    private static final double BESIDE_PX = 2; // from an edge to where nothing of its pixels is seen

    private final byte[] raster;
    private final float[] widths;
    private final Chords chords;
    private final int width;
    private final int height;
    private final double minPx;
    private final Map<Integer, Opening> openings = new HashMap<>(); // by pixel

    /**
     * What a line has of a pixel where it opens.
     *
     * @param share may be a little below 0, which makes up for others that are too large
     * @param aside pixels from the middle of that line
     */
    private record Opening(double share, double aside) {
        Opening nearer(Opening other) {
            return other.aside < aside ? other : this;
        }
    }

    /**
     * @param widths of the thin lines, 0 elsewhere
     * @param thin where they are
     * @param minPx width below which a line is thin
     */
    Mouths(byte[] raster, float[] widths, Tiles thin, Chords chords, int width, int height, double minPx) {
        this.raster = raster;
        this.widths = widths;
        this.chords = chords;
        this.width = width;
        this.height = height;
        this.minPx = minPx;
        thin.each((y, x0, x1) -> {
            for (int x = x0; x < x1; x++) {
                if (widths[y * width + x] > 0 && goesOn(x, y)) {
                    Chord chord = chords.chord(x, y);
                    if (chord != null && chord.facing()) {
                        follow(x, y, chord, 1);
                        follow(x, y, chord, -1);
                    }
                }
            }
        });
    }

    /** @return what a line has of a pixel where it opens, a little below 0 to 1; null elsewhere */
    Double share(int at) {
        Opening opening = openings.get(at);
        return opening == null ? null : opening.share;
    }

    /** Adds the tiles of all openings. */
    void addTo(Tiles tiles) {
        openings.keySet().forEach(at -> tiles.addAround(at % width, at / width));
    }

    /** Whether a pixel beside a thin one is inside too but not thin. */
    private boolean goesOn(int x, int y) {
        int own = raster[y * width + x] & 255;
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                if (widths[j * width + i] <= 0 && 2 * (raster[j * width + i] & 255) >= own) {
                    return true;
                }
            }
        }
        return false;
    }

    private void follow(int x, int y, Chord last, int way) {
        int nextX = (int) Math.round(x - way * last.uy());
        int nextY = (int) Math.round(y + way * last.ux());
        if (!inside(nextX, nextY)
                || widths[nextY * width + nextX] > 0
                || chords.at(nextX, nextY) < (last.low() + last.high()) / 2) {
            return;
        }
        Chord line = last; // further back the mouth does not turn its edges aside
        int backX = (int) Math.round(x + MOUTH_BACK_PX * way * last.uy());
        int backY = (int) Math.round(y - MOUTH_BACK_PX * way * last.ux());
        if (inside(backX, backY) && widths[backY * width + backX] > 0) {
            Chord there = chords.chord(backX, backY);
            line = there != null && there.facing() ? there : last;
        }
        double sign = Math.signum(line.ux() * last.ux() + line.uy() * last.uy()) * way;
        double vx = -sign * line.uy();
        double vy = sign * line.ux();
        boolean one = beside(x, y, line, vx, vy, 2 * MOUTH_PX, 1) > 0.5;
        boolean other = beside(x, y, line, vx, vy, 2 * MOUTH_PX, -1) > 0.5;
        if (!one && !other) {
            return; // it widens by and by
        }
        int reach = MOUTH_PX + (int) Math.ceil(minPx);
        for (int j = Math.max(0, y - reach); j <= Math.min(height - 1, y + reach); j++) {
            for (int i = Math.max(0, x - reach); i <= Math.min(width - 1, x + reach); i++) {
                double along = (i - x) * vx + (j - y) * vy;
                double across = (i - x) * line.ux() + (j - y) * line.uy();
                boolean within = along > 0.5
                        && along <= MOUTH_PX
                        && across <= line.ahead() + 1.5
                        && across >= -line.behind() - 1.5;
                if (within && widths[j * width + i] <= 0) {
                    double a = beside(x, y, line, vx, vy, along, 1);
                    double b = beside(x, y, line, vx, vy, along, -1);
                    double broad = one && other ? (a + b) / 2 : one ? a : b;
                    double covered = Chords.clamped(raster[j * width + i] & 255, line.low(), line.high());
                    boolean flush = across > 0 ? !one : !other; // the edge of the line goes on as that of what is broad
                    double share = flush ? covered * (1 - broad) : covered - broad;
                    openings.merge(j * width + i, new Opening(share, Math.abs(across)), Opening::nearer);
                }
            }
        }
    }

    /** What is covered beside a line, so many pixels on. */
    private double beside(int x, int y, Chord line, double vx, double vy, double along, int side) {
        double far = side > 0 ? line.ahead() + BESIDE_PX : -line.behind() - BESIDE_PX;
        return Chords.clamped(
                chords.at(x + along * vx + far * line.ux(), y + along * vy + far * line.uy()), line.low(), line.high());
    }

    private boolean inside(int x, int y) {
        return x >= 0 && y >= 0 && x < width && y < height;
    }
}
