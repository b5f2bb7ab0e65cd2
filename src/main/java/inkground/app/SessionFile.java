package inkground.app;

import inkground.app.Arrangement.WhiteBase;
import inkground.appearance.Underbase;
import inkground.artwork.ColourAssignment;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.garment.Placement;
import inkground.substrate.Cut;
import inkground.substrate.JsonFields;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The file a session is kept in, by custom next to the artwork. It is the file of a colour assignment ({@link AssignmentFile})
 * with more fields, so that whatever takes an assignment takes a session too:
 *
 * <pre>
 * {
 *   "version": 1,
 *   "rules": [ … ],
 *   "arrangement": {
 *     "printOrder": ["White", "Lock Gate Cream"],
 *     "opacities": [{"ink": "Lock Gate Cream", "opacity": 0.9}],
 *     "underbase": {"tint": 1, "hits": 1, "chokeMm": 0.2, "under": [], "knockedOutUnder": ["Black"]},
 *     "placement": {"cut": "t-shirt", "size": "M", "side": "front", "belowMm": 80, "offCentreMm": 0, "widthMm": 300,
 *         "measured": "trim"},
 *     "size": {"widthMm": 280}
 *   },
 *   "view": {"substrate": "tee-navy", "page": 1, "hiddenInks": []},
 *   "groundAsked": true,
 *   "sizeAsked": {"across": 1200, "down": 800}
 * }
 * </pre>
 *
 * <p>{@code arrangement}, its {@code underbase} with its {@code hits} and {@code under}, its {@code placement} and
 * {@code size}, {@code view}, {@code groundAsked} and {@code sizeAsked} may be left out; {@code size} is {@code widthMm} or {@code dpi}
 * (samples of a picture or px of an SVG per inch); {@code sizeAsked} tells in samples or px for what page it was asked; of
 * the placement all but {@code side}, {@code offCentreMm} and {@code measured}, for what is usual.
 */
public final class SessionFile {
    private static final int MOST_INKS = 100;
    /** Bounds of an extent; wider than what any file holds. */
    private static final double SMALLEST = 1e-6;

    private static final double LARGEST = 1e9;

    private SessionFile() {}

    /** @return what the user is told where artwork cannot have the size that was kept for it, and is opened in its own */
    public static String sizeNotTaken(Refusal why) {
        return "The size kept for this file is not taken. " + why.getMessage();
    }

    /**
     * Reads a file.
     *
     * @throws Refusal naming the file and the field, if it cannot be read or is not as described
     */
    public static Session load(Path file) throws Refusal {
        JsonFields root = AssignmentFile.root(file);
        ColourAssignment rules = AssignmentFile.rules(root);
        Optional<JsonFields> arranged = root.objectIfThere("arrangement");
        Optional<JsonFields> seen = root.objectIfThere("view");
        boolean groundAsked = root.flag("groundAsked");
        Optional<JsonFields> sizeAsked = root.objectIfThere("sizeAsked");
        root.end();
        Arrangement arrangement = Arrangement.AS_FILED.assigning(rules);
        return new Session(
                arranged.isPresent() ? arrangement(arranged.get(), arrangement) : arrangement,
                seen.isPresent() ? Optional.of(view(seen.get())) : Optional.empty(),
                groundAsked,
                sizeAsked.isPresent() ? Optional.of(extent(sizeAsked.get())) : Optional.empty());
    }

    private static Arrangement arrangement(JsonFields fields, Arrangement from) throws Refusal {
        Arrangement out = from.printing(fields.texts("printOrder", MOST_INKS));
        for (JsonFields one : fields.objects("opacities", 0, MOST_INKS)) {
            out = out.withOpacity(one.text("ink"), Optional.of(one.number("opacity", 0, 1)));
            one.end();
        }
        Optional<JsonFields> base = fields.objectIfThere("underbase");
        Optional<JsonFields> placed = fields.objectIfThere("placement");
        Optional<JsonFields> sized = fields.objectIfThere("size");
        fields.end();
        out = sized.isPresent() ? out.sized(size(sized.get())) : out;
        out = placed.isPresent() ? out.placed(placement(placed.get())) : out;
        return base.isPresent() ? out.over(Optional.of(underbase(base.get()))) : out;
    }

    private static WhiteBase underbase(JsonFields fields) throws Refusal {
        WhiteBase base = new WhiteBase(
                fields.number("tint", 0, 1),
                fields.wholeIfThere("hits", 1, Underbase.MOST_HITS).orElse(1),
                fields.number("chokeMm", -Underbase.MOST_CHOKE_MM, Underbase.MOST_CHOKE_MM),
                fields.has("under") ? Set.copyOf(fields.texts("under", MOST_INKS)) : Set.of(),
                Set.copyOf(fields.texts("knockedOutUnder", MOST_INKS)));
        fields.end();
        return base;
    }

