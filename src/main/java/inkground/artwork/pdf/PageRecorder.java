package inkground.artwork.pdf;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
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
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.WeakHashMap;
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
import org.apache.pdfbox.pdmodel.graphics.PDLineDashPattern;
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
 * Interprets one page's content and records what it paints. Used once, under the document's lock. Long, because the engine calls
 * one class back for everything; what a call needs to know is in the classes beside it.
 */
final class PageRecorder extends PDFGraphicsStreamEngine {
    /** Operators of the standard that paint nothing and that the engine does not know: not worth a word. */
    private static final Set<String> SILENT = Set.of("BX", "EX", "MP", "DP", "d0", "d1", "ri", "i");

    private final Recording recording;
    private final DocumentParts parts;
    private final Matrix userToPage;
    private final Box media;
    private final Paints paints;
    private final Map<PDLineDashPattern, Double> dashPhases = new IdentityHashMap<>();
    private Matrix base = Matrix.IDENTITY;
    private PathBuilder path;
    private TextRecorder text = new TextRecorder();
    private TextUse glyphUse;
    private int derived;
    // Weak, since states of nested content end without a word.
    private final Map<PDGraphicsState, BlackPointCompensation> blackPoints = new WeakHashMap<>();
    private BlackPointCompensation inheritedBlack = BlackPointCompensation.DEFAULT;

    PageRecorder(PDPage page, Boxes boxes, DocumentParts parts, Recording recording) {
        super(page);
        this.recording = recording;
        this.parts = parts;
        this.userToPage = boxes.userToPage();
        this.path = new PathBuilder(userToPage);
        this.media = boxes.info().box(PageBox.MEDIA);
        this.paints = new Paints(this, parts, recording);
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
        recording.countOperator(derived == 0);
        guarded("operator " + operator.getName(), () -> super.processOperator(operator, operands));
    }

