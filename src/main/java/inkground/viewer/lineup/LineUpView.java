package inkground.viewer.lineup;

import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.CameraHand;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.Observable;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;

/**
 * The same artwork on several substrates side by side. All cells look through one camera, the state's own, so that what is
 * taken to the surface is seen there at the same place.
 */
public final class LineUpView extends Region {
    private static final double BAR_H = 40;

    private final ViewerState state;
    private final LineUpFeed feed;
    private final LineUpBar bar;
    private final Canvas canvas = new Canvas();
    private final List<LineUpCell> cells = new ArrayList<>();
    private CellGrid grid;
    private final CameraHand hand;

    public LineUpView(ViewerState state, RenderScheduler scheduler, Executor ui) {
        this.state = state;
        hand = new CameraHand(this, state, this::inCell);
        feed = new LineUpFeed(state, scheduler, ui, this::requestLayout);
        bar = new LineUpBar(state);
        setId("line-up");
        getStyleClass().add("surface");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.LIST_VIEW);
        setAccessibleText("Line-up; arrows move along it, Enter takes one to the surface");
        setMinSize(0, 0);
        canvas.setManaged(false);
        bar.setManaged(false);
        getChildren().addAll(canvas, bar);
        listen();
        input();
    }

    private void listen() {
        state.onLook(this::requestLayout);
        for (Observable value : new Observable[] {state.camera, state.rack.scores, state.lineUp.cards()}) {
            value.addListener(o -> requestLayout());
        }
        state.view.addListener((Observable o) -> {
            state.probe.set(null);
            if (state.view.get() != BenchView.LINE_UP) {
                feed.rest();
            } else {
                requestLayout();
            }
        });
    }

    private void input() {
        setOnMousePressed(e -> {
            requestFocus();
            hand.grip(e);
        });
        setOnMouseDragged(this::drag);
        setOnMouseReleased(e -> setCursor(Cursor.DEFAULT));
        setOnMouseMoved(e -> probe(e.getX(), e.getY()));
        setOnMouseExited(e -> state.probe.set(null));
        setOnMouseClicked(this::click);
    }

    private void drag(MouseEvent e) {
        if (!e.isStillSincePress()) {
            hand.drag(e);
        }
    }

    /** Reads what a cell shows under the pointer. */
    private void probe(double x, double y) {
        List<SubstrateCard> cards = state.lineUp.cards();
        int cell = grid == null || state.page.get() == null ? -1 : grid.at(x, y - BAR_H);
        if (cell < 0 || cell >= cards.size() || y - BAR_H - grid.y(cell) >= grid.pictureH()) {
            state.probe.set(null);
            return;
        }
        Camera camera = state.camera.get();
        Point2D at = inCell(x, y);
        double xPt = camera.toPageX(at.getX(), at.getY());
        double yPt = camera.toPageY(at.getX(), at.getY());
        state.probe.set(feed.probe(cards.get(cell), xPt, yPt));
    }

    private void click(MouseEvent e) {
        int cell = grid == null ? -1 : grid.at(e.getX(), e.getY() - BAR_H);
        if (e.isStillSincePress() && cell >= 0 && cell < state.lineUp.cards().size()) {
            take(state.lineUp.cards().get(cell));
        }
    }

    /** Takes the chosen substrate to the surface, if it lies here. */
    public void take() {
        if (state.lineUp.cards().contains(state.substrate.get())) {
            take(state.substrate.get());
        }
    }

    private void take(SubstrateCard card) {
        state.substrate.set(card);
        state.view.set(BenchView.FLAT);
    }

    /** Moves the choice to the row above ({@code by} below 0) or below; stays where there is none. */
    public void stepRow(int by) {
        int columns = grid == null ? 1 : grid.columns();
        int at = state.lineUp.cards().indexOf(state.substrate.get());
        int to = at + by * columns;
        if (at < 0 || to >= 0 && to < state.lineUp.cards().size()) {
            state.stepLineUp(by * columns);
        }
    }

    /** @return a place within its cell's picture; null outside of all */
    private Point2D inCell(double x, double y) {
        int cell = grid == null ? -1 : grid.at(x, y - BAR_H);
        return cell < 0 ? null : new Point2D(x - grid.x(cell), Math.min(grid.pictureH(), y - BAR_H - grid.y(cell)));
    }

    /** @return whether every cell is there at device pixels, in the colours wanted */
    public boolean complete() {
        return state.view.get() == BenchView.LINE_UP && feed.complete();
    }

    @Override
    protected void layoutChildren() {
        if (state.view.get() != BenchView.LINE_UP) {
            return;
        }
        bar.resizeRelocate(0, 0, getWidth(), BAR_H);
        canvas.setWidth(Math.max(1, getWidth()));
        canvas.setHeight(Math.max(1, getHeight()));
        List<SubstrateCard> cards = state.page.get() == null ? List.of() : state.lineUp.cards();
        if (!cards.isEmpty()) {
            Box scene = state.scene();
            grid = CellGrid.of(cards.size(), getWidth(), getHeight() - BAR_H, scene.width() / scene.height());
            Camera camera = state.camera.get();
            if (camera.widthPx() != grid.cellW()
                    || camera.heightPx() != grid.pictureH()
                    || camera.outputScale() != Ui.outputScale(this)) {
                state.resize(grid.cellW(), grid.pictureH(), Ui.outputScale(this));
            }
        }
        feed.refresh(cards);
        draw(cards);
        name(cards);
    }

    private void name(List<SubstrateCard> cards) {
        while (cells.size() < cards.size()) {
            LineUpCell cell = new LineUpCell(state);
            cells.add(cell);
            getChildren().add(cell);
        }
        for (int i = 0; i < cells.size(); i++) {
            LineUpCell cell = cells.get(i);
            cell.setVisible(i < cards.size());
            if (i < cards.size()) {
                SubstrateCard card = cards.get(i);
                cell.show(card, state.rack.scores.get().get(card.id()), card.equals(state.substrate.get()), grid);
                cell.resizeRelocate(grid.x(i), BAR_H + grid.y(i), grid.cellW(), grid.pictureH() + grid.captionH());
            }
        }
    }

    private void draw(List<SubstrateCard> cards) {
        GraphicsContext gc = canvas.getGraphicsContext2D();
        gc.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        Camera camera = state.camera.get();
        for (int i = 0; i < cards.size(); i++) {
            gc.save();
            // Whole device pixels, so that no picture is resampled.
            double s = camera.outputScale();
            gc.translate(Math.rint(grid.x(i) * s) / s, Math.rint((BAR_H + grid.y(i)) * s) / s);
            gc.beginPath();
            gc.rect(0, 0, grid.cellW(), grid.pictureH());
            gc.clip();
            draw(gc, camera, cards.get(i));
            gc.restore();
        }
    }

    private void draw(GraphicsContext gc, Camera camera, SubstrateCard card) {
        Box ground = state.groundOf(card);
        double s = camera.outputScale();
        gc.setFill(Color.rgb(card.argb() >> 16 & 255, card.argb() >> 8 & 255, card.argb() & 255));
        Box seen = camera.toView(ground);
        double x0 = camera.snap(seen.x0());
        double y0 = camera.snap(seen.y0());
        gc.fillRect(x0, y0, camera.snap(seen.x1()) - x0, camera.snap(seen.y1()) - y0);
        // From device pixels of the page to the view; every number is whole once the screen's scale is applied.
        gc.transform(
                camera.cos() / s,
                camera.sin() / s,
                -camera.sin() / s,
                camera.cos() / s,
                camera.originXDevice() / s,
                camera.originYDevice() / s);
        for (LineUpFeed.Picture picture : feed.drawing(card.id())) {
            PlateRequest r = picture.request();
            double scaled = camera.pxPerPt() / r.pxPerPt();
            gc.setImageSmoothing(scaled != 1);
            gc.drawImage(picture.image(), r.x0() * scaled, r.y0() * scaled, r.width() * scaled, r.height() * scaled);
        }
    }
}
