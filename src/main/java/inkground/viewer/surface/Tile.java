package inkground.viewer.surface;

import inkground.appearance.PrintedPixels;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlanePalette;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine;
import java.nio.IntBuffer;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * One rasterised region: its ink planes, and the picture of them for one {@link Look}. The planes never change; for another look
 * a second picture is painted behind the one that shows, and the two change places. So nothing is copied on the window's
 * thread, and any number of looks costs no further memory.
 */
public final class Tile {
    private static final class Picture {
        final int[] argb;
        final PixelBuffer<IntBuffer> buffer;
        final WritableImage image;

        Picture(InkPlanes planes, int[] argb) {
            this.argb = argb;
            buffer = new PixelBuffer<>(
                    planes.width(), planes.height(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance());
            image = new WritableImage(buffer);
        }
    }

    private final InkPlanes planes;
    private Picture front;
    // Painted off the window's thread, by one piece of work at a time; handed over when that is settled.
    private volatile Picture back;
    private Look look;
    private volatile PlanePalette palette;
    private volatile PrintedPixels printed;

    /**
     * @param argb width × height opaque pixels, 0xffRRGGBB; kept
     * @param look they were painted for
     */
    public Tile(InkPlanes planes, int[] argb, Look look) {
        this.planes = planes;
        this.look = look;
        front = new Picture(planes, argb);
    }

    /** @return what was rasterised */
    public PlateRequest request() {
        return planes.request();
    }

    /** @return the inks */
    public InkPlanes planes() {
        return planes;
    }

    /** @return the picture that shows, in device pixels; another one after {@link #turnOver} */
    public Image image() {
        return front.image;
    }

    /** @return what the picture was painted for */
    public Look look() {
        return look;
    }

    /** Finds out the palette of the planes, so that other looks are painted by look-up; from any thread. */
    public void quicken(Cancel cancel) {
        palette = PlanePalette.of(planes, cancel).orElse(null);
    }

    /** The same; and where there are too many vectors, as in photographs, finds out what the pixels are on paper. */
    public void quicken(ProofEngine.Painter painter, Cancel cancel) {
        quicken(cancel);
        printed = palette == null ? painter.printed(planes, cancel).orElse(null) : null;
    }

    /**
     * Paints the planes for a look behind the picture that shows; off the window's thread. Cancelled, it leaves a half-painted
     * picture there, which the next painting covers.
     */
    public void paintBehind(ProofEngine.Painter painter, Look with, Cancel cancel) throws Refusal {
        if (back == null) {
            back = new Picture(planes, new int[planes.width() * planes.height()]);
        }
        paint(painter, with, back.argb, cancel);
    }

    /**
     * Paints the planes for a look into pixels of their own; off the window's thread.
     *
     * @return width × height opaque pixels
     */
    public int[] paint(ProofEngine.Painter painter, Look with, Cancel cancel) throws Refusal {
        int[] pixels = new int[planes.width() * planes.height()];
        paint(painter, with, pixels, cancel);
        return pixels;
    }

    private void paint(ProofEngine.Painter painter, Look with, int[] pixels, Cancel cancel) throws Refusal {
        PlanePalette quick = palette;
        if (quick == null || with.placed()) {
            painter.paint(planes, printed, pixels, 0, planes.width(), cancel);
        } else {
            InkPlanes vectors = quick.vectors();
            int[] colours = new int[vectors.width() * vectors.height()];
            painter.paint(vectors, colours, 0, vectors.width(), cancel);
            quick.spread(colours, pixels);
        }
    }

    /** Shows what was painted behind; on the window's thread. */
    public void turnOver(Look newLook) {
        Picture shown = front;
        front = back;
        back = shown;
        front.buffer.updateBuffer(b -> null);
        look = newLook;
    }

    /** @return weight in memory */
    public long bytes() {
        // Counted as if quickened and painted for a second look, since that comes a moment later.
        return planes.bytes() + (4L + 4L + 4L) * front.argb.length;
    }

    /** @return whether a device pixel of the page at this tile's scale lies in it */
    public boolean holds(long xPx, long yPx) {
        PlateRequest r = request();
        return xPx >= r.x0() && xPx < r.x1() && yPx >= r.y0() && yPx < r.y1();
    }
}
