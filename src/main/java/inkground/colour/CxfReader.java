package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.Cxf.Sample;
import inkground.colour.Cxf.SpotInk;
import inkground.colour.Cxf.Tint;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads CxF 3 in one pass; what refers to something that stands further down is put together at the end. */
final class CxfReader {
    private static final int MAX_VALUES = 1000;
    // A spectrum that ends inside this range leaves out light that colours are made of.
    private static final double MUST_START_NM = 420;
    private static final double MUST_END_NM = 680;
    private static final double LEAST_NM = 200;
    private static final double MOST_NM = 1200;
    private static final double MOST_STEP_NM = 20;

    private final String file;
    private final XMLStreamReader in;
    private final Map<String, Specification> specifications = new HashMap<>();
    private final List<Measured> objects = new ArrayList<>();
    private final List<Characterisation> inks = new ArrayList<>();

    private CxfReader(XMLStreamReader in, String file) {
        this.in = in;
        this.file = file;
    }

    /** A colour specification: what is not stated is NaN or empty. */
    private record Specification(
            double startNm, double stepNm, String illuminant, String observer, String type, String condition) {
        static final Specification NONE = new Specification(Double.NaN, Double.NaN, "", "", "", "");
    }

    private record Spectrum(String name, String specification, double startNm, double stepNm, double[] values) {}

    /** An object as it stands in the file. */
    private record Measured(String id, String name, List<Spectrum> spectra, Lab lab, String labSpecification) {}

    /** A reference from an ink's tint to an object, and to one of its spectra by name. */
    private record Reference(double tint, boolean black, String object, String spectrum) {}

    private record Characterisation(String name, List<Reference> references) {}

    static Cxf read(byte[] bytes, String file) throws Refusal {
        XMLInputFactory factory = XMLInputFactory.newFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        try {
            XMLStreamReader in = factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
            try {
                return new CxfReader(in, file).document();
            } finally {
                in.close();
            }
        } catch (XMLStreamException e) {
            String line =
                    e.getLocation() == null ? "" : ", line " + e.getLocation().getLineNumber();
            throw new Refusal(file + line + " is not well-formed XML. Export the CxF file again.", e);
        }
    }

