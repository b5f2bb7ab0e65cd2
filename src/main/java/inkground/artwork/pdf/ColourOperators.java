package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.contentstream.operator.MissingOperandException;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;
import org.apache.pdfbox.pdmodel.graphics.color.PDPattern;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;

/** The operators that set colours: ISO 32000-2 §8.6.8. Ignored where the colour comes from outside, as in d1 glyphs. */
final class ColourOperators {
    /** Names that stand for themselves and cannot name a resource: §8.6.8. */
    private static final Set<COSName> RESERVED =
            Set.of(COSName.DEVICEGRAY, COSName.DEVICERGB, COSName.DEVICECMYK, COSName.PATTERN);

    private final PageRecorder recorder;
    private final ColourSpaces spaces;
    private final Map<ColourSpace, FileSpace> made = new HashMap<>();

    private ColourOperators(PageRecorder recorder, ColourSpaces spaces) {
        this.recorder = recorder;
        this.spaces = spaces;
    }

    static void register(PageRecorder recorder, ColourSpaces spaces) {
        ColourOperators colours = new ColourOperators(recorder, spaces);
        colours.add("cs", (op, in) -> colours.setSpace(false, colours.stated(nameIn(op, in))));
        colours.add("CS", (op, in) -> colours.setSpace(true, colours.stated(nameIn(op, in))));
        for (String name : List.of("sc", "scn")) {
            colours.add(name, (op, in) -> colours.setColour(false, op, in));
        }
        for (String name : List.of("SC", "SCN")) {
            colours.add(name, (op, in) -> colours.setColour(true, op, in));
        }
        Map.of("g", COSName.DEVICEGRAY, "rg", COSName.DEVICERGB, "k", COSName.DEVICECMYK)
                .forEach((name, device) -> {
                    colours.add(name, (op, in) -> colours.setDevice(false, device, op, in));
                    colours.add(name.toUpperCase(Locale.ROOT), (op, in) -> colours.setDevice(true, device, op, in));
                });
    }

    private void add(String name, Operators.Action action) {
        recorder.addOperator(new Operators.Simple(name, recorder, (op, in) -> {
            if (recorder.isShouldProcessColorOperators()) {
                action.run(op, in);
            }
        }));
    }

    static COSName nameIn(Operator op, List<COSBase> operands) throws IOException {
        if (operands.isEmpty() || !(operands.get(0) instanceof COSName name)) {
            throw new MissingOperandException(op, operands);
        }
        return name;
    }

    /** A space by its name; of patterns, with the space of uncoloured ones. */
    private PDColorSpace stated(COSName name) throws IOException {
        boolean reserved = RESERVED.contains(name);
        COSBase named = reserved ? null : Cos.get(Cos.dictionary(recorder.resources(), "ColorSpace"), name.getName());
        COSBase object = named == null ? name : named;
        if (COSName.PATTERN.equals(object)) {
            return new PDPattern(recorder.getResources());
        }
        if (object instanceof COSArray array && array.size() > 0 && COSName.PATTERN.equals(array.getObject(0))) {
            return array.size() == 1
                    ? new PDPattern(recorder.getResources())
                    : new PDPattern(recorder.getResources(), space(array.getObject(1)));
        }
        return space(object);
    }

    private FileSpace space(COSBase stated) throws IOException {
        return made.computeIfAbsent(spaces.of(stated, recorder.resources()), FileSpace::new);
    }

    private void setSpace(boolean stroke, PDColorSpace space) {
        PDGraphicsState state = recorder.getGraphicsState();
        if (stroke) {
            state.setStrokingColorSpace(space);
        } else {
            state.setNonStrokingColorSpace(space);
        }
        set(stroke, space.getInitialColor());
    }

    private void set(boolean stroke, PDColor colour) {
        PDGraphicsState state = recorder.getGraphicsState();
        if (stroke) {
            state.setStrokingColor(colour);
        } else {
            state.setNonStrokingColor(colour);
        }
    }

    private void setDevice(boolean stroke, COSName device, Operator op, List<COSBase> operands) throws IOException {
        FileSpace space = space(device);
        PDColor colour = new PDColor(numbers(space, op, operands), space);
        setSpace(stroke, space);
        set(stroke, colour);
    }

    private void setColour(boolean stroke, Operator op, List<COSBase> operands) throws IOException {
        PDGraphicsState state = recorder.getGraphicsState();
        PDColorSpace space = stroke ? state.getStrokingColorSpace() : state.getNonStrokingColorSpace();
        if (space instanceof PDPattern) {
            COSArray all = new COSArray();
            all.addAll(operands);
            PDColor colour = new PDColor(all, space);
            set(stroke, colour);
            recorder.patternChosen(colour);
        } else {
            set(stroke, new PDColor(numbers(space, op, operands), space));
        }
    }

    private static float[] numbers(PDColorSpace space, Operator op, List<COSBase> operands) throws IOException {
        float[] out = new float[space.getNumberOfComponents()];
        if (operands.size() < out.length) {
            throw new MissingOperandException(op, operands);
        }
        for (int i = 0; i < out.length; i++) {
            if (!(operands.get(i) instanceof COSNumber number)) {
                throw new MissingOperandException(op, operands);
            }
            out[i] = number.floatValue();
        }
        return out;
    }
}
