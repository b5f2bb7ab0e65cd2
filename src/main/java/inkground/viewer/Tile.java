package inkground.viewer;

import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import java.nio.IntBuffer;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * One rasterised region: its ink planes, and the picture of them for one {@link Look}. The planes never change; the picture
 * is painted over when the look does, so that any number of looks costs no further memory.
 */
final class Tile {
    private final InkPlanes planes;
    private final int[] argb;
    private final PixelBuffer<IntBuffer> buffer;
    private final WritableImage image;
    private Look look;

    /**
     * @param argb width × height opaque pixels, 0xffRRGGBB; kept
     * @param look they were painted for
     */
    Tile(InkPlanes planes, int[] argb, Look look) {
        this.planes = planes;
        this.argb = argb;
        this.look = look;
        buffer = new PixelBuffer<>(
                planes.width(), planes.height(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance());
        image = new WritableImage(buffer);
    }

    /** @return what was rasterised */
    PlateRequest request() {
        return planes.request();
    }

    /** @return the inks */
    InkPlanes planes() {
        return planes;
    }

    /** @return the picture, in device pixels */
    Image image() {
        return image;
    }

    /** @return what the picture was painted for */
    Look look() {
        return look;
    }

    /** Takes over pixels painted for another look; on the window's thread. */
    void repaint(int[] newArgb, Look newLook) {
        System.arraycopy(newArgb, 0, argb, 0, argb.length);
        buffer.updateBuffer(b -> null);
        look = newLook;
    }

    /** @return weight in memory */
    long bytes() {
        return planes.bytes() + 4L * argb.length;
    }

    /** @return whether a device pixel of the page at this tile's scale lies in it */
    boolean holds(long xPx, long yPx) {
        PlateRequest r = request();
        return xPx >= r.x0() && xPx < r.x1() && yPx >= r.y0() && yPx < r.y1();
    }
}
