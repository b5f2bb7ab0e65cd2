package inkground.plate;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Small pages for tests: one point is one pixel unless a test says otherwise. */
final class Pages {
    static final Origin ORIGIN = new Origin("page", 0, Visibility.ALWAYS);
    static final ColourSpace CMYK = new ColourSpace.DeviceCmyk();
    static final ColourSpace GRAY = new ColourSpace.DeviceGray();
    static final ColourSpace RGB = new ColourSpace.DeviceRgb();

    /** A condition without measurement: enough where no test looks at converted colours. */
    static final PrintCondition PLAIN = new PrintCondition() {
        @Override
        public String name() {
            return "plain";
        }

        @Override
        public String source() {
            return "made for tests";
        }

        @Override
        public Lab paper() {
            return new Lab(100, 0, 0);
        }

        @Override
        public void cmykToXyz(float[] cmyk, double[] xyz) {
            double y = (1 - cmyk[0]) * (1 - cmyk[1]) * (1 - cmyk[2]) * (1 - cmyk[3]);
            xyz[0] = 0.9642 * y;
            xyz[1] = y;
            xyz[2] = 0.8249 * y;
        }

        @Override
        public void labToCmyk(double L, double a, double b, float[] cmyk) {
            cmyk[0] = 0;
            cmyk[1] = 0;
            cmyk[2] = 0;
            cmyk[3] = (float) (1 - L / 100);
        }
    };

    private Pages() {}

    static Style overprint(int mode) {
        return new Style(1, inkground.artwork.BlendMode.NORMAL, true, mode, null, false);
    }

    static Style alpha(double alpha) {
        return new Style(alpha, inkground.artwork.BlendMode.NORMAL, false, 0, null, false);
    }

    static Colour cmyk(double c, double m, double y, double k) {
        return new Colour(CMYK, (float) c, (float) m, (float) y, (float) k);
    }

    static ColourSpace.Separation separation(String name) {
        return new ColourSpace.Separation(name, CMYK, new TintTransform() {
            @Override
            public int outputs() {
                return 4;
            }

            @Override
            public void apply(float[] in, float[] out) {
                out[0] = in[0] * 0.2f;
                out[1] = in[0] * 0.8f;
                out[2] = 0;
                out[3] = 0;
            }
        });
    }

    static Colour spot(String name, double tint) {
        return new Colour(separation(name), (float) tint);
    }

    static Outline rect(double x0, double y0, double x1, double y1) {
        return Outline.rectangle(new Box(x0, y0, x1, y1));
    }

    static Op fill(Outline path, Colour colour) {
        return fill(path, colour, Style.PLAIN, null);
    }

    static Op fill(Outline path, Colour colour, Style style, Clip clip) {
        return new Op.Fill(path, FillRule.NON_ZERO, new Paint.Flat(colour), null, style, clip, ORIGIN);
    }

    static Op group(boolean isolated, Style style, Op... ops) {
        Box box = Box.EMPTY;
        for (Op op : ops) {
            box = box.union(op.bounds());
        }
        return new Op.Group(List.of(ops), box, isolated, false, null, style, null, ORIGIN);
    }

    static Op image(ColourSpace space, int width, int height, Matrix unitToPage, int... samples) {
        byte[] bytes = new byte[samples.length];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) samples[i];
        }
        return new Op.Image(
                new Samples(
                        space,
                        width,
                        height,
                        new ImageSource.Pixels(width, height, samples.length / width / height, bytes, null)),
                unitToPage,
                Style.PLAIN,
                null,
                ORIGIN);
    }

    record Samples(ColourSpace space, int width, int height, Pixels pixels) implements ImageSource {
        @Override
        public boolean interpolate() {
            return false;
        }

        @Override
        public int bits() {
            return 8;
        }

        @Override
        public Pixels decode() {
            return pixels;
        }
    }

    static DisplayList page(double width, double height, Op... ops) {
        Map<PageBox, Box> boxes = new EnumMap<>(PageBox.class);
        for (PageBox box : PageBox.values()) {
            boxes.put(box, new Box(0, 0, width, height));
        }
        return new DisplayList(new PageInfo(1, boxes, Set.of(), 0, 1), List.of(ops), List.of(), null, List.of());
    }

    static Plate plate(DisplayList list) {
        return new Plate(list, InkMapping.of(List.of(), list, PLAIN));
    }

    /** A page brought to the scale of a request. */
    static PreparedList prepared(DisplayList page, PlateRequest request, InkMapping mapping) throws Refusal {
        return new Preparation(
                        request,
                        mapping,
                        new LuminosityMapping(mapping.reader()),
                        new ImageCache(),
                        new Cancel(),
                        new HashSet<>())
                .page(page);
    }

    static InkPlanes render(DisplayList list, boolean overprint) throws Refusal {
        Box media = list.page().box(PageBox.MEDIA);
        return plate(list).render(PlateRequest.of(media, 72, overprint, Set.of()), new Cancel(), Progress.NONE);
    }

    static InkPlanes render(DisplayList list) throws Refusal {
        return render(list, true);
    }

    /** Values of all inks at a pixel, by name, those above 0 only. */
    static Map<String, Integer> inksAt(InkPlanes planes, int x, int y) {
        Map<String, Integer> out = new java.util.TreeMap<>();
        for (int i = 0; i < planes.inks().size(); i++) {
            if (planes.get(i, x, y) > 0) {
                out.put(planes.inks().get(i).name(), planes.get(i, x, y));
            }
        }
        return out;
    }
}