    /** What one operator of the content stands for, such as the closing of a path in b: not counted as a place of its own. */
    @Override
    public void processOperator(String operation, List<COSBase> arguments) throws IOException {
        derived++;
        try {
            super.processOperator(operation, arguments);
        } finally {
            derived--;
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
        BlackPointCompensation black = blackPoint();
        super.saveGraphicsState();
        blackPoint(black);
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
        dashPhases.put(getGraphicsState().getLineDashPattern(), phase);
    }

    void patternChosen(PDColor colour) {
        paints.patternChosen(colour, base);
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
        path.move(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        path.line(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        path.curve(x1, y1, x2, y2, x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return path.current();
    }

    @Override
    public void closePath() {
        path.close();
    }

    @Override
    public void clip(int rule) {
        path.clipAtEnd(rule(rule));
    }

    @Override
    public void endPath() {
        FillRule rule = path.pendingClip();
        if (rule != null) {
            recording.clip(Clip.of(recording.clip(), path.outline(), rule));
        }
        path.reset();
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
            if (!path.isEmpty()) {
                paint(path.outline(), fill, stroke, glyphUse);
            }
        } finally {
            endPath();
        }
    }

    private static FillRule rule(int windingRule) {
        return windingRule == Path2D.WIND_EVEN_ODD ? FillRule.EVEN_ODD : FillRule.NON_ZERO;
    }

    /** @param fill rule to fill with; null for no fill */
    private void paint(Outline outline, FillRule fill, boolean stroke, TextUse use) throws IOException {
        Op.Fill filled = fill == null ? null : fill(outline, fill, use);
        Op.Stroke stroked = stroke ? stroke(outline, use) : null;
        if (filled != null && stroked != null && Knockouts.matters(List.of(filled, stroked))) {
            recording.add(Knockouts.group(filled, stroked, recording.clip(), recording.origin()));
            return;
        }
        if (filled != null) {
            recording.add(filled);
        }
        if (stroked != null) {
            recording.add(stroked);
        }
    }

    private Op.Fill fill(Outline outline, FillRule rule, TextUse use) throws IOException {
        Paint paint = paints.current(false);
        return paint == null
                ? null
                : new Op.Fill(outline, rule, paint, use, style(false), recording.clip(), recording.origin());
    }

    private Op.Stroke stroke(Outline outline, TextUse use) throws IOException {
        Paint paint = paints.current(true);
        if (paint == null) {
            return null;
        }
        Matrix toPage = ctmToPage();
        Style style = style(true);
        if (!toPage.invertible()) {
            // A pen flattened to nothing still leaves the thinnest line.
            Pen hairline = new Pen(0, Pen.Cap.BUTT, Pen.Join.MITER, 10, new double[0], 0);
            return new Op.Stroke(
                    outline, hairline, Matrix.IDENTITY, paint, use, style, recording.clip(), recording.origin());
        }
        Double phase = dashPhases.get(getGraphicsState().getLineDashPattern());
        Pen pen = States.pen(getGraphicsState(), phase == null ? 0 : phase);
        Outline inPenSpace = outline.transform(toPage.inverse());
        return new Op.Stroke(inPenSpace, pen, toPage, paint, use, style, recording.clip(), recording.origin());
    }

    Style style(boolean stroke) throws IOException {
        return States.style(getGraphicsState(), stroke, paints.softMask(), paints.transfer());
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
        return new Rendering(States.intent(getGraphicsState()), blackPoint());
    }

    private BlackPointCompensation blackPoint() {
        return blackPoints.getOrDefault(getGraphicsState(), inheritedBlack);
    }

    /** UseBlackPtComp of a graphics state, which the library does not keep: table 57. */
    void blackPoint(BlackPointCompensation black) {
        if (black != inheritedBlack || blackPoints.containsKey(getGraphicsState())) {
            blackPoints.put(getGraphicsState(), black);
        }
    }

    // ---- shadings and images ----

    @Override
    public void shadingFill(COSName name) throws IOException {
        COSDictionary dict = Cos.dictionary(Cos.dictionary(resources(), "Shading"), name.getName());
        if (dict == null) {
            throw new IOException("shading " + name.getName() + " is not defined");
        }
        Paint.Shading shading = paints.shading(dict, resources(), ctmToPage(), false, rendering());
        Clip clip = recording.clip();
        Box bounds = clip == null ? media : clip.bounds();
        recording.add(new Op.Shade(shading, bounds, style(false), clip, recording.origin()));
    }

    @Override
    public void drawImage(PDImage image) {
        throw new IllegalStateException("images are drawn by drawObject and drawInline");
    }

    void drawInline(COSDictionary parameters, byte[] data) throws IOException {
        drawImage(PdfImage.of(InlineImages.toStream(parameters, data), resources(), parts.spaces(), parts.lock()));
    }

    private void drawImage(PdfImage image) throws IOException {
        Matrix unitToPage = ctmToPage();
        Clip clip = recording.clip();
        Origin origin = recording.origin();
        if (!image.isStencil()) {
            // §11.6.5.3: an image's own soft mask takes the place of the one in the graphics state.
            Style style = image.hasSoftMask()
                    ? States.style(getGraphicsState(), false, null, paints.transfer())
                    : style(false);
            recording.add(new Op.Image(image.by(rendering()), unitToPage, style, clip, origin));
            return;
        }
        Paint paint = paints.current(false);
        if (paint != null) {
            recording.add(new Op.Stencil(image, unitToPage, paint, style(false), clip, origin));
        }
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
                drawImage(parts.image(stream, resources()));
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
            nested(outer, inner, name, blackPoint(), () -> {
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
        List<Op> ops = nested(outer, inner, name, blackPoint(), () -> {
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
        BlackPointCompensation outerBlack = inheritedBlack;
        inheritedBlack = BlackPointCompensation.DEFAULT;
        try {
            States.reset(getGraphicsState(), ctm);
            return group(stream, Cos.dictionary(stream, "Group"), "soft mask", Style.PLAIN, true);
        } finally {
            inheritedBlack = outerBlack;
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
        BlackPointCompensation outerBlack = inheritedBlack;
        inheritedBlack = black;
        Matrix outerBase = base;
        PathBuilder outerPath = path;
        int outerDerived = derived;
        derived = 0;
        TextRecorder outerText = text;
        base = innerBase;
        path = new PathBuilder(userToPage);
        text = outerText.nested();
        List<Op> collected;
        try {
            guarded(name, content);
        } finally {
            base = outerBase;
            inheritedBlack = outerBlack;
            derived = outerDerived;
            path = outerPath;
            text = outerText;
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
        text.startShow();
        try {
            super.showTextString(string);
        } finally {
            finishShow();
        }
    }

    @Override
    public void showTextStrings(COSArray strings) throws IOException {
        text.startShow();
        try {
            super.showTextStrings(strings);
        } finally {
            finishShow();
        }
    }

    @Override
    protected void showFontGlyph(org.apache.pdfbox.util.Matrix textToUser, PDFont font, int code, Vector displacement)
            throws IOException {
        Matrix toPage = Cos.matrix(textToUser).then(userToPage);
        text.note(font, code, toPage);
        guarded("a glyph of the font " + TextRecorder.name(font), () -> text.outline(font, code, toPage, displacement));
        if (!font.isEmbedded()) {
            noteSubstitute(font, code);
        }
        if (!textKnockout() && (Knockouts.transparent(style(false)) || Knockouts.transparent(style(true)))) {
            finishShow(); // every glyph is an object of its own
            text.startShow();
        }
    }

    private void noteSubstitute(PDFont font, int code) throws IOException {
        String name = "the font " + TextRecorder.name(font) + ", which the file does not carry";
        String standIn = TextRecorder.standIn(font);
        recording.approximate(name, standIn + " in its place");
        if (text.lacks(font, code)) {
            recording.approximate(
                    "characters of " + name, "as blanks or boxes, since " + standIn + " has not got them");
        }
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
        text.type3Shown();
        text.note(font, code, Cos.matrix(textToUser).then(userToPage));
        String name = "glyph of font " + TextRecorder.name(font);
        Recording.Outer outer = enter(glyph.getCOSObject(), name, false, false);
        if (outer == null) {
            return;
        }
        TextUse outerUse = glyphUse;
        String said = font.toUnicode(code);
        double sizePt = text.use().sizePt();
        glyphUse = new TextUse(TextRecorder.name(font), sizePt, true, said == null ? "" : said);
        Matrix inner = Cos.matrix(font.getFontMatrix()).then(Cos.matrix(textToUser));
        nested(outer, inner, name, blackPoint(), () -> super.processType3Stream(glyph, textToUser));
        glyphUse = outerUse;
    }

    private void finishShow() throws IOException {
        Outline outline = text.shown();
        if (outline.isEmpty()) {
            return;
        }
        RenderingMode mode = getGraphicsState().getTextState().getRenderingMode();
        TextUse use = text.use();
        if (mode.isFill() || mode.isStroke()) {
            paint(outline, mode.isFill() ? FillRule.NON_ZERO : null, mode.isStroke(), use);
        }
        if (mode.isClip()) {
            text.addToClip(outline);
        }
    }

    @Override
    public void beginText() throws IOException {
        super.beginText();
        text.startObject(recording.count());
    }

    @Override
    public void endText() throws IOException {
        super.endText();
        knockOutText();
        Outline outline = text.takeClip();
        if (!outline.isEmpty()) {
            recording.clip(Clip.of(recording.clip(), outline, FillRule.NON_ZERO));
        }
    }

    /** §9.3.8: under TK, all glyphs of a text object are one object, so that overlaps do not show twice. */
    private void knockOutText() {
        List<Op> shown = recording.since(text.firstOp());
        if (text.outlinesOnly() && textKnockout() && Knockouts.matters(shown)) {
            Op whole = Knockouts.group(List.copyOf(shown), null, recording.origin());
            shown.clear();
            shown.add(whole);
        }
    }

    private boolean textKnockout() {
        return getGraphicsState().getTextState().getKnockoutFlag();
    }

    /** The colour of a colour value of the engine. */
    static Colour colour(PDColor value, PDColorSpace space, Rendering rendering) {
        // The engine itself sets one colour only: black, at the start of a page.
        ColourSpace own = space instanceof FileSpace file ? file.space() : new ColourSpace.DeviceGray();
        return new Colour(own.by(rendering), value.getComponents());
    }
}
