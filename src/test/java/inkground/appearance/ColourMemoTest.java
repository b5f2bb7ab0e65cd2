package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class ColourMemoTest {
    private static final int RED = 0xffff0000;

    private static StackModel model() {
        return new StackModel(Stack.of(Samples.FOGRA_PAPER, Samples.process(), Samples.FOGRA));
    }

    @Test
    void aVectorIsRememberedUntilAnotherTakesItsSlot() {
        StackModel model = model();
        ColourMemo memo = ColourMemo.of(model);
        long[] some = new long[3 * model.words()];
        some[model.words()] = 7;
        int slot = memo.slot(some, model.words());
        assertThat(memo.colour(slot, some, model.words())).isZero();
        assertThat(memo.keep(slot, some, model.words(), RED)).isEqualTo(RED);
        assertThat(memo.colour(slot, some, model.words())).isEqualTo(RED);
        assertThat(ColourMemo.of(model).colour(slot, some, model.words()))
                .as("the next tile")
                .isEqualTo(RED);
        assertThat(memo.colour(slot, some, 0)).as("another vector").isZero();
        memo.keep(slot, some, 0, 0xff00ff00);
        assertThat(memo.colour(slot, some, model.words())).isZero();
    }

    @Test
    void anotherStackOrThreadKnowsNothingOfIt() throws InterruptedException {
        StackModel model = model();
        long[] vector = new long[model.words()];
        vector[0] = 7;
        ColourMemo memo = ColourMemo.of(model);
        int slot = memo.slot(vector, 0);
        memo.keep(slot, vector, 0, RED);
        assertThat(ColourMemo.of(model()).colour(slot, vector, 0)).isZero();
        assertThat(memo.colour(slot, vector, 0))
                .as("whoever still paints on the first stack")
                .isEqualTo(RED);
        AtomicReference<ColourMemo> other = new AtomicReference<>();
        Thread thread = new Thread(() -> other.set(ColourMemo.of(model)));
        thread.start();
        thread.join();
        assertThat(other.get().colour(slot, vector, 0)).isZero();
    }
}
