package inkground.artwork;

/**
 * Where an operation comes from, for pointing at it.
 *
 * @param object what the file calls the object that holds it, such as "page" or "form Fm1 at operator 12 in page"
 * @param place running number of the operator in that object's content, from 0
 * @param visibility the layer condition under which it shows
 */
public record Origin(String object, int place, Visibility visibility) {}
