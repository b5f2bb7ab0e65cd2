package inkground.cases;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.PrintConditions;
import inkground.plate.InkMapping;
import inkground.plate.InkPlanes;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Makes the PDF file of a case, opens and renders it as the program does, and compares. */
final class CasePage {
    private static final int FIRST_OBJECT = 5;
    private static final Pattern REFERENCE = Pattern.compile("@([A-Za-z][A-Za-z0-9]*)");

    private final InkCase one;
    private final List<String> names;

    private CasePage(InkCase one) {
        this.one = one;
        this.names = List.copyOf(one.objects().keySet());
    }

    /** @return what is not as expected, one line each; empty where all is well */
    static List<String> faults(InkCase one, Path dir) throws IOException, Refusal {
        return new CasePage(one).faults(dir);
    }

    private List<String> faults(Path dir) throws IOException, Refusal {
        Path file = Files.createTempFile(dir, "case", ".pdf");
        Files.write(file, pdf());
        List<String> faults = new ArrayList<>();
        try (Artwork artwork = PdfArtwork.open(file, new Cancel(), Progress.NONE)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            InkMapping mapping = InkMapping.of(artwork.declaredColorants(1), list, PrintConditions.bundled("FOGRA39L"));
            Plate plate = new Plate(list, mapping);
            Set<Integer> layersOn = artwork.layers().stream()
                    .filter(l ->
                            one.layersOn() == null ? l.on() : one.layersOn().contains(l.name()))
                    .map(Layer::id)
                    .collect(Collectors.toSet());
            InkPlanes planes = plate.render(
                    PlateRequest.of(list.page().box(PageBox.MEDIA), 72, one.overprint(), layersOn),
                    new Cancel(),
                    Progress.NONE);
            if (!one.inexact()) {
                for (Approximation a : plate.approximations()) {
                    faults.add("not exact: " + a.message());
                }
            }
            one.expectations().forEach(e -> check(e, planes, faults));
        }
        return faults;
    }

    private void check(InkCase.Expectation expectation, InkPlanes planes, List<String> faults) {
        if (expectation instanceof InkCase.At at) {
            check(at, planes, faults);
            return;
        }
        InkCase.Same same = (InkCase.Same) expectation;
        for (int i = 0; i < planes.inks().size(); i++) {
            int a = at(planes, i, same.x1(), same.y1());
            int b = at(planes, i, same.x2(), same.y2());
            if (Math.abs(a - b) > same.tolerance()) {
                faults.add(planes.inks().get(i).name() + " is " + a + " at (" + same.x1() + ", " + same.y1() + ") but "
                        + b + " at (" + same.x2() + ", " + same.y2() + "): " + same.why());
            }
        }
    }

    private void check(InkCase.At at, InkPlanes planes, List<String> faults) {
        for (Map.Entry<String, InkCase.Span> wanted : at.inks().entrySet()) {
            int plane = plane(planes, wanted.getKey());
            int actual = plane < 0 ? 0 : at(planes, plane, at.x(), at.y());
            if (!wanted.getValue().holds(actual)) {
                faults.add(wanted.getKey() + " at (" + at.x() + ", " + at.y() + ") is " + actual
                        + (plane < 0 ? " (there is no such ink)" : "") + ", expected " + wanted.getValue() + ": "
                        + at.why());
            }
        }
        for (int i = 0; i < planes.inks().size() && !at.othersFree(); i++) {
            String name = planes.inks().get(i).name();
            int actual = at(planes, i, at.x(), at.y());
            if (actual != 0 && !at.inks().containsKey(name)) {
                faults.add(name + " at (" + at.x() + ", " + at.y() + ") is " + actual + ", expected none: " + at.why());
            }
        }
    }

    private static int plane(InkPlanes planes, String name) {
        return switch (name) {
            case "mark" -> planes.markPlane();
            case "inked" -> planes.inkedPlane();
            default -> planes.inks().indexOf(name);
        };
    }

    private static int at(InkPlanes planes, int plane, int x, int y) {
        return planes.get(plane, x, planes.height() - 1 - y);
    }

    // ---- the file ----

    private byte[] pdf() {
        List<String> objects = new ArrayList<>();
        objects.add("<< /Type /Catalog /Pages 2 0 R " + resolve(one.catalog()) + " >>");
        objects.add("<< /Type /Pages /Kids [3 0 R] /Count 1 >>");
        String contents = one.page().contains("/Contents") ? "" : "/Contents 4 0 R";
        objects.add("<< /Type /Page /Parent 2 0 R " + contents + " /MediaBox [0 0 " + one.width() + " " + one.height()
                + "] /Resources << " + resolve(one.resources()) + " >> " + resolve(one.page()) + " >>");
        objects.add(stream("", one.content()));
        for (InkCase.Body body : one.objects().values()) {
            String dictionary = resolve(body.dictionary());
            objects.add(body.data() == null ? dictionary : stream(dictionary, body.data()));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        put(out, "%PDF-2.0\n");
        StringBuilder table = new StringBuilder("0000000000 65535 f \n");
        for (int i = 0; i < objects.size(); i++) {
            table.append(String.format("%010d 00000 n \n", out.size()));
            put(out, i + 1 + " 0 obj\n" + objects.get(i) + "\nendobj\n");
        }
        int start = out.size();
        put(out, "xref\n0 " + (objects.size() + 1) + "\n" + table);
        put(out, "trailer\n<< /Size " + (objects.size() + 1) + " /Root 1 0 R >>\nstartxref\n" + start + "\n%%EOF\n");
        return out.toByteArray();
    }

    private String resolve(String text) {
        Matcher matcher = REFERENCE.matcher(text);
        return matcher.replaceAll(found -> {
            int i = names.indexOf(found.group(1));
            if (i < 0) {
                throw new IllegalArgumentException(one.place() + ": there is no object " + found.group(1));
            }
            return FIRST_OBJECT + i + " 0 R";
        });
    }

    private static String stream(String entries, String data) {
        return "<< " + entries + " /Length " + data.length() + " >>\nstream\n" + data + "\nendstream";
    }

    private static void put(ByteArrayOutputStream out, String text) {
        out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
    }
}
