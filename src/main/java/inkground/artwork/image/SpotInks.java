package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Colour spaces of pictures that carry inks by name. A picture tells no colour for them: a middle grey stands in. */
final class SpotInks {
    /** Black ink, tint, that stands in for a solid of an ink of unknown colour. */
    private static final float STAND_IN = 0.5f;

    private static final List<String> PROCESS = List.of("Cyan", "Magenta", "Yellow", "Black");

    private SpotInks() {}

    /** Process inks and then spot inks. */
    static ColourSpace with(ColourSpace process, List<String> spots) {
        return new ColourSpace.DeviceN(
                Stream.concat(PROCESS.stream(), spots.stream()).toList(),
                process,
                new Grey(4, spots.size()),
                separations(spots));
    }

    /** Inks by name alone. */
    static ColourSpace only(List<String> inks) {
        return new ColourSpace.DeviceN(inks, new ColourSpace.DeviceCmyk(), new Grey(0, inks.size()), separations(inks));
    }

    private static List<ColourSpace.Separation> separations(List<String> names) {
        List<ColourSpace.Separation> out = new ArrayList<>();
        for (String name : names) {
            if (!PROCESS.contains(name)) {
                out.add(new ColourSpace.Separation(name, new ColourSpace.DeviceCmyk(), new Grey(0, 1)));
            }
        }
        return out;
    }

    /**
     * Tints to CMYK.
     *
     * @param process leading values that are CMYK already, 0 or 4
     * @param spots values after them, each a grey
     */
    private record Grey(int process, int spots) implements TintTransform {
        @Override
        public int outputs() {
            return 4;
        }

        @Override
        public void apply(float[] in, float[] out) {
            for (int i = 0; i < 4; i++) {
                out[i] = i < process ? in[i] : 0;
            }
            for (int i = 0; i < spots; i++) {
                out[3] = 1 - (1 - out[3]) * (1 - STAND_IN * in[process + i]);
            }
        }
    }
}
