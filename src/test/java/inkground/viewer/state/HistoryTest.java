package inkground.viewer.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.app.Arrangement;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HistoryTest {
    private final History history = new History();

    private void order(String... inks) {
        history.change("print in another order", a -> a.printing(List.of(inks)));
    }

    @Test
    void everyChangeIsTakenBackAndDoneAgainInOrder() {
        order("Red");
        order("Red", "Blue");
        history.undo();
        assertThat(history.get().printOrder()).containsExactly("Red");
        history.undo();
        assertThat(history.get()).isEqualTo(Arrangement.AS_FILED);
        history.undo();
        assertThat(history.get()).isEqualTo(Arrangement.AS_FILED);
        history.redo();
        history.redo();
        assertThat(history.get().printOrder()).containsExactly("Red", "Blue");
    }

    @Test
    void theChangesOfOneGestureAreOneStep() {
        for (double opacity : new double[] {0.2, 0.5, 0.9}) {
            history.change("opacity of Red", "drag 1", a -> a.withOpacity("Red", Optional.of(opacity)));
        }
        assertThat(history.get().opacities()).containsEntry("Red", 0.9);
        history.undo();
        assertThat(history.get().opacities()).isEmpty();
        history.redo();
        history.change("opacity of Red", "drag 1", a -> a.withOpacity("Red", Optional.of(0.1)));
        history.undo();
        assertThat(history.get().opacities()).containsEntry("Red", 0.9);
    }

    @Test
    void aChangeWithoutAGestureIsRefusedBeforeAnythingChanges() {
        order("Red");
        assertThatThrownBy(() -> history.change("opacity of Red", null, a -> a.printing(List.of("Blue"))))
                .isInstanceOf(NullPointerException.class)
                .hasMessageContaining("gesture");
        assertThat(history.get().printOrder()).containsExactly("Red");
        order("Red", "Blue");
        history.undo();
        assertThat(history.get().printOrder()).containsExactly("Red");
    }

    @Test
    void aNewChangeClosesTheWayForward() {
        order("Red");
        history.undo();
        order("Blue");
        assertThat(history.redoable().get()).isEmpty();
        history.redo();
        assertThat(history.get().printOrder()).containsExactly("Blue");
    }

    @Test
    void whatChangesNothingIsNoStep() {
        history.change("nothing", a -> a.over(Optional.empty()));
        assertThat(history.undoable().get()).isEmpty();
    }

    @Test
    void theWayBackIsBounded() {
        for (int i = 0; i < 2 * History.MOST_STEPS; i++) {
            order("Ink " + i);
        }
        for (int i = 0; i < 2 * History.MOST_STEPS; i++) {
            history.undo();
        }
        assertThat(history.get().printOrder()).containsExactly("Ink " + (History.MOST_STEPS - 1));
    }
}
