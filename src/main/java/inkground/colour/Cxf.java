package inkground.colour;

import inkground.base.Refusal;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Named colours of a CxF 3 document (ISO 17972): each {@code Object} with a reflectance spectrum or a {@code ColorCIELab}. Read
 * without document types, external entities or anything else from outside the file. Spectra come first, since Lab may be of
 * another illuminant.
 */
public final class Cxf {
    /** Most named colours. */
    public static final int MAX_OBJECTS = 20_000;

    private static final int MAX_VALUES = 1000;
    private static final double LEAST_NM = 300;
    private static final double MOST_NM = 900;

    private final String file;
    private final XMLStreamReader in;
    private final Map<String, double[]> ranges = new HashMap<>(); // of each colour specification: start and step in nm
    private final List<Raw> raws = new ArrayList<>();

    private Cxf(XMLStreamReader in, String file) {
        this.in = in;
        this.file = file;
    }

    /**
     * A named colour.
     *
     * @param name of the object
     * @param lab absolute, D50
     * @param spectral whether it comes from a spectrum
     */
    public record Sample(String name, Lab lab, boolean spectral) {}

    // Colour specifications may stand after the objects, so that wavelengths are known only at the end.
    private record Raw(String name, double[] spectrum, String specification, double startNm, Lab lab) {}

    /**
     * @param bytes of the document
     * @param file its name, for messages
     * @return its named colours, in file order
     * @throws Refusal naming the file, and the object or line
     */
    public static List<Sample> read(byte[] bytes, String file) throws Refusal {
        XMLInputFactory factory = XMLInputFactory.newFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        try {
            XMLStreamReader in = factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
            try {
                return new Cxf(in, file).samples();
            } finally {
                in.close();
            }
        } catch (XMLStreamException e) {
            String line =
                    e.getLocation() == null ? "" : ", line " + e.getLocation().getLineNumber();
            throw new Refusal(file + line + " is not well-formed XML. Export the CxF file again.", e);
        }
    }

    private List<Sample> samples() throws XMLStreamException, Refusal {
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT) {
                if (in.getLocalName().equals("Object")) {
                    object();
                } else if (in.getLocalName().equals("ColorSpecification")) {
                    specification();
                }
            }
        }
        List<Sample> out = new ArrayList<>();
        for (Raw raw : raws) {
            out.add(sample(raw));
        }
        if (out.isEmpty()) {
            throw new Refusal(
                    file + " holds no named colour with a reflectance spectrum or Lab value. Is it a CxF 3 file?");
        }
        return out;
    }

    private Sample sample(Raw raw) throws Refusal {
        if (raw.spectrum() == null) {
            return new Sample(raw.name(), raw.lab(), false);
        }
        double[] range = ranges.getOrDefault(raw.specification(), new double[] {Double.NaN, Spectra.STEP_NM});
        double start = Double.isNaN(raw.startNm()) ? range[0] : raw.startNm();
        double end = start + range[1] * (raw.spectrum().length - 1);
        if (!(start >= LEAST_NM && end <= MOST_NM && range[1] > 0)) {
            throw new Refusal(
                    file + ", object '" + raw.name() + "': its spectrum states no wavelengths between 300 and 900 nm"
                            + " (StartWL, Increment). Export it again with them.");
        }
        return new Sample(raw.name(), Spectra.toLab(Spectra.resample(start, range[1], raw.spectrum())), true);
    }

    private void specification() throws XMLStreamException, Refusal {
        String id = in.getAttributeValue(null, "Id");
        while (!ends("ColorSpecification")) {
            if (in.isStartElement() && in.getLocalName().equals("WavelengthRange")) {
                double start = number(in.getAttributeValue(null, "StartWL"), "StartWL");
                double step = number(in.getAttributeValue(null, "Increment"), "Increment");
                ranges.put(id == null ? "" : id, new double[] {start, step});
            }
        }
    }

    private void object() throws XMLStreamException, Refusal {
        String name = in.getAttributeValue(null, "Name");
        double[] spectrum = null;
        String specification = "";
        double start = Double.NaN;
        Lab lab = null;
        while (!ends("Object")) {
            if (!in.isStartElement()) {
                continue;
            }
            if (in.getLocalName().equals("ReflectanceSpectrum") && spectrum == null) {
                String of = in.getAttributeValue(null, "ColorSpecification");
                specification = of == null ? "" : of;
                String from = in.getAttributeValue(null, "StartWL");
                start = from == null ? Double.NaN : number(from, "StartWL");
                spectrum = values(in.getElementText());
            } else if (in.getLocalName().equals("ColorCIELab") && lab == null) {
                lab = lab();
            }
        }
        if (name != null && !name.isBlank() && (spectrum != null || lab != null)) {
            raws.add(new Raw(name, spectrum, specification, start, lab));
        }
        if (raws.size() > MAX_OBJECTS) {
            throw new Refusal(file + " holds more than " + MAX_OBJECTS + " colours, the limit.");
        }
    }

    private Lab lab() throws XMLStreamException, Refusal {
        double[] out = new double[3];
        int found = 0;
        while (!ends("ColorCIELab")) {
            int at = in.isStartElement() ? "LAB".indexOf(in.getLocalName()) : -1;
            if (at >= 0 && in.getLocalName().length() == 1) {
                out[at] = number(in.getElementText(), "ColorCIELab");
                found |= 1 << at;
            }
        }
        if (found != 7 || !(out[0] >= -1 && out[0] <= 130 && Math.abs(out[1]) <= 200 && Math.abs(out[2]) <= 200)) {
            throw new Refusal(where() + ": ColorCIELab needs L, A and B in their usual ranges.");
        }
        return new Lab(out[0], out[1], out[2]);
    }

    /** Goes on by one event. */
    private boolean ends(String element) throws XMLStreamException {
        in.next();
        return in.isEndElement() && in.getLocalName().equals(element);
    }

    private double[] values(String text) throws Refusal {
        String[] words = text.strip().split("\\s+");
        if (words.length > MAX_VALUES || words.length < 2) {
            throw new Refusal(where() + ": a spectrum of " + words.length + " values; usual are 31 to 400.");
        }
        double[] out = new double[words.length];
        for (int i = 0; i < words.length; i++) {
            out[i] = number(words[i], "ReflectanceSpectrum");
            if (!(out[i] >= -0.1 && out[i] <= 3)) {
                throw new Refusal(where() + ": a reflectance of " + out[i] + "; they lie between 0 and 1.");
            }
        }
        return out;
    }

    private double number(String text, String what) throws Refusal {
        try {
            return Double.parseDouble(String.valueOf(text).strip());
        } catch (NumberFormatException e) {
            throw new Refusal(where() + ": " + what + " '" + text + "' is no number.", e);
        }
    }

    private String where() {
        return file + ", line " + in.getLocation().getLineNumber();
    }
}
