package inkground.artwork.pdf;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.artwork.TintTransform;
import inkground.artwork.Transfer;
import inkground.colour.Rendering;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.io.IOException;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;
import org.apache.pdfbox.pdmodel.graphics.color.PDPattern;
import org.apache.pdfbox.pdmodel.graphics.pattern.PDTilingPattern;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.PDSoftMask;

/** Turns the current colours and masks of the engine into paints and soft masks, each made once. */
final class Paints {
    private final PageRecorder recorder;
    private final DocumentParts parts;
    private final Recording recording;
    private final Shadings shadings;
    private final Map<PDColor, Chosen> chosen = new IdentityHashMap<>();
    private final Map<Key, Paint> made = new HashMap<>();
    private final Map<Key, SoftMask> masks = new HashMap<>();
    private final Map<COSBase, Transfer> transfers = new IdentityHashMap<>();
    private final PDColor[] lastColour = new PDColor[2];
    private final Rendering[] lastRendering = new Rendering[2];
    private final Paint[] lastPaint = new Paint[2];

    Paints(PageRecorder recorder, DocumentParts parts, Recording recording) {
        this.recorder = recorder;
        this.parts = parts;
        this.recording = recording;
        this.shadings = new Shadings(parts.spaces());
    }

    /** A pattern and the matrix of the content stream in which it was chosen: §8.7.2. */
    private record Chosen(COSDictionary pattern, Matrix base, COSDictionary resources) {}

    /** An object of the file by identity, used under a matrix and, for uncoloured patterns, with a colour. */
    private static final class Key {
        private final COSBase object;
        private final List<Object> use;

        Key(COSBase object, Object... use) {
            this.object = object;
            this.use = java.util.Arrays.asList(use);
        }

        @Override
        public boolean equals(Object o) {
            return o instanceof Key k && object == k.object && use.equals(k.use);
        }

        @Override
        public int hashCode() {
            return 31 * System.identityHashCode(object) + use.hashCode();
        }
    }

    /** Remembers where a pattern was chosen; other colours are ignored. */
    void patternChosen(PDColor colour, Matrix base) {
        if (!(colour.getColorSpace() instanceof PDPattern) || colour.getPatternName() == null) {
            return;
        }
        COSDictionary resources = recorder.resources();
        COSDictionary pattern = Cos.dictionary(
                Cos.dictionary(resources, "Pattern"), colour.getPatternName().getName());
        if (pattern == null) {
            recording.damaged("pattern " + colour.getPatternName().getName());
        } else {
            chosen.put(colour, new Chosen(pattern, base, resources));
        }
    }

    /** The paint of the current stroking or other colour; null when it paints nothing. */
    Paint current(boolean stroke) throws IOException {
        PDGraphicsState state = recorder.getGraphicsState();
        PDColor colour = stroke ? state.getStrokingColor() : state.getNonStrokingColor();
        int slot = stroke ? 1 : 0;
        Rendering rendering = recorder.rendering();
        if (colour != lastColour[slot] || !rendering.equals(lastRendering[slot])) {
            lastPaint[slot] = paint(colour);
            lastColour[slot] = colour;
            lastRendering[slot] = rendering;
        }
        return lastPaint[slot];
    }

    private Paint paint(PDColor colour) throws IOException {
        if (!(colour.getColorSpace() instanceof PDPattern space)) {
            return new Paint.Flat(PageRecorder.colour(colour, colour.getColorSpace(), recorder.rendering()));
        }
        Chosen use = chosen.get(colour);
        if (use == null) {
            return null;
        }
        Matrix patternToUser = Cos.matrix(use.pattern, "Matrix").then(use.base);
        if (use.pattern.getInt(Cos.name("PatternType"), 0) == 2) {
            COSDictionary shading = Cos.dictionary(use.pattern, "Shading");
            if (shading == null) {
                throw new IOException("a shading pattern without a shading");
            }
            String own = Cos.nameOf(Cos.dictionary(use.pattern, "ExtGState"), "RI");
            // A pattern may name its own intent; black stays as the page says.
            Rendering rendering =
                    own == null ? recorder.rendering() : recorder.rendering().by(States.intent(own));
            return shading(shading, use.resources, patternToUser.then(recorder.userToPage()), true, rendering);
        }
        return tiling(use, colour, space.getUnderlyingColorSpace(), patternToUser);
    }

