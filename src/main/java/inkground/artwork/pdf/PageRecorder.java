package inkground.artwork.pdf;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.PageBox;
import inkground.artwork.Style;
import inkground.artwork.TextUse;
import inkground.artwork.Visibility;
import inkground.colour.BlackPointCompensation;
import inkground.colour.Rendering;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.ResourceCache;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType3CharProc;
import org.apache.pdfbox.pdmodel.font.PDType3Font;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDColorSpace;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDTransparencyGroup;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.pdmodel.graphics.pattern.PDTilingPattern;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Vector;

/**
 * Interprets one page's content and has recorded what it paints: objects by {@link ObjectRecorder}, type by {@link TextRecorder};
 * content inside content, such as forms and groups, is entered here. Used once, under the document's lock.
 */
final class PageRecorder extends PDFGraphicsStreamEngine {
    /** Operators of the standard that paint nothing and that the engine does not know: not worth a word. */
    private static final Set<String> SILENT = Set.of("BX", "EX", "MP", "DP", "d0", "d1", "ri", "i");

    private final Recording recording;
    private final DocumentParts parts;
    private final Matrix userToPage;
    private final Box media;
    private final Paints paints;
    private final StateExtras extras = new StateExtras();
    private final ObjectRecorder objects;
    private Level level;
    private TextUse glyphUse;

    /** Where the recorder stands in one content stream. */
    private static final class Level {
        final Matrix base;
        final PathBuilder path;
        final TextRecorder text;
        /** How many operators are under way that other operators stand for. */
        int derived;

        /** @param base matrix that the stream starts with, to the page's user space */
        Level(Matrix base, PathBuilder path, TextRecorder text) {
            this.base = base;
            this.path = path;
            this.text = text;
        }
    }

    PageRecorder(PDPage page, Boxes boxes, DocumentParts parts, Recording recording) {
        super(page);
        this.recording = recording;
        this.parts = parts;
        this.userToPage = boxes.userToPage();
        this.media = boxes.info().box(PageBox.MEDIA);
        this.paints = new Paints(this, parts, recording);
        this.objects = new ObjectRecorder(this, recording, paints, media);
        this.level =
                new Level(Matrix.IDENTITY, new PathBuilder(userToPage), new TextRecorder(this, recording, objects));
        Operators.register(this);
        ColourOperators.register(this, parts.spaces());
    }

    /** Records the page's content, then the annotations that print. */
    void run() {
        if (parts.checkSizes(getPage(), recording)) {
            guarded("page content", () -> processPage(getPage()));
        }
        new AnnotationRecorder(this, parts, recording).run(getPage());
    }

    /** Something that reads the file and may find it damaged. */
    interface Reading {
        void run() throws IOException;
    }

    /** Keeps what was read before damage and says so. */
    void guarded(String what, Reading reading) {
        try {
            reading.run();
        } catch (CancellationException | Stopped e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            recording.damaged(what);
        }
    }

