package inkground.viewer.surface;

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
 * One rasterised region: its ink planes, and the picture of them for one {@link Look}. The planes never change; the picture
 * is painted over when the look does, so that any number of looks costs no further memory.
 */
public final class Tile {
    private final InkPlanes planes;
    private final int[] argb;
    private final PixelBuffer<IntBuffer> buffer;
    private final WritableImage image;
    private Look look;
    private volatile PlanePalette palette;

    /**
     * @param argb width × height opaque pixels, 0xffRRGGBB; kept
     * @param look they were painted for
     */
    public Tile(InkPlanes planes, int[] argb, Look look) {
        this.planes = planes;
        this.argb = argb;
        this.look = look;
        buffer = new PixelBuffer<>(
                planes.width(), planes.height(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance());
        image = new WritableImage(buffer);
    }

    /** @return what was rasterised */
    public PlateRequest request() {
        return planes.request();
    }

    /** @return the inks */
    public InkPlanes planes() {
        return planes;
    }

    /** @return the picture, in device pixels */
    public Image image() {
        return image;
    }

    /** @return what the picture was painted for */
    public Look look() {
        return look;
    }

    /** Takes over the palette of the planes, so that other looks are painted by look-up; from any thread. */
    public void quicken(PlanePalette ofPlanes) {
        palette = ofPlanes;
    }

    /**
     * Paints the planes for a look without showing it yet; off the window's thread.
     *
     * @return width × height opaque pixels
     */
    public int[] paint(ProofEngine.Painter painter, Look with, Cancel cancel) throws Refusal {
        int[] pixels = new int[planes.width() * planes.height()];
        PlanePalette quick = palette;
        if (quick == null || with.placed()) {
            painter.paint(planes, pixels, 0, planes.width(), cancel);
        } else {
            InkPlanes vectors = quick.vectors();
            int[] colours = new int[vectors.width() * vectors.height()];
            painter.paint(vectors, colours, 0, vectors.width(), cancel);
            quick.spread(colours, pixels);
        }
        return pixels;
    }

    /** Takes over pixels painted for another look; on the window's thread. */
    public void repaint(int[] newArgb, Look newLook) {
        System.arraycopy(newArgb, 0, argb, 0, argb.length);
        buffer.updateBuffer(b -> null);
        look = newLook;
    }

    /** @return weight in memory */
    public long bytes() {
        // Counted as if quickened, since that comes a moment later; its few vectors weigh next to nothing.
        return planes.bytes() + (4L + 2L) * argb.length;
    }

    /** @return whether a device pixel of the page at this tile's scale lies in it */
    public boolean holds(long xPx, long yPx) {
        PlateRequest r = request();
        return xPx >= r.x0() && xPx < r.x1() && yPx >= r.y0() && yPx < r.y1();
    }
}
