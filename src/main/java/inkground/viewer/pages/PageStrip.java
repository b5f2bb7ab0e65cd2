package inkground.viewer.pages;

import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Ui;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntConsumer;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.image.ImageView;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The pages of a file as small proofs, one under the other; the one on the surface is marked. Not shown for a single page. */
public final class PageStrip extends ListView<Integer> {
    private static final PseudoClass HERE = PseudoClass.getPseudoClass("here");
    private static final PseudoClass EMPTY = PseudoClass.getPseudoClass("empty");
    private static final double WIDTH_PX = 126;
    private static final double CELL_PX = 132;
    private static final double THUMB_PX = 96;

    private final ViewerState state;
    private final IntConsumer turn;
    private final ThumbStock stock;
    private final Set<ThumbCell> cells = new java.util.HashSet<>();

    /**
     * @param scheduler makes the small proofs
     * @param turn turns to a page, from 1
     */
    public PageStrip(ViewerState state, RenderScheduler scheduler, IntConsumer turn) {
        this.state = state;
        this.turn = turn;
        this.stock = new ThumbStock(state, scheduler, () -> cells.forEach(ThumbCell::fill));
        setId("pages");
        getStyleClass().add("page-strip");
        setFixedCellSize(CELL_PX);
        setPrefWidth(WIDTH_PX);
        setMinWidth(WIDTH_PX);
        setMaxHeight(Double.MAX_VALUE);
        // Page Up and Page Down turn the page wherever the focus is; so the strip is worked by pointer alone.
        setFocusTraversable(false);
        setAccessibleText("Pages of the file");
        setCellFactory(list -> new ThumbCell());
        state.file.addListener((Observable o) -> list());
        state.page.addListener((Observable o) -> follow());
        list();
    }

    /** @return number of pages whose small proof is kept */
    public int kept() {
        return stock.size();
    }

    private void list() {
        int count = state.file.get() == null ? 0 : state.file.get().pageCount();
        Ui.shown(this, count > 1);
        if (count != getItems().size()) {
            getItems()
                    .setAll(java.util.stream.IntStream.rangeClosed(1, count)
                            .boxed()
                            .toList());
        }
        follow();
    }

    private void follow() {
        if (state.page.get() != null && !getItems().isEmpty()) {
            int at = state.page.get().info().number() - 1;
            boolean seen = cells.stream().anyMatch(cell -> !cell.isEmpty() && cell.getIndex() == at && cell.isShown());
            if (!seen) {
                scrollTo(at);
            }
        }
        cells.forEach(ThumbCell::fill);
    }

    private void wantSeen() {
        Set<Integer> seen = new TreeSet<>();
        cells.stream()
                .filter(cell -> cell.getItem() != null && !cell.isEmpty())
                .forEach(cell -> seen.add(cell.getItem()));
        stock.want(seen);
    }

    /** One page. */
    private final class ThumbCell extends ListCell<Integer> {
        private final ImageView picture = new ImageView();
        private final Label number = Ui.label("", "page-number");
        private final StackPane sheet = new StackPane(picture);
        private final VBox whole;

        ThumbCell() {
            picture.setPreserveRatio(true);
            picture.setSmooth(true);
            sheet.getStyleClass().add("page-thumb");
            sheet.setMinSize(THUMB_PX, THUMB_PX);
            sheet.setMaxSize(THUMB_PX, THUMB_PX);
            whole = new VBox(sheet, number);
            whole.setAlignment(Pos.CENTER);
            whole.getStyleClass().add("page-item");
            setAccessibleRole(AccessibleRole.LIST_ITEM);
            setOnMouseClicked(e -> {
                if (getItem() != null) {
                    turn.accept(getItem());
                }
            });
            cells.add(this);
        }

        boolean isShown() {
            double top = getBoundsInParent().getMinY()
                    + (getParent() == null ? 0 : getParent().getLayoutY());
            return isVisible() && top >= 0 && top + getHeight() <= PageStrip.this.getHeight();
        }

        @Override
        protected void updateItem(Integer page, boolean empty) {
            super.updateItem(page, empty);
            if (empty || page == null) {
                setGraphic(null);
                setId(null);
            } else {
                setGraphic(whole);
                setId("page-" + page);
                setAccessibleText("Page " + page);
            }
            fill();
            wantSeen();
        }

        void fill() {
            if (getItem() == null || isEmpty()) {
                return;
            }
            number.setText(String.valueOf(getItem()));
            boolean here = state.page.get() != null && state.page.get().info().number() == getItem();
            whole.pseudoClassStateChanged(HERE, here);
            var image = stock.picture(getItem()).orElse(null);
            picture.setImage(image);
            sheet.pseudoClassStateChanged(EMPTY, image == null);
            boolean wide = image != null && image.getWidth() >= image.getHeight();
            picture.setFitWidth(wide ? THUMB_PX : 0);
            picture.setFitHeight(wide ? 0 : THUMB_PX);
        }
    }
}
