package inkground.viewer.state;

import java.util.List;

/**
 * Something that the user has to decide before the program goes on; shown where the eye is. Escape means: leave all as it is.
 *
 * @param words what is asked, one or two sentences
 * @param answers what can be done, the likeliest first
 */
public record Question(String words, List<Answer> answers) {
    /** Copies the list. */
    public Question {
        answers = List.copyOf(answers);
    }

    /**
     * One answer.
     *
     * @param label on its button, a verb first
     * @param sentence what will happen, for the tooltip
     * @param action does it, on the window's thread
     */
    public record Answer(String label, String sentence, Runnable action) {}
}
