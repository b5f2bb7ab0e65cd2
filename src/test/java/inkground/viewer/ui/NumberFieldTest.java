package inkground.viewer.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.ref.WeakReference;
import java.util.concurrent.TimeUnit;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** A number of the state, and the fields that show it. */
class NumberFieldTest extends ApplicationTest {
    private final DoubleProperty number = new SimpleDoubleProperty(0.25);

    @Test
    void aFieldFollowsTheNumberAndTheNumberWhatIsTyped() {
        interact(() -> {
            NumberField field = new NumberField(number, 0, 10, 2);
            assertThat(field.getText()).isEqualTo("0.25");
            System.gc(); // the field is held here, and so is what listens to the number
            number.set(1.5);
            assertThat(field.getText()).isEqualTo("1.50");
            field.setText("3,25");
            assertThat(number.get()).isEqualTo(3.25);
            field.setText("11");
            assertThat(number.get()).isEqualTo(3.25);
        });
    }

    @Test
    void aNumberDoesNotKeepTheFieldsThatShowedIt() throws Exception {
        WeakReference<?>[] gone = new WeakReference<?>[1];
        interact(() -> gone[0] = new WeakReference<>(new NumberField(number, 0, 10, 2)));
        WaitForAsyncUtils.waitFor(20, TimeUnit.SECONDS, () -> {
            System.gc();
            return gone[0].get() == null;
        });
        assertThat(number.get()).isEqualTo(0.25);
    }
}
