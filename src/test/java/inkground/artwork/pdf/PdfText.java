package inkground.artwork.pdf;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes small PDF files by hand: one page whose entries, content and further objects a test states as text. */
final class PdfText {
    /** Number of the first object that {@link #object} adds. */
    static final int FIRST = 5;

    private final List<String> extra = new ArrayList<>();
    private String page = "/MediaBox [0 0 200 100]";
    private String resources = "";
    private String catalog = "";
    private String trailer = "";
    private String content = "";

    PdfText page(String entries) {
        this.page = entries;
        return this;
    }

    PdfText resources(String entries) {
        this.resources = entries;
        return this;
    }

    PdfText catalog(String entries) {
        this.catalog = entries;
        return this;
    }

    PdfText content(String operators) {
        this.content = operators;
        return this;
    }

    /** Adds an object; the first becomes 5 0 R, the next 6 0 R and so on. */
    PdfText object(String body) {
        extra.add(body);
        return this;
    }

    /** Adds a stream object; {@code data} holds one byte per character. */
    PdfText stream(String entries, String data) {
        return object(streamOf(entries, data));
    }

    PdfText stream(String entries, byte[] data) {
        return stream(entries, new String(data, StandardCharsets.ISO_8859_1));
    }

    private static String streamOf(String entries, String data) {
        return "<< " + entries + " /Length " + data.length() + " >>\nstream\n" + data + "\nendstream";
    }

    Path write(Path dir) throws IOException {
        List<String> objects = new ArrayList<>();
        objects.add("<< /Type /Catalog /Pages 2 0 R " + catalog + " >>");
        objects.add("<< /Type /Pages /Kids [3 0 R] /Count 1 >>");
        objects.add("<< /Type /Page /Parent 2 0 R /Contents 4 0 R /Resources << " + resources + " >> " + page + " >>");
        objects.add(streamOf("", content));
        objects.addAll(extra);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        put(out, "%PDF-1.7\n");
        List<Integer> offsets = new ArrayList<>();
        for (int i = 0; i < objects.size(); i++) {
            offsets.add(out.size());
            put(out, (i + 1) + " 0 obj\n" + objects.get(i) + "\nendobj\n");
        }
        int start = out.size();
        put(out, "xref\n0 " + (objects.size() + 1) + "\n0000000000 65535 f \n");
        for (int offset : offsets) {
            put(out, String.format("%010d 00000 n \n", offset));
        }
        put(
                out,
                "trailer\n<< /Size " + (objects.size() + 1) + " /Root 1 0 R " + trailer + " >>\nstartxref\n" + start
                        + "\n%%EOF\n");
        Path file = Files.createTempFile(dir, "page", ".pdf");
        Files.write(file, out.toByteArray());
        return file;
    }

    private static void put(ByteArrayOutputStream out, String text) {
        out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Records with small limits, so that a test of them is quick. */
    DisplayList record(Path dir, Limits limits) throws IOException, Refusal {
        return PdfArtwork.open(write(dir), limits, new Cancel(), Progress.NONE).record(1, new Cancel(), Progress.NONE);
    }

    Artwork open(Path dir) throws IOException, Refusal {
        return PdfText.openFile(write(dir));
    }

    static Artwork openFile(Path file) throws Refusal {
        return PdfArtwork.open(file, new Cancel(), Progress.NONE);
    }

    /** Records the page; image sources of the list stay readable. */
    DisplayList record(Path dir) throws IOException, Refusal {
        return open(dir).record(1, new Cancel(), Progress.NONE);
    }

    List<Op> ops(Path dir) throws IOException, Refusal {
        DisplayList list = record(dir);
        if (!list.approximations().isEmpty()) {
            throw new AssertionError("not exact: " + messages(list));
        }
        return list.ops();
    }

    <T extends Op> T only(Class<T> type, Path dir) throws IOException, Refusal {
        List<Op> ops = ops(dir);
        if (ops.size() != 1) {
            throw new AssertionError("expected one operation, found " + ops);
        }
        return type.cast(ops.get(0));
    }

    static List<String> messages(DisplayList list) {
        return list.approximations().stream().map(Approximation::message).toList();
    }
}
