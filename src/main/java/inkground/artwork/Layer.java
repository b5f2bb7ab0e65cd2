package inkground.artwork;

/**
 * An optional content group of the file.
 *
 * @param id number within the artwork, from 0
 * @param name what the user calls it
 * @param on whether it prints by the file's default configuration
 */
public record Layer(int id, String name, boolean on) {}