    // ---- operators ----

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
        recording.countOperator(level.derived == 0);
        guarded("operator " + operator.getName(), () -> super.processOperator(operator, operands));
    }

    /** What one operator of the content stands for, such as the closing of a path in b: not counted as a place of its own. */
    @Override
    public void processOperator(String operation, List<COSBase> arguments) throws IOException {
        level.derived++;
        try {
            super.processOperator(operation, arguments);
        } finally {
            level.derived--;
        }
    }

    @Override
    protected void operatorException(Operator operator, List<COSBase> operands, IOException e) {
        recording.damaged("operator " + operator.getName());
    }

    @Override
    protected void unsupportedOperator(Operator operator, List<COSBase> operands) {
        if (!SILENT.contains(operator.getName())) {
            recording.damaged("unknown operators");
        }
    }

    @Override
    public void saveGraphicsState() {
        recording.saveState();
        PDGraphicsState outer = getGraphicsState();
        super.saveGraphicsState();
        extras.saved(outer, getGraphicsState());
    }

    @Override
    public void restoreGraphicsState() {
        super.restoreGraphicsState();
        recording.restoreState();
    }

    /** Says that something is not kept exactly. */
    void inexact(String feature, String shownAs) {
        recording.approximate(feature, shownAs);
    }

    COSDictionary resources() {
        return getResources() == null ? null : getResources().getCOSObject();
    }

    void dashPhase(double phase) {
        extras.dashPhase(getGraphicsState(), phase);
    }

    /** Says whether the state in force matches black points. */
    void blackPoint(BlackPointCompensation black) {
        extras.blackPoint(getGraphicsState(), black);
    }

    void patternChosen(PDColor colour) {
        paints.patternChosen(colour, level.base);
    }

    void beginMarked(COSBase tag, COSBase properties) {
        Visibility visibility = Visibility.ALWAYS;
        if (tag instanceof COSName name && "OC".equals(name.getName())) {
            COSBase group = properties instanceof COSName key
                    ? Cos.get(Cos.dictionary(resources(), "Properties"), key.getName())
                    : properties;
            visibility = parts.layers().of(group);
        }
        recording.beginMarked(visibility);
    }

    void endMarked() {
        recording.endMarked();
    }

    // ---- paths ----

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        moveTo((float) p0.getX(), (float) p0.getY());
        lineTo((float) p1.getX(), (float) p1.getY());
        lineTo((float) p2.getX(), (float) p2.getY());
        lineTo((float) p3.getX(), (float) p3.getY());
        closePath();
    }

    @Override
    public void moveTo(float x, float y) {
        level.path.move(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        level.path.line(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        level.path.curve(x1, y1, x2, y2, x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return level.path.current();
    }

    @Override
    public void closePath() {
        level.path.close();
    }

    @Override
    public void clip(int rule) {
        level.path.clipAtEnd(rule(rule));
    }

    @Override
    public void endPath() {
        FillRule rule = level.path.pendingClip();
        if (rule != null) {
            recording.clip(Clip.of(recording.clip(), level.path.outline(), rule));
        }
        level.path.reset();
    }

    @Override
    public void fillPath(int rule) throws IOException {
        paintPath(rule(rule), false);
    }

    @Override
    public void strokePath() throws IOException {
        paintPath(null, true);
    }

    @Override
    public void fillAndStrokePath(int rule) throws IOException {
        paintPath(rule(rule), true);
    }

    private void paintPath(FillRule fill, boolean stroke) throws IOException {
        try {
            if (!level.path.isEmpty()) {
                objects.paint(level.path.outline(), fill, stroke, glyphUse);
            }
        } finally {
            endPath();
        }
    }

    private static FillRule rule(int windingRule) {
        return windingRule == Path2D.WIND_EVEN_ODD ? FillRule.EVEN_ODD : FillRule.NON_ZERO;
    }

    /** Of what is filled, or stroked, in the state in force. */
    Style style(boolean stroke) throws IOException {
        return States.style(getGraphicsState(), stroke, paints.softMask(), paints.transfer());
    }

    /** What the state in force strokes with. */
    Pen pen() {
        return States.pen(getGraphicsState(), extras.dashPhase(getGraphicsState()));
    }

    Matrix ctm() {
        return Cos.matrix(getGraphicsState().getCurrentTransformationMatrix());
    }

    Matrix ctmToPage() {
        return ctm().then(userToPage);
    }

    Matrix userToPage() {
        return userToPage;
    }

    /** How the state in force wants colours brought to the print. */
    Rendering rendering() {
        return new Rendering(States.intent(getGraphicsState()), extras.blackPoint(getGraphicsState()));
    }

    // ---- shadings and images ----

    @Override
    public void shadingFill(COSName name) throws IOException {
        objects.shade(name);
    }

    @Override
    public void drawImage(PDImage image) {
        throw new IllegalStateException("images are drawn by drawObject and drawInline");
    }

    void drawInline(COSDictionary parameters, byte[] data) throws IOException {
        objects.image(PdfImage.of(InlineImages.toStream(parameters, data), resources(), parts.spaces(), parts.lock()));
    }

    // ---- forms and groups ----

    void drawObject(COSName name) throws IOException {
        COSBase found = Cos.get(Cos.dictionary(resources(), "XObject"), name.getName());
        if (!(found instanceof COSStream stream)) {
            throw new IOException("object " + name.getName() + " is not defined");
        }
        recording.beginMarked(parts.layers().of(Cos.get(stream, "OC")));
        try {
            if ("Image".equals(Cos.nameOf(stream, "Subtype"))) {
                objects.image(parts.image(stream, resources()));
            } else if ("Form".equals(Cos.nameOf(stream, "Subtype")) || stream.containsKey("BBox")) {
                // each use by a name of its own, since what it paints can differ
                int place = recording.origin().place();
                drawForm(stream, "form " + name.getName() + " at operator " + place);
            }
        } finally {
            recording.endMarked();
        }
    }

    /** Draws a form under the current matrix, as a group when it is one. */
    void drawForm(COSStream stream, String name) throws IOException {
        COSDictionary attributes = Cos.dictionary(stream, "Group");
        if ("Transparency".equals(Cos.nameOf(attributes, "S"))) {
            Op.Group group = group(stream, attributes, name, style(false), false);
            if (group != null) {
                recording.add(group);
            }
            return;
        }
        Recording.Outer outer = enter(stream, name, false, false);
        if (outer != null) {
            PDFormXObject form = new PDFormXObject(stream, cache());
            Matrix inner = Cos.matrix(stream, "Matrix").then(ctm());
            nested(outer, inner, name, extras.blackPoint(getGraphicsState()), () -> {
                clipTo(Cos.box(stream, "BBox"), inner);
                super.showForm(form);
            });
        }
    }

    /**
     * Records a transparency group under the current matrix.
     *
     * @param clean whether it starts without the current clip and layer condition, as soft masks do
     * @return the group; null when it is inside itself
     */
    Op.Group group(COSStream stream, COSDictionary attributes, String name, Style style, boolean clean)
            throws IOException {
        Clip outside = clean ? null : recording.clip();
        Origin origin = recording.origin();
        ColourSpace space = groupSpace(attributes, stream);
        Matrix inner = Cos.matrix(stream, "Matrix").then(ctm());
        Recording.Outer outer = enter(stream, name, true, clean);
        if (outer == null) {
            return null;
        }
        PDTransparencyGroup form = new PDTransparencyGroup(stream, cache());
        Box bbox = Cos.box(stream, "BBox");
        List<Op> ops = nested(outer, inner, name, extras.blackPoint(getGraphicsState()), () -> {
            clipTo(bbox, inner);
            super.processTransparencyGroup(form);
        });
        Box bounds = bbox == null ? media : inner.then(userToPage).bounds(bbox);
        if (outside != null) {
            bounds = bounds.intersect(outside.bounds());
        }
        boolean isolated = attributes != null && Cos.flag(attributes, "I");
        boolean knockout = attributes != null && Cos.flag(attributes, "K");
        return new Op.Group(ops, bounds, isolated, knockout, space, style, outside, origin);
    }

    private ColourSpace groupSpace(COSDictionary attributes, COSStream stream) {
        COSBase stated = Cos.get(attributes, "CS");
        if (stated == null) {
            return null;
        }
        ColourSpace[] read = new ColourSpace[1];
        COSDictionary own = Cos.dictionary(stream, "Resources");
        guarded("a group's colour space", () -> read[0] = parts.spaces().of(stated, own == null ? resources() : own));
        return read[0] == null ? null : read[0].by(rendering());
    }

    /**
     * Records a tiling pattern's cell, not clipped to its box: that is done where the cell is repeated.
     *
     * @param patternToUser its matrix in the page's user space
     */
    List<Op> cell(PDTilingPattern pattern, PDColor colour, PDColorSpace under, Matrix patternToUser)
            throws IOException {
        COSStream stream = (COSStream) pattern.getCOSObject();
        Recording.Outer outer = enter(stream, "pattern", true, true);
        if (outer == null) {
            return List.of();
        }
        return nested(
                outer,
                patternToUser,
                "pattern",
                BlackPointCompensation.DEFAULT,
                () -> processTilingPattern(pattern, colour, under, Cos.matrix(patternToUser)));
    }

    /** Records a soft mask's group from the state a page starts with, under the matrix the mask was set with. */
    Op.Group maskGroup(COSStream stream, Matrix ctm) throws IOException {
        Deque<PDGraphicsState> outer = saveGraphicsStack();
        BlackPointCompensation outerBlack = extras.inherit(BlackPointCompensation.DEFAULT);
        try {
            States.reset(getGraphicsState(), ctm);
            return group(stream, Cos.dictionary(stream, "Group"), "soft mask", Style.PLAIN, true);
        } finally {
            extras.inherit(outerBlack);
            restoreGraphicsStack(outer);
        }
    }

    private Recording.Outer enter(COSStream stream, String name, boolean apart, boolean clean) throws IOException {
        StreamData.checkSize(stream, parts.limits().contentBytes());
        return recording.enter(stream, name, apart, clean);
    }

    /** Runs nested content and puts everything back, whatever happens in it. */
    private List<Op> nested(
            Recording.Outer outer, Matrix innerBase, String name, BlackPointCompensation black, Reading content) {
        BlackPointCompensation outerBlack = extras.inherit(black);
        Level outerLevel = level;
        level = new Level(innerBase, new PathBuilder(userToPage), outerLevel.text.nested());
        List<Op> collected;
        try {
            guarded(name, content);
        } finally {
            level = outerLevel;
            extras.inherit(outerBlack);
            collected = recording.leave(outer);
        }
        return collected;
    }

    private void clipTo(Box box, Matrix toUser) {
        if (box != null) {
            Outline edge = Outline.rectangle(box).transform(toUser.then(userToPage));
            recording.clip(Clip.of(recording.clip(), edge, FillRule.NON_ZERO));
        }
    }

    ResourceCache cache() {
        return parts.resourceCache();
    }

    // ---- text ----

    @Override
    public void showTextString(byte[] string) throws IOException {
        level.text.startShow();
        try {
            super.showTextString(string);
        } finally {
            level.text.endShow();
        }
    }

    @Override
    public void showTextStrings(COSArray strings) throws IOException {
        level.text.startShow();
        try {
            super.showTextStrings(strings);
        } finally {
            level.text.endShow();
        }
    }

    @Override
    protected void showFontGlyph(org.apache.pdfbox.util.Matrix textToUser, PDFont font, int code, Vector displacement)
            throws IOException {
        level.text.glyph(font, code, Cos.matrix(textToUser).then(userToPage), displacement);
    }

    @Override
    protected void showType3Glyph(
            org.apache.pdfbox.util.Matrix textToUser, PDType3Font font, int code, Vector displacement)
            throws IOException {
        RenderingMode mode = getGraphicsState().getTextState().getRenderingMode();
        PDType3CharProc glyph = font.getCharProc(code);
        if (glyph == null || mode == RenderingMode.NEITHER || mode == RenderingMode.NEITHER_CLIP) {
            return;
        }
        TextUse use = level.text.type3(font, code, Cos.matrix(textToUser).then(userToPage));
        String name = "glyph of font " + use.font();
        Recording.Outer outer = enter(glyph.getCOSObject(), name, false, false);
        if (outer == null) {
            return;
        }
        TextUse outerUse = glyphUse;
        glyphUse = use;
        Matrix inner = Cos.matrix(font.getFontMatrix()).then(Cos.matrix(textToUser));
        nested(
                outer,
                inner,
                name,
                extras.blackPoint(getGraphicsState()),
                () -> super.processType3Stream(glyph, textToUser));
        glyphUse = outerUse;
    }

    @Override
    public void beginText() throws IOException {
        super.beginText();
        level.text.startObject();
    }

    @Override
    public void endText() throws IOException {
        super.endText();
        level.text.endObject();
    }

    /** The colour of a colour value of the engine. */
    static Colour colour(PDColor value, PDColorSpace space, Rendering rendering) {
        // The engine itself sets one colour only: black, at the start of a page.
        ColourSpace own = space instanceof FileSpace file ? file.space() : new ColourSpace.DeviceGray();
        return new Colour(own.by(rendering), value.getComponents());
    }
}
