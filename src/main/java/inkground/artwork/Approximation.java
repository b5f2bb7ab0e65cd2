package inkground.artwork;

/**
 * Something on a page that is not shown exactly.
 *
 * @param feature what, in a few words, such as "a mesh shading"
 * @param shownAs what is shown instead, such as "its mean colour"
 * @param origin where; null when it concerns the whole page
 */
public record Approximation(String feature, String shownAs, Origin origin) {
    /** @return one line for the user */
    public String message() {
        return "this page uses " + feature + ", shown approximately: " + shownAs;
    }
}
