package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;

/** Colours of Separation and DeviceN spaces by their alternates: ISO 32000-2 §8.6.6.4, §8.6.6.5. */
final class Alternates {
    private Alternates() {}

    /**
     * @param space a Separation, a DeviceN, or an Indexed over one
     * @return its alternate
     */
    static ColourSpace of(ColourSpace space) {
        ColourSpace base = InkMapping.base(space);
        return base instanceof ColourSpace.Separation s ? s.alternate() : ((ColourSpace.DeviceN) base).alternate();
    }

    /**
     * @param space as for {@link #of(ColourSpace)}
     * @param components of a colour in it
     * @return the same as a colour of its alternate
     */
    static Colour of(ColourSpace space, float[] components) {
        if (space instanceof ColourSpace.Indexed indexed) {
            return of(indexed.base(), indexed.lookup(Math.round(components[0])));
        }
        TintTransform tint =
                space instanceof ColourSpace.Separation s ? s.tint() : ((ColourSpace.DeviceN) space).tint();
        ColourSpace alternate = of(space);
        float[] values = new float[Math.max(tint.outputs(), alternate.components())];
        tint.apply(components, values);
        return new Colour(alternate, values);
    }
}