    private static Placement placement(JsonFields fields) throws Refusal {
        double far = Placement.FARTHEST_MM;
        Placement out = new Placement(
                fields.has("cut") ? Optional.of(fields.text("cut")) : Optional.empty(),
                fields.has("size") ? Optional.of(fields.text("size")) : Optional.empty(),
                fields.word("side", Cut.Side.class),
                fields.has("belowMm") ? Optional.of(fields.number("belowMm", -far, far)) : Optional.empty(),
                fields.number("offCentreMm", -far, far),
                fields.has("widthMm")
                        ? Optional.of(fields.number("widthMm", Placement.NARROWEST_MM, Placement.WIDEST_MM))
                        : Optional.empty(),
                fields.word("measured", Placement.Measured.class));
        fields.end();
        return out;
    }

    private static PictureSize size(JsonFields fields) throws Refusal {
        boolean wide = fields.has("widthMm");
        double value = wide
                ? fields.number("widthMm", PictureSize.LEAST_MM, PictureSize.MOST_MM)
                : fields.number("dpi", PictureSize.LEAST_DPI, PictureSize.MOST_DPI);
        fields.end();
        return wide ? PictureSize.wide(value) : PictureSize.at(value);
    }

    private static Session.Extent extent(JsonFields fields) throws Refusal {
        Session.Extent extent = new Session.Extent(
                fields.number("across", SMALLEST, LARGEST), fields.number("down", SMALLEST, LARGEST));
        fields.end();
        return extent;
    }

    private static Session.View view(JsonFields fields) throws Refusal {
        Session.View view = new Session.View(
                fields.text("substrate"),
                fields.whole("page", 1, 1_000_000),
                Set.copyOf(fields.texts("hiddenInks", MOST_INKS)));
        fields.end();
        return view;
    }

    /**
     * Writes a file, whole or not at all.
     *
     * @param replace whether an existing file may be replaced
     */
    public static void save(Session session, Path file, boolean replace) throws Refusal {
        Arrangement arrangement = session.arrangement();
        Map<String, Object> root = AssignmentFile.json(arrangement.assignment());
        Map<String, Object> arranged = new LinkedHashMap<>();
        arranged.put("printOrder", arrangement.printOrder());
        List<Map<String, Object>> opacities = new ArrayList<>();
        arrangement.opacities().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> {
                    Map<String, Object> one = new LinkedHashMap<>();
                    one.put("ink", e.getKey());
                    one.put("opacity", e.getValue());
                    opacities.add(one);
                });
        arranged.put("opacities", opacities);
        arrangement.underbase().ifPresent(base -> arranged.put("underbase", json(base)));
        arranged.put("placement", json(arrangement.placement()));
        PictureSize size = arrangement.size();
        if (size.chosen()) {
            arranged.put("size", size.widthMm() > 0 ? Map.of("widthMm", size.widthMm()) : Map.of("dpi", size.dpi()));
        }
        root.put("arrangement", arranged);
        session.view().ifPresent(view -> root.put("view", json(view)));
        if (session.groundAsked()) {
            root.put("groundAsked", true);
        }
        session.sizeAsked().ifPresent(extent -> root.put("sizeAsked", json(extent)));
        SafeFiles.file(file, replace, temporary -> Files.writeString(temporary, JsonText.of(root) + "\n"));
    }

    private static Map<String, Object> json(WhiteBase base) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("tint", base.tint());
        out.put("hits", base.hits());
        out.put("chokeMm", base.chokeMm());
        if (!base.under().isEmpty()) {
            out.put("under", base.under().stream().sorted().toList());
        }
        out.put("knockedOutUnder", base.knockedOutUnder().stream().sorted().toList());
        return out;
    }

    private static Map<String, Object> json(Placement placement) {
        Map<String, Object> out = new LinkedHashMap<>();
        placement.cut().ifPresent(cut -> out.put("cut", cut));
        placement.size().ifPresent(size -> out.put("size", size));
        out.put("side", placement.side().word());
        placement.belowMm().ifPresent(mm -> out.put("belowMm", mm));
        out.put("offCentreMm", placement.offCentreMm());
        placement.widthMm().ifPresent(mm -> out.put("widthMm", mm));
        out.put("measured", placement.measured().word());
        return out;
    }

    private static Map<String, Object> json(Session.Extent extent) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("across", extent.across());
        out.put("down", extent.down());
        return out;
    }

    private static Map<String, Object> json(Session.View view) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("substrate", view.substrate());
        out.put("page", view.page());
        out.put("hiddenInks", view.hiddenInks().stream().sorted().toList());
        return out;
    }
}
