package inkground.viewer.lineup;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.rack.VanishBar;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ProofEngine.Vanish;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.PageLines;
import inkground.viewer.ui.Ui;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;

/** The lines over one picture of the line-up, the words beneath it, and the ring around the chosen one. */
final class LineUpCell extends Region {
    /** Height of the words of a wide cell: the name takes one line. */
    static final double LOW_CAPTION_H = 36;
    /** Height of the words of a narrow cell: the name takes two. */
    static final double TALL_CAPTION_H = 46;

    /** Narrowest trim, in logical pixels, over which lines do not hide what they enclose. */
    private static final double LINED_PX = 200;

    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");

    private final Label name = Ui.label("", "line-up-name");
    private final VanishBar vanish = new VanishBar(36);
    private final Region ring = new Region();
    private final ViewerState state;
    private final PageLines lines;
    private final Rectangle picture = new Rectangle();
    private double pictureH;
    private boolean narrow;

    LineUpCell(ViewerState state) {
        this.state = state;
        lines = new PageLines(state, false);
        lines.setManaged(false);
        lines.setClip(picture);
        getStyleClass().add("line-up-cell");
        setAccessibleRole(AccessibleRole.BUTTON);
        ring.getStyleClass().add("line-up-ring");
        ring.setMouseTransparent(true);
        name.setMouseTransparent(true);
        name.setWrapText(true);
        name.setAlignment(Pos.TOP_LEFT);
        vanish.setPickOnBounds(true);
        setPickOnBounds(false);
        getChildren().addAll(lines, ring, name, vanish);
    }

    /**
     * @param known how the artwork holds; null for not known yet
     */
    void show(SubstrateCard card, Vanish known, boolean chosen, CellGrid grid) {
        pictureH = grid.pictureH();
        narrow = grid.captionH() == TALL_CAPTION_H;
        Box trim = state.page.get().info().box(PageBox.TRIM);
        lines.setVisible(state.camera.get().toView(trim).width() >= LINED_PX);
        lines.place();
        pseudoClassStateChanged(NARROW, narrow);
        vanish.call(narrow ? "" : "vanish ");
        setId("line-up-" + card.id());
        name.setText(card.name());
        vanish.show(known);
        pseudoClassStateChanged(CHOSEN, chosen);
        setAccessibleText(card.name()
                + (known == null ? "" : ", vanish " + VanishBar.percent(known))
                + (chosen ? ", chosen" : ""));
    }

    @Override
    protected void layoutChildren() {
        picture.setWidth(getWidth());
        picture.setHeight(pictureH);
        lines.resizeRelocate(0, 0, getWidth(), pictureH);
        ring.resizeRelocate(-4, -4, getWidth() + 8, getHeight() + 6);
        double nameH = Math.min(narrow ? 29 : 17, name.prefHeight(getWidth()));
        name.resizeRelocate(0, pictureH + 2, getWidth(), nameH);
        vanish.resizeRelocate(0, pictureH + 2 + nameH, getWidth(), 14);
    }
}
