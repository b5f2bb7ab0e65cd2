package inkground.artwork.svg;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;

class SvgContractTest extends ArtworkContract {
    private static final String OPEN = "<svg xmlns='http://www.w3.org/2000/svg' width='50mm' height='30mm'>";

    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return SvgArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() {
        return (OPEN
                        + "<defs><linearGradient id='g'><stop stop-color='red'/><stop offset='1' stop-color='blue'/>"
                        + "</linearGradient><clipPath id='c'><circle cx='50' cy='50' r='40'/></clipPath></defs>"
                        + "<style>.oar{stroke:#036;stroke-width:2px;mix-blend-mode:multiply}</style>"
                        + "<rect width='90' height='60' fill='url(#g)' clip-path='url(#c)'/>"
                        + "<path class='oar' d='M10 10 C 20 20 40 0 60 50 z'/><text x='5' y='50'>Heron Reach</text></svg>")
                .getBytes(StandardCharsets.UTF_8);
    }

    @Override
    protected String ending() {
        return ".svg";
    }

    @Override
    protected Map<String, byte[]> hostile() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        StringBuilder entities = new StringBuilder("<!DOCTYPE svg [<!ENTITY a0 'oar'>");
        for (int i = 1; i < 12; i++) {
            entities.append("<!ENTITY a")
                    .append(i)
                    .append(" '")
                    .append(("&a" + (i - 1) + ";").repeat(10))
                    .append("'>");
        }
        files.put("entities inside entities", text(entities + "]>" + OPEN + "<text>&a11;</text></svg>"));
        files.put(
                "one long entity, often",
                text("<!DOCTYPE svg [<!ENTITY a '" + "x".repeat(10_000) + "'>]>" + OPEN + "&a;".repeat(1000)
                        + "</svg>"));
        files.put("a use of itself", text(OPEN + "<g id='a'><use href='#a'/></g></svg>"));
        files.put(
                "two uses of each other",
                text(OPEN + "<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g></svg>"));
        StringBuilder doubled = new StringBuilder(OPEN + "<g id='u0'><rect width='1' height='1'/></g>");
        for (int i = 1; i < 40; i++) {
            doubled.append("<g id='u" + i + "'>" + ("<use href='#u" + (i - 1) + "'/>").repeat(2) + "</g>");
        }
        files.put("uses that double forty times", text(doubled + "</svg>"));
        files.put("very deep nesting", text(OPEN + "<g>".repeat(100_000) + "</g>".repeat(100_000) + "</svg>"));
        files.put(
                "a page of a kilometre",
                text("<svg xmlns='http://www.w3.org/2000/svg' width='1000000mm' height='5'/>"));
        files.put("a page of no size", text("<svg xmlns='http://www.w3.org/2000/svg' width='0' height='5'/>"));
        files.put("not SVG", text("<html><body/></html>"));
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(packed)) {
            byte[] spaces = " ".repeat(1 << 20).getBytes(StandardCharsets.US_ASCII);
            for (int i = 0; i < 200; i++) {
                zip.write(spaces);
            }
        }
        files.put("a packed file of 200 MB", packed.toByteArray());
        return files;
    }

    private static byte[] text(String svg) {
        return svg.getBytes(StandardCharsets.UTF_8);
    }
}
