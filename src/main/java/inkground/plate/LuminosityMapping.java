package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;

/**
 * Turns colours into one plane of darkness, 1 minus luminosity: what a luminosity soft mask is painted with. Luminosity is
 * linear in the components of grey and RGB, so that compositing the one plane equals compositing the colour and taking its
 * luminosity afterwards (ISO 32000-2 §11.5.3; weights of §11.3.5.3; for CMYK by the conversion of §10.4).
 */
final class LuminosityMapping implements ColourMapping {
    private final ColourReader reader;

    LuminosityMapping(ColourReader reader) {
        this.reader = reader;
    }

    @Override
    public int tintPlanes() {
        return 1;
    }

    @Override
    public long touched(ColourSpace space, boolean overprint) {
        return 1;
    }

    @Override
    public int[] direct(ColourSpace space) {
        return null;
    }

    @Override
    public boolean paintsNothing(ColourSpace space) {
        return space instanceof ColourSpace.Separation s && s.name().equals("None");
    }

    @Override
    public void tints(ColourSpace space, float[] components, int[] out) {
        out[0] = Fixed.tint(1 - luminosity(space, components));
    }

    /** @return 0 black to 1 white */
    double luminosity(ColourSpace space, float[] c) {
        if (space instanceof ColourSpace.Indexed indexed) {
            return luminosity(indexed.base(), indexed.lookup(Math.round(c[0])));
        }
        if (space instanceof ColourSpace.Separation || space instanceof ColourSpace.DeviceN) {
            Colour alternate = Alternates.of(space, c);
            return luminosity(alternate.space(), alternate.components());
        }
        if (space instanceof ColourSpace.CieLab) {
            return reader.toLab(space, c).L() / 100;
        }
        return switch (space.components()) {
            case 1 -> c[0];
            case 3 -> 0.3 * c[0] + 0.59 * c[1] + 0.11 * c[2];
            default -> 1 - Math.min(1, 0.3 * c[0] + 0.59 * c[1] + 0.11 * c[2] + c[3]);
        };
    }
}