    Paint.Shading shading(
            COSDictionary dict, COSDictionary resources, Matrix toPage, boolean pattern, Rendering rendering)
            throws IOException {
        Key key = new Key(dict, toPage, pattern, rendering);
        Paint known = made.get(key);
        if (known == null) {
            known = shadings.read(dict, resources, toPage, pattern, rendering);
            made.put(key, known);
        }
        return (Paint.Shading) known;
    }

    private Paint tiling(Chosen use, PDColor colour, PDColorSpace under, Matrix patternToUser) throws IOException {
        if (!(use.pattern instanceof COSStream stream)) {
            throw new IOException("a tiling pattern without content");
        }
        boolean uncoloured = stream.getInt(Cos.name("PaintType"), 1) == 2;
        if (uncoloured && under == null) {
            throw new IOException("an uncoloured pattern without a colour");
        }
        Colour with = uncoloured ? PageRecorder.colour(colour, under, recorder.rendering()) : null;
        Key key = new Key(stream, patternToUser, with);
        if (!made.containsKey(key)) {
            made.put(key, newTiling(stream, colour, uncoloured ? under : null, patternToUser));
        }
        return made.get(key);
    }

    private Paint newTiling(COSStream stream, PDColor colour, PDColorSpace under, Matrix patternToUser)
            throws IOException {
        Box box = Cos.box(stream, "BBox");
        if (box == null || box.isEmpty()) {
            return null; // an empty cell paints nothing
        }
        double xStep = stream.getFloat(COSName.X_STEP, 0);
        double yStep = stream.getFloat(COSName.Y_STEP, 0);
        PDTilingPattern pattern = new PDTilingPattern(stream, recorder.cache());
        List<Op> cell = recorder.cell(pattern, colour, under, patternToUser);
        return new Paint.Tiling(
                cell,
                box,
                xStep == 0 ? box.width() : xStep,
                yStep == 0 ? box.height() : yStep,
                patternToUser.then(recorder.userToPage()));
    }

    /** The current soft mask; null for none. */
    SoftMask softMask() throws IOException {
        PDSoftMask mask = recorder.getGraphicsState().getSoftMask();
        if (mask == null) {
            return null;
        }
        org.apache.pdfbox.util.Matrix set = mask.getInitialTransformationMatrix();
        Matrix ctm = set == null ? Matrix.IDENTITY : Cos.matrix(set);
        Key key = new Key(mask.getCOSObject(), ctm);
        if (!masks.containsKey(key)) {
            masks.put(key, newMask(mask.getCOSObject(), ctm));
        }
        return masks.get(key);
    }

    private SoftMask newMask(COSDictionary dict, Matrix ctm) throws IOException {
        if (!(Cos.get(dict, "G") instanceof COSStream stream)) {
            throw new IOException("a soft mask without a group");
        }
        Op.Group group = recorder.maskGroup(stream, ctm);
        if (group == null) {
            return null;
        }
        boolean luminosity = "Luminosity".equals(Cos.nameOf(dict, "S"));
        COSBase function = Cos.get(dict, "TR");
        TintTransform transfer = function == null || function instanceof COSName ? null : Functions.of(function, 1, 1);
        return new SoftMask(group, luminosity, backdrop(dict, stream, group), transfer);
    }

    /** The current transfer function: §10.5; null for none. */
    Transfer transfer() {
        COSBase stated = recorder.getGraphicsState().getTransfer();
        if (!Transfers.changes(stated)) {
            return null;
        }
        if (!transfers.containsKey(stated)) {
            transfers.put(stated, null); // where it cannot be read
            recorder.guarded("a transfer function", () -> transfers.put(stated, Transfers.of(stated)));
        }
        return transfers.get(stated);
    }

    private Colour backdrop(COSDictionary dict, COSStream stream, Op.Group group) throws IOException {
        double[] components = Cos.numbers(Cos.get(dict, "BC"));
        if (components == null) {
            return null;
        }
        ColourSpace space = group.space();
        if (space == null) {
            COSDictionary attributes = Cos.dictionary(stream, "Group");
            COSBase stated = Cos.get(attributes, "CS");
            space = stated != null ? parts.spaces().of(stated, recorder.resources()) : byCount(components.length);
        }
        return new Colour(space, Shadings.floats(components));
    }

    private static ColourSpace byCount(int components) {
        return switch (components) {
            case 1 -> new ColourSpace.DeviceGray();
            case 3 -> new ColourSpace.DeviceRgb();
            default -> new ColourSpace.DeviceCmyk();
        };
    }
}
