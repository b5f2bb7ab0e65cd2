package inkground.artwork.svg;

import inkground.artwork.image.Frame;
import inkground.artwork.image.RasterFile;
import inkground.base.Refusal;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.w3c.dom.Element;

/**
 * The pictures an SVG file places: held inside it as data, or lying in the file's own folder or below. Nothing else is
 * opened: no other folder, no link that leads out, no address on a network.
 */
final class PlacedImages {
    private static final int MAX_DATA_CHARS = 128 << 20;

    private final Path folder;
    private final Notes notes;
    private final Set<Path> linked;
    private final Map<String, Frame> known = new HashMap<>();

    /**
     * @param file the SVG file
     * @param linked receives the files that are shown
     */
    PlacedImages(Path file, Notes notes, Set<Path> linked) {
        this.linked = linked;
        this.folder = file.toAbsolutePath().getParent();
        this.notes = notes;
    }

    /** @return the picture, or null when there is none to show; the notes then say why */
    Frame get(String address, Element where) {
        if (known.containsKey(address)) {
            return known.get(address);
        }
        Frame frame = null;
        try {
            frame = address.regionMatches(true, 0, "data:", 0, 5) ? ofData(address, where) : ofFile(address, where);
        } catch (Refusal e) {
            notes.add("a placed picture that cannot be read: " + e.getMessage(), "without it", where);
        } catch (IOException | IllegalArgumentException e) {
            notes.add("a placed picture that cannot be read", "without it", where);
        }
        if (frame != null) {
            for (Frame.Note note : frame.notes()) {
                notes.add(note.feature(), note.shownAs(), where);
            }
        }
        known.put(address, frame);
        return frame;
    }

    private Frame ofData(String address, Element where) throws Refusal {
        int comma = address.indexOf(',');
        if (comma < 0 || address.length() > MAX_DATA_CHARS) {
            throw new IllegalArgumentException("no data");
        }
        String type = address.substring(5, comma).toLowerCase(Locale.ROOT);
        if (type.startsWith("image/svg")) {
            notes.add("a placed SVG picture", "without it", where);
            return null;
        }
        String body = address.substring(comma + 1);
        byte[] data = type.endsWith(";base64")
                ? Base64.getMimeDecoder().decode(URLDecoder.decode(body.replace("+", "%2B"), StandardCharsets.UTF_8))
                : URLDecoder.decode(body.replace("+", "%2B"), StandardCharsets.ISO_8859_1)
                        .getBytes(StandardCharsets.ISO_8859_1);
        return RasterFile.read(data, "a picture inside the file").get(0);
    }

    private Frame ofFile(String address, Element where) throws IOException, Refusal {
        String decoded = URLDecoder.decode(address.replace("+", "%2B"), StandardCharsets.UTF_8);
        Path file;
        try {
            file = folder.resolve(decoded).normalize();
        } catch (InvalidPathException e) {
            file = null;
        }
        boolean inside = file != null
                && !decoded.contains(":")
                && file.startsWith(folder.normalize())
                && !Path.of(decoded).isAbsolute();
        if (inside && Files.isRegularFile(file)) {
            inside = file.toRealPath().startsWith(folder.toRealPath());
        }
        if (!inside) {
            notes.add("a picture outside the file's own folder", "without it", where);
            return null;
        }
        if (!Files.isRegularFile(file)) {
            notes.add("a linked picture that is not there (" + file.getFileName() + ")", "without it", where);
            return null;
        }
        if (file.getFileName().toString().toLowerCase(Locale.ROOT).matches(".*\\.svgz?")) {
            notes.add("a placed SVG picture", "without it", where);
            return null;
        }
        Frame frame = RasterFile.read(file.toRealPath()).get(0);
        linked.add(file);
        notes.add("a linked picture (" + file.getFileName() + ")", "read from the file's own folder", where);
        return frame;
    }
}
