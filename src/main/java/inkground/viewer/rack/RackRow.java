package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.Rack.Hanging;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/**
 * What hangs in the rack, from left to right. Only what is seen exists as nodes, and only whole cells are seen, so that no name
 * is cut off and a rack of thousands is as quick as one of ten.
 */
final class RackRow extends Region {
    private static final double GROUP_GAP = 16;
    private static final double CAPTION_Y = 5;
    private static final double CELL_Y = 25;
    private static final double RAIL_H = 3;
    /** Scrolling of one notch of a wheel. */
    private static final double NOTCH = 40;

    private final ViewerState state;
    private final Map<String, Region> live = new HashMap<>();
    private final Map<String, Label> captions = new HashMap<>();
    private final Region rail = new Region();
    private final Region thumb = new Region();
    private List<Item> items = List.of();
    private int first;
    private double scrolled;

    /** Something that hangs here: a substrate, or an ink that was found. */
    private record Item(String group, String key, SubstrateCard card, int plane) {}

    RackRow(ViewerState state) {
        this.state = state;
        setId("rack-row");
        getStyleClass().add("rack-row");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.LIST_VIEW);
        setAccessibleText("Papers and garments; Left and Right step, Space marks for the line-up");
        setMinWidth(0);
        rail.getStyleClass().add("rack-rail");
        thumb.getStyleClass().add("rack-thumb");
        getChildren().addAll(rail, thumb);
        setOnScroll(e -> scroll(e.getDeltaY() + e.getDeltaX()));
        state.rack.hung().addListener((Observable o) -> fill());
        state.page.addListener((Observable o) -> fill());
        state.rack.query.addListener((Observable o) -> fill());
        SetChangeListener<String> changed = c -> refresh();
        state.rack.favourites.addListener(changed);
        state.rack.marked.addListener(changed);
        state.rack.scores.addListener((Observable o) -> refresh());
        state.chosenInk.addListener((Observable o) -> refresh());
        state.following.pictured().addListener((Observable o) -> {
            reveal();
            refresh();
        });
        widthProperty().addListener((Observable o) -> reveal());
        fill();
    }

    private void fill() {
        List<Item> next = new ArrayList<>();
        for (int plane : state.finder.inks()) {
            next.add(new Item("Inks of the page", "ink " + plane, null, plane));
        }
        for (Hanging hanging : state.rack.hung()) {
            next.add(new Item(
                    hanging.group().label(), "substrate " + hanging.card().id(), hanging.card(), -1));
        }
        if (!next.equals(items)) {
            items = next;
            getChildren().removeAll(live.values());
            live.clear();
            first = Math.min(first, last0());
            reveal();
            requestLayout();
        }
    }

    private void refresh() {
        live.values().forEach(node -> {
            if (node instanceof RackCell cell) {
                cell.refresh();
            }
        });
    }

    private void scroll(double by) {
        scrolled += by;
        int cells = (int) (scrolled / NOTCH);
        scrolled -= cells * NOTCH;
        show(first - cells);
    }

    private void show(int wanted) {
        int next = Math.max(0, Math.min(last0(), wanted));
        if (next != first) {
            first = next;
            requestLayout();
        }
    }

    /** Brings the chosen substrate into view, with a neighbour on either side. */
    private void reveal() {
        for (int at = 0; at < items.size(); at++) {
            if (items.get(at).card() != null
                    && items.get(at).card().equals(state.following.pictured().get())) {
                if (at - 1 < first) {
                    show(at - 1);
                } else {
                    show(Math.max(first, firstWith(Math.min(items.size() - 1, at + 1))));
                }
                return;
            }
        }
    }

    /** @return the highest place to begin at so that everything after it is seen */
    private int last0() {
        return items.isEmpty() ? 0 : firstWith(items.size() - 1);
    }

    /** @return the lowest place to begin at so that the item is seen whole */
    private int firstWith(int at) {
        double room = getWidth() - RackCell.WIDTH;
        int from = at;
        while (from > 0 && room - RackCell.WIDTH - gap(from) >= 0) {
            room -= RackCell.WIDTH + gap(from);
            from--;
        }
        return from;
    }

    private double gap(int at) {
        return at > 0 && !items.get(at).group().equals(items.get(at - 1).group()) ? GROUP_GAP : 0;
    }

    @Override
    protected void layoutChildren() {
        Set<String> seen = new HashSet<>();
        Set<String> groups = new HashSet<>();
        double x = 0;
        int at = first;
        for (; at < items.size(); at++) {
            x += at == first ? 0 : gap(at);
            if (x + RackCell.WIDTH > getWidth() && at > first) {
                break;
            }
            Item item = items.get(at);
            Region cell = live.computeIfAbsent(item.key(), key -> hang(item));
            cell.resizeRelocate(snapPositionX(x), CELL_Y, RackCell.WIDTH, getHeight() - CELL_Y - RAIL_H - 3);
            seen.add(item.key());
            if (groups.add(item.group())) {
                Label caption = captions.computeIfAbsent(item.group(), this::caption);
                caption.autosize();
                caption.relocate(snapPositionX(x) + 4, CAPTION_Y);
            }
            x += RackCell.WIDTH;
        }
        live.entrySet().removeIf(entry -> {
            boolean gone = !seen.contains(entry.getKey());
            if (gone) {
                getChildren().remove(entry.getValue());
            }
            return gone;
        });
        captions.forEach((group, label) -> label.setVisible(groups.contains(group)));
        rail(at - first);
    }

    private void rail(int shown) {
        boolean more = shown < items.size();
        rail.setVisible(more);
        thumb.setVisible(more);
        double y = getHeight() - RAIL_H - 1;
        double perItem = getWidth() / Math.max(1, items.size());
        rail.resizeRelocate(0, y, getWidth(), RAIL_H);
        thumb.resizeRelocate(first * perItem, y, Math.max(8, shown * perItem), RAIL_H);
    }

    private Label caption(String group) {
        Label caption = Ui.label(group, "caption");
        getChildren().add(caption);
        return caption;
    }

    private Region hang(Item item) {
        Region node = item.card() != null ? new RackCell(state, item.card()) : ink(item.plane());
        getChildren().add(node);
        return node;
    }

    private Region ink(int plane) {
        InkCard ink = state.page.get().inks().get(plane);
        Label name = Ui.label(ink.ink().name(), "rack-name");
        name.setWrapText(true);
        name.setAlignment(Pos.TOP_CENTER);
        name.setMaxWidth(RackCell.WIDTH - 4);
        FontIcon drop = new FontIcon(Feather.DROPLET);
        drop.getStyleClass().add("ink-found-icon");
        VBox item = new VBox(drop, name);
        item.setId("ink-found-" + plane);
        item.getStyleClass().addAll("rack-item", "ink-found");
        item.setAccessibleRole(AccessibleRole.BUTTON);
        item.setAccessibleText("Ink " + ink.ink().name());
        item.setOnMouseClicked(e -> state.chosenInk.set(plane));
        return item;
    }
}
