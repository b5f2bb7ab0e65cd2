package inkground.artwork.svg;

import inkground.geometry.Box;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.batik.ext.awt.image.GraphicsUtil;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.util.HaltingThread;

/** Rasterises parts that have no vector form, such as filters: at 300 pixels per inch, or fewer where they are large. */
final class PartRaster {
    /** Enough for continuous tone in print: common practice, no source. */
    static final double DPI = 300;

    private static final int POLL_MS = 20;

    private final Reading reading;
    private final Limits limits;
    private long total;

    PartRaster(Reading reading) {
        this.reading = reading;
        this.limits = reading.limits;
    }

    /**
     * @param image what was painted
     * @param box where it belongs, in points
     * @param dpi pixels per inch
     */
    record Part(BufferedImage image, Box box, double dpi) {}

    /**
     * @param node to paint whole
     * @param toPage from the space that holds the node to page space
     * @param box part of the page to paint, not empty
     */
    Part paint(GraphicsNode node, AffineTransform toPage, Box box) {
        double dpi = Math.min(DPI, 72 * Math.sqrt(limits.rasterPixels() / (box.width() * box.height())));
        double scale = dpi / 72;
        int x0 = (int) Math.floor(box.x0() * scale);
        int y0 = (int) Math.floor(box.y0() * scale);
        int width = Math.max(1, (int) Math.ceil(box.x1() * scale) - x0);
        int height = Math.max(1, (int) Math.ceil(box.y1() * scale) - y0);
        total += (long) width * height;
        if (total > limits.rasterTotal()) {
            throw reading.stop("needs more than " + limits.rasterTotal() / 1_000_000
                    + " million pixels for its filters. Expand them to images before opening it.");
        }
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB_PRE);
        AffineTransform toImage = AffineTransform.getTranslateInstance(-x0, -y0);
        toImage.scale(scale, scale);
        toImage.concatenate(toPage);
        bounded(() -> {
            Graphics2D g = GraphicsUtil.createGraphics(image);
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
            g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            g.setClip(0, 0, width, height);
            g.transform(toImage);
            node.paint(g);
            g.dispose();
        });
        Box painted = new Box(x0 / scale, y0 / scale, (x0 + width) / scale, (y0 + height) / scale);
        return new Part(image, painted, dpi);
    }

    /** Runs work that cannot be cancelled by itself in a thread that is told to halt when time is up. */
    private void bounded(Runnable work) {
        AtomicReference<Throwable> failure = new AtomicReference<>();
        HaltingThread thread = new HaltingThread(work, "svg-filter");
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((t, e) -> failure.set(e));
        thread.start();
        long end = System.nanoTime() + limits.rasterSeconds() * 1_000_000_000L;
        try {
            while (thread.isAlive()) {
                thread.join(POLL_MS);
                reading.cancel.check();
                if (thread.isAlive() && System.nanoTime() > end) {
                    throw reading.stop("has a filter that takes longer than " + limits.rasterSeconds()
                            + " seconds. Expand it to an image before opening it.");
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new java.util.concurrent.CancellationException("interrupted");
        } finally {
            thread.halt();
        }
        Throwable failed = failure.get();
        if (failed instanceof Stopped stopped) {
            throw stopped;
        } else if (failed != null) {
            throw new IllegalStateException("rasterising", failed);
        }
    }
}
