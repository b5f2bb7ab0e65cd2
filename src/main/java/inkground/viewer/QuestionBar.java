package inkground.viewer;

import inkground.viewer.state.Question;
import inkground.viewer.state.Question.Answer;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Asks over the surface what has to be decided, with the answers as buttons; the rest of the window stays usable. */
final class QuestionBar extends HBox {
    private final ViewerState state;

    QuestionBar(ViewerState state) {
        this.state = state;
        setId("question");
        getStyleClass().add("trouble");
        setAlignment(Pos.CENTER_LEFT);
        setMaxHeight(USE_PREF_SIZE);
        state.question.addListener((Observable o) -> ask());
        ask();
    }

    private void ask() {
        Question question = state.question.get();
        Ui.shown(this, question != null);
        getChildren().clear();
        if (question == null) {
            return;
        }
        Label words = Ui.label(question.words());
        words.setId("question-words");
        words.setWrapText(true);
        words.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(words, Priority.ALWAYS);
        getChildren().addAll(new FontIcon(Feather.HELP_CIRCLE), words);
        for (Answer answer : question.answers()) {
            getChildren().add(button(answer, getChildren().size() - 2));
        }
        getChildren().get(2).requestFocus();
    }

    private Button button(Answer answer, int number) {
        Button button = Ui.button("answer-" + number, answer.label(), answer.sentence(), () -> {
            state.question.set(null);
            answer.action().run();
        });
        button.getStyleClass().add("answer");
        return button;
    }
}
