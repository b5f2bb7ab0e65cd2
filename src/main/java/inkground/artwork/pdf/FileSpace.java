package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import java.awt.image.BufferedImage;
import java.awt.image.WritableRaster;
import java.util.Arrays;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;

/**
 * One of our colour spaces in the graphics state of the engine, which keeps it and asks for no more than its components. The
 * engine's own spaces would load profiles and look up tables that nobody uses, and follow default spaces into circles.
 */
final class FileSpace extends PDColorSpace {
    private final ColourSpace space;

    FileSpace(ColourSpace space) {
        this.space = space;
    }

    ColourSpace space() {
        return space;
    }

    @Override
    public String getName() {
        return space.getClass().getSimpleName();
    }

    @Override
    public int getNumberOfComponents() {
        return space.components();
    }

    @Override
    public float[] getDefaultDecode(int bitsPerComponent) {
        float[] out = new float[2 * space.components()];
        for (int i = 0; i < space.components(); i++) {
            out[2 * i] = space.min(i);
            out[2 * i + 1] = space.max(i);
        }
        return out;
    }

    /** §8.6: what a space starts with: all tints 1, black of CMYK, else 0 or the nearest to it. */
    @Override
    public PDColor getInitialColor() {
        float[] initial = new float[space.components()];
        if (space instanceof ColourSpace.Separation || space instanceof ColourSpace.DeviceN) {
            Arrays.fill(initial, 1);
        } else if (space instanceof ColourSpace.DeviceCmyk) {
            initial[3] = 1;
        } else {
            for (int i = 0; i < initial.length; i++) {
                initial[i] = Math.max(space.min(i), Math.min(space.max(i), 0));
            }
        }
        return new PDColor(initial, this);
    }

    @Override
    public COSBase getCOSObject() {
        return COSNull.NULL;
    }

    @Override
    public float[] toRGB(float[] value) {
        throw notForColours();
    }

    @Override
    public BufferedImage toRGBImage(WritableRaster raster) {
        throw notForColours();
    }

    @Override
    public BufferedImage toRawImage(WritableRaster raster) {
        throw notForColours();
    }

    private static UnsupportedOperationException notForColours() {
        return new UnsupportedOperationException("colours are converted by plates");
    }
}
