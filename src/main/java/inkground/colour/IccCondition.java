package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.IccReader.BrokenProfile;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/**
 * A print condition from a CMYK output profile, such as the output intent of a PDF file: the profile's relative colorimetric
 * table, sampled on first use on {@value #NODES} levels an ink, on the paper of its media white point [ICC1]. Thread-safe.
 */
public final class IccCondition implements PrintCondition {
    private static final int NODES = 17;
    private static final int STEPS = NODES - 1;

    private final String name;
    private final Lab paper;
    private final double[] paperXyz;
    private final IccReader reader;
    private volatile float[] grid; // media-relative cube roots of X, Y, Z, which are nearly even in the tints
    private final CmykInverse inverse;
    private final byte[] profile;
    private final Map<Way, Optional<IccReader>> ways = new ConcurrentHashMap<>();

    private record Way(RenderingIntent intent, boolean blackMatched) {}

    private IccCondition(String name, Lab paper, IccReader reader, byte[] profile) {
        this.name = name;
        this.profile = profile.clone();
        this.paper = paper;
        this.paperXyz = Cie.labToXyz(paper);
        this.reader = reader;
        this.inverse = new CmykInverse(this, BlackGeneration.STANDARD);
    }

    /**
     * @param profile its bytes
     * @param name for the user
     * @throws Refusal if it is not a usable CMYK profile; the message says why
     */
    public static IccCondition of(byte[] profile, String name) throws Refusal {
        try {
            return new IccCondition(name, IccReader.mediaWhite(profile), IccReader.open(profile, 4), profile);
        } catch (BrokenProfile e) {
            throw new Refusal(
                    name + ": " + e.getMessage() + ". Choose another print condition, or get the profile anew.", e);
        }
    }

    private float[] grid() {
        float[] ready = grid;
        if (ready == null) {
            synchronized (reader) {
                ready = grid;
                if (ready == null) {
                    ready = sample(reader);
                    grid = ready;
                }
            }
        }
        return ready;
    }

    private static float[] sample(IccReader reader) {
        float[] out = new float[NODES * NODES * NODES * NODES * 3];
        IntStream.range(0, NODES).parallel().forEach(c -> {
            float[] cmyk = new float[4];
            double[] xyz = new double[3];
            int inkNodes = NODES * NODES * NODES;
            for (int i = c * inkNodes; i < (c + 1) * inkNodes; i++) {
                cmyk[0] = (float) c / STEPS;
                cmyk[1] = i / (NODES * NODES) % NODES / (float) STEPS;
                cmyk[2] = i / NODES % NODES / (float) STEPS;
                cmyk[3] = i % NODES / (float) STEPS;
                Lab lab = reader.toLab(cmyk);
                Cie.labToXyz(lab.L(), lab.a(), lab.b(), xyz);
                out[3 * i] = (float) Cie.f(xyz[0] / Cie.D50_X);
                out[3 * i + 1] = (float) Cie.f(xyz[1]);
                out[3 * i + 2] = (float) Cie.f(xyz[2] / Cie.D50_Z);
            }
        });
        return out;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public String source() {
        return "ICC output profile, relative colorimetric table";
    }

    @Override
    public Lab paper() {
        return paper;
    }

    @Override
    public void cmykToXyz(float[] cmyk, double[] xyz) {
        float[] grid = grid();
        int base = 0;
        int[] stride = new int[4];
        float[] rest = new float[4];
        int size = NODES * NODES * NODES * NODES;
        for (int i = 0; i < 4; i++) {
            size /= NODES;
            float place = cmyk[i] > 0 ? Math.min(1, cmyk[i]) * STEPS : 0;
            int node = Math.min(STEPS - 1, (int) place);
            base += node * size;
            rest[i] = place - node;
            stride[i] = size;
        }
        double x = 0;
        double y = 0;
        double z = 0;
        for (int corner = 0; corner < 16; corner++) {
            double weight = 1;
            int at = base;
            for (int i = 0; i < 4; i++) {
                boolean up = (corner >> i & 1) != 0;
                weight *= up ? rest[i] : 1 - rest[i];
                at += up ? stride[i] : 0;
            }
            if (weight != 0) {
                x += weight * grid[3 * at];
                y += weight * grid[3 * at + 1];
                z += weight * grid[3 * at + 2];
            }
        }
        xyz[0] = paperXyz[0] * Cie.fInverse(x);
        xyz[1] = paperXyz[1] * Cie.fInverse(y);
        xyz[2] = paperXyz[2] * Cie.fInverse(z);
    }

    @Override
    public void labToCmyk(double L, double a, double b, float[] cmyk) {
        inverse.labToCmyk(L, a, b, cmyk);
    }

    /** The profile's own tables answer the perceptual and the saturation intent, if it has them. */
    @Override
    public boolean byIntent(Lab lab, RenderingIntent intent, boolean blackMatched, float[] cmyk) {
        if (intent == RenderingIntent.RELATIVE || intent == RenderingIntent.ABSOLUTE) {
            return PrintCondition.super.byIntent(lab, intent, blackMatched, cmyk);
        }
        Optional<IccReader> tables = tables(intent, blackMatched);
        if (tables.isEmpty()) {
            return false;
        }
        try {
            System.arraycopy(tables.get().fromLab(lab), 0, cmyk, 0, 4);
            return true;
        } catch (BrokenProfile e) {
            throw new IllegalStateException("a profile that was whole when it was opened", e);
        }
    }

    @Override
    public boolean blackMatched(Rendering rendering) {
        RenderingIntent intent = rendering.intent();
        if (intent == RenderingIntent.RELATIVE || intent == RenderingIntent.ABSOLUTE) {
            return PrintCondition.super.blackMatched(rendering);
        }
        return tables(intent, false)
                .map(t -> t.statesBlack() || rendering.black().applies(intent))
                .orElseGet(() -> PrintCondition.super.blackMatched(rendering));
    }

    private Optional<IccReader> tables(RenderingIntent intent, boolean blackMatched) {
        return ways.computeIfAbsent(new Way(intent, blackMatched), this::open);
    }

    private Optional<IccReader> open(Way way) {
        try {
            return Optional.of(IccReader.open(profile, 4, way.intent(), way.blackMatched()))
                    .filter(IccReader::hasWayBack);
        } catch (BrokenProfile e) {
            return Optional
                    .empty(); // the intent's tables are damaged: the colorimetric ones have been read, and stand in
        }
    }
}