    private Cxf document() throws XMLStreamException, Refusal {
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT) {
                switch (in.getLocalName()) {
                    case "Object" -> object();
                    case "ColorSpecification" -> specification();
                    case "SpotInkCharacterisation" -> characterisation();
                    default -> {} // everything else only holds these
                }
            }
        }
        List<SpotInk> spotInks = spotInks();
        Set<String> used = new HashSet<>();
        inks.forEach(ink -> ink.references().forEach(r -> used.add(r.object())));
        List<Sample> samples = new ArrayList<>();
        for (Measured object : objects) {
            boolean named = object.name() != null && !object.name().isBlank();
            if (named && !used.contains(object.id())) {
                Tint tint = tint(object, Double.NaN, "");
                samples.add(new Sample(object.name(), tint.lab(), tint.reflectance() != null, tint.condition()));
            }
        }
        if (samples.isEmpty() && spotInks.isEmpty()) {
            throw new Refusal(
                    file + " holds no named colour with a reflectance spectrum or Lab value. Is it a CxF 3 file?");
        }
        return new Cxf(samples, spotInks);
    }

    private List<SpotInk> spotInks() throws Refusal {
        Map<String, Measured> byId = new HashMap<>();
        objects.forEach(o -> byId.putIfAbsent(o.id(), o));
        Map<String, SpotInk> out = new LinkedHashMap<>();
        for (Characterisation ink : inks) {
            List<Tint> onSubstrate = new ArrayList<>();
            List<Tint> overBlack = new ArrayList<>();
            for (Reference reference : ink.references()) {
                Measured object = byId.get(reference.object());
                if (object == null) {
                    throw new Refusal(file + ", ink '" + ink.name() + "': its ObjectRef '" + reference.object()
                            + "' names no object with a reflectance spectrum or Lab value. Export it again.");
                }
                (reference.black() ? overBlack : onSubstrate).add(tint(object, reference.tint(), reference.spectrum()));
            }
            Comparator<Tint> byTint = Comparator.comparingDouble(Tint::tint);
            onSubstrate.sort(byTint);
            overBlack.sort(byTint);
            requireSolid(ink.name(), onSubstrate, "on its substrate");
            if (!overBlack.isEmpty()) {
                requireSolid(ink.name(), overBlack, "over black");
            }
            if (out.put(ink.name(), new SpotInk(ink.name(), onSubstrate, overBlack)) != null) {
                throw new Refusal(file + " characterises the ink '" + ink.name() + "' twice. Remove one of them.");
            }
        }
        return List.copyOf(out.values());
    }

    private void requireSolid(String ink, List<Tint> tints, String where) throws Refusal {
        if (tints.isEmpty() || tints.get(tints.size() - 1).tint() != 1) {
            throw new Refusal(file + ", ink '" + ink + "': it has no Measurement of TintLevel 100 " + where
                    + ", so its solid is not known. Export it again with the solid.");
        }
        for (int i = 1; i < tints.size(); i++) {
            if (tints.get(i).tint() == tints.get(i - 1).tint()) {
                throw new Refusal(file + ", ink '" + ink + "': TintLevel "
                        + 100 * tints.get(i).tint() + " is there twice " + where + ". Remove one of them.");
            }
        }
    }

    private Tint tint(Measured object, double tint, String spectrumName) throws Refusal {
        for (Spectrum spectrum : object.spectra()) {
            boolean only = object.spectra().size() == 1 || spectrumName.isEmpty();
            if (only || spectrumName.equals(spectrum.name())) {
                Specification spec = specifications.getOrDefault(spectrum.specification(), Specification.NONE);
                double[] reflectance = resampled(object, spectrum, spec);
                return new Tint(tint, reflectance, Spectra.toLab(reflectance), spec.condition());
            }
        }
        if (object.lab() == null) {
            throw new Refusal(where(object) + ": it has no spectrum named '" + spectrumName + "'. Export it again.");
        }
        Specification spec = specifications.getOrDefault(object.labSpecification(), Specification.NONE);
        requireReflected(object, spec);
        requireD50(object, spec);
        return new Tint(tint, null, object.lab(), spec.condition());
    }

    private double[] resampled(Measured object, Spectrum spectrum, Specification spec) throws Refusal {
        requireReflected(object, spec);
        double start = Double.isNaN(spectrum.startNm()) ? spec.startNm() : spectrum.startNm();
        double stated = Double.isNaN(spectrum.stepNm()) ? spec.stepNm() : spectrum.stepNm();
        double step = Double.isNaN(stated) ? Spectra.STEP_NM : stated;
        double end = start + step * (spectrum.values().length - 1);
        if (!(start >= LEAST_NM && end <= MOST_NM && step > 0)) {
            throw new Refusal(where(object) + ": its ReflectanceSpectrum states no usable wavelengths (StartWL " + start
                    + ", Increment " + stated + ", in nm). Export it again with them.");
        }
        if (step > MOST_STEP_NM) {
            throw new Refusal(where(object) + ": its Increment is " + step + " nm; more than " + MOST_STEP_NM
                    + " is too coarse for a colour. Export it in steps of 10 nm.");
        }
        if (start > MUST_START_NM || end < MUST_END_NM) {
            throw new Refusal(where(object) + ": its spectrum goes from " + start + " (StartWL) to " + end
                    + " nm; a colour needs at least " + MUST_START_NM + " to " + MUST_END_NM
                    + ". Export the whole range, or Lab for D50.");
        }
        return Spectra.resample(start, step, spectrum.values());
    }

    private void requireReflected(Measured object, Specification spec) throws Refusal {
        String type = spec.type().toLowerCase(Locale.ROOT);
        if (type.contains("transmi") || type.contains("emissi")) {
            throw new Refusal(where(object) + ": its MeasurementType is " + spec.type()
                    + "; the colour of a print is measured in reflectance. Export such measurements.");
        }
    }

    private void requireD50(Measured object, Specification spec) throws Refusal {
        boolean light = spec.illuminant().isEmpty() || spec.illuminant().equals("D50");
        boolean eye = spec.observer().isEmpty() || spec.observer().startsWith("2");
        if (!light || !eye) {
            throw new Refusal(where(object) + ": its ColorCIELab is for "
                    + (light ? "Observer " + spec.observer() : "Illuminant " + spec.illuminant())
                    + ", and it has no spectrum. Export it with a spectrum, or with Lab for D50 and 2 degrees.");
        }
    }

    private String where(Measured object) {
        return file + ", object '" + (object.name() == null ? object.id() : object.name()) + "'";
    }

    private void specification() throws XMLStreamException, Refusal {
        String id = attribute("Id");
        double start = Double.NaN;
        double step = Double.NaN;
        String illuminant = "";
        String observer = "";
        String type = "";
        List<String> condition = new ArrayList<>();
        while (!ends("ColorSpecification")) {
            if (in.isStartElement()) {
                switch (in.getLocalName()) {
                    case "WavelengthRange" -> {
                        start = numberOr("StartWL");
                        step = numberOr("Increment");
                    }
                    case "Illuminant" -> illuminant = in.getElementText().strip();
                    case "Observer" -> observer = in.getElementText().strip();
                    case "MeasurementType" -> type = in.getElementText().strip();
                    case "DeviceIllumination", "DeviceFilter" ->
                        condition.add(in.getElementText().strip());
                    default -> {} // geometry and the like do not change what is read
                }
            }
        }
        specifications.put(
                id, new Specification(start, step, illuminant, observer, type, String.join(", ", condition)));
    }

    private void object() throws XMLStreamException, Refusal {
        String id = attribute("Id");
        String name = in.getAttributeValue(null, "Name");
        List<Spectrum> spectra = new ArrayList<>();
        Lab lab = null;
        String labSpecification = "";
        while (!ends("Object")) {
            if (!in.isStartElement()) {
                continue;
            }
            if (in.getLocalName().equals("ReflectanceSpectrum")) {
                spectra.add(new Spectrum(
                        attribute("Name"),
                        attribute("ColorSpecification"),
                        numberOr("StartWL"),
                        numberOr("Increment"),
                        values(in.getElementText())));
            } else if (in.getLocalName().equals("ColorCIELab") && lab == null) {
                labSpecification = attribute("ColorSpecification");
                lab = lab();
            }
        }
        if (!spectra.isEmpty() || lab != null) {
            objects.add(new Measured(id, name, spectra, lab, labSpecification));
        }
        if (objects.size() > Cxf.MAX_OBJECTS) {
            throw new Refusal(file + " holds more than " + Cxf.MAX_OBJECTS + " colours, the limit.");
        }
    }

    private void characterisation() throws XMLStreamException, Refusal {
        String name = attribute("SpotInkName");
        if (name.isBlank()) {
            throw new Refusal(where() + ": a SpotInkCharacterisation without its SpotInkName. Export it again.");
        }
        List<Reference> references = new ArrayList<>();
        boolean black = false;
        while (!ends("SpotInkCharacterisation")) {
            if (!in.isStartElement()) {
                continue;
            }
            if (in.getLocalName().equals("MeasurementSet")) {
                black = attribute("Background").toLowerCase(Locale.ROOT).contains("black");
            } else if (in.getLocalName().equals("Measurement")) {
                double percent = number(in.getAttributeValue(null, "TintLevel"), "TintLevel");
                if (!(percent >= 0 && percent <= 100) || references.size() >= MAX_VALUES) {
                    throw new Refusal(where() + ": TintLevel " + percent + " of ink '" + name
                            + "'; it lies between 0 and 100, and an ink has at most " + MAX_VALUES + " of them.");
                }
                references.add(new Reference(
                        percent / 100, black, attribute("ObjectRef"), attribute("ReflectanceSpectrumNameRef")));
            }
        }
        inks.add(new Characterisation(name, references));
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

    private String attribute(String name) {
        String value = in.getAttributeValue(null, name);
        return value == null ? "" : value;
    }

    private double numberOr(String attribute) throws Refusal {
        String value = in.getAttributeValue(null, attribute);
        return value == null ? Double.NaN : number(value, attribute);
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
