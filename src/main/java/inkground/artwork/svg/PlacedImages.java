package inkground.artwork.svg;

import inkground.artwork.image.Frame;
import inkground.artwork.image.RasterFile;
import inkground.base.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.w3c.dom.Element;

/**
 * The pictures an SVG file places: held inside it as data, or lying in the file's own folder or below. Nothing else is
 * opened: no other folder, no link that leads out, no address on a network.
 */
final class PlacedImages {
    private static final int MAX_DATA_CHARS = 128 << 20;

    private final Path folder;
    private final Reading reading;
    private final Notes notes;
    private final Set<Path> linked;
    private final Map<String, Optional<Placed>> known = new HashMap<>();

    /**
     * @param file the SVG file
     * @param linked receives the files that are shown, in the SVG file's own folder
     */
    PlacedImages(Path file, Reading reading, Set<Path> linked) {
        this.linked = linked;
        this.folder = file.toAbsolutePath().normalize().getParent();
        this.reading = reading;
        this.notes = reading.notes;
        known.put(real(file.toAbsolutePath().normalize()).toString(), Optional.of(Drawing.beingRead(reading.name)));
    }

    /** @return the SVG file's own folder */
    Path folder() {
        return folder;
    }

    /**
     * @param address as the image element states it
     * @param from folder that it starts from
     * @return what to show, or null when there is nothing; the notes then say why
     */
    Placed get(String address, Path from, Element where) {
        boolean data = address.regionMatches(true, 0, "data:", 0, 5);
        Path file = data ? null : file(address, from, where);
        if (!data && file == null) {
            return null;
        }
        String key = data ? address : file.toString();
        if (!known.containsKey(key)) {
            known.put(key, Optional.ofNullable(read(address, from, file, where)));
        }
        return known.get(key).orElse(null);
    }

    private Placed read(String address, Path from, Path file, Element where) {
        try {
            return file == null ? ofData(address, from, where) : ofFile(file, where);
        } catch (Refusal e) {
            notes.add("a placed picture that cannot be read: " + e.getMessage(), "without it", where);
        } catch (IOException | IllegalArgumentException e) {
            notes.add("a placed picture that cannot be read", "without it", where);
        }
        return null;
    }

    private Placed ofData(String address, Path from, Element where) throws IOException, Refusal {
        int comma = address.indexOf(',');
        if (comma < 0 || address.length() > MAX_DATA_CHARS) {
            throw new IllegalArgumentException("no data");
        }
        String type = address.substring(5, comma).toLowerCase(Locale.ROOT);
        String body = address.substring(comma + 1);
        byte[] data = type.endsWith(";base64")
                ? Base64.getMimeDecoder().decode(new String(bytes(body), StandardCharsets.ISO_8859_1))
                : bytes(body);
        String name = "a picture inside the file";
        return type.startsWith("image/svg")
                ? drawing(new ByteArrayInputStream(data), from, name)
                : picture(RasterFile.read(data, name), where);
    }

    /** @return what an address holds: RFC 3986 §2.1; what should have been escaped counts as UTF-8 */
    private static byte[] bytes(String escaped) {
        String octets = new String(escaped.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
        return URLDecoder.decode(octets.replace("+", "%2B"), StandardCharsets.ISO_8859_1)
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    private Placed ofFile(Path file, Element where) throws IOException, Refusal {
        String name = file.getFileName().toString();
        Placed placed;
        if (name.toLowerCase(Locale.ROOT).matches(".*\\.svgz?")) {
            try (InputStream in = Files.newInputStream(file)) {
                placed = drawing(in, file.getParent(), name);
            }
        } else {
            placed = picture(RasterFile.read(file), where);
        }
        linked.add(folder.resolve(real(folder).relativize(file)));
        notes.add("a linked picture (" + name + ")", "read from the file's own folder", where);
        return placed;
    }

    private Placed picture(List<Frame> frames, Element where) {
        Frame frame = frames.get(0);
        for (Frame.Note note : frame.notes()) {
            notes.add(note.feature(), note.shownAs(), where);
        }
        return new Placed.Picture(frame.source());
    }

    private Placed drawing(InputStream in, Path from, String name) throws IOException, Refusal {
        SVGOMDocument document = SvgXml.parse(reading.unpack(in), name, reading);
        UseCount.check(document.getDocumentElement(), reading);
        return new Drawing(document, PageSize.of(document.getDocumentElement(), name), from, name);
    }

    /** @return the file at an address, its links followed; null when there is none that may be read */
    private Path file(String address, Path from, Element where) {
        Path file = null;
        try {
            String decoded =
                    URLDecoder.decode(address.replaceFirst("#.*", "").replace("+", "%2B"), StandardCharsets.UTF_8);
            if (!decoded.contains(":") && !Path.of(decoded).isAbsolute()) {
                file = from.resolve(decoded).normalize();
            }
        } catch (IllegalArgumentException e) {
            file = null; // no path
        }
        boolean inside = file != null && file.startsWith(folder);
        Path real = inside && Files.isRegularFile(file) ? real(file) : null;
        if (!inside || real != null && !real.startsWith(real(folder))) {
            notes.add("a picture outside the file's own folder", "without it", where);
            return null;
        }
        if (real == null) {
            notes.add("a linked picture that is not there (" + file.getFileName() + ")", "without it", where);
        }
        return real;
    }

    private static Path real(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            return path; // gone since: it cannot be read either
        }
    }
}
