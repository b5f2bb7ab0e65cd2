package inkground.artwork;

/** The blend modes of ISO 32000-2 §11.3.5. */
public enum BlendMode {
    /** The source replaces. */
    NORMAL,
    /** Product. */
    MULTIPLY,
    /** Product of complements. */
    SCREEN,
    /** Hard light with the operands swapped. */
    OVERLAY,
    /** The darker of both. */
    DARKEN,
    /** The lighter of both. */
    LIGHTEN,
    /** Brightens the backdrop to reflect the source. */
    COLOR_DODGE,
    /** Darkens the backdrop to reflect the source. */
    COLOR_BURN,
    /** Multiply or screen, by the source. */
    HARD_LIGHT,
    /** Darken or lighten, by the source. */
    SOFT_LIGHT,
    /** Absolute difference. */
    DIFFERENCE,
    /** Like difference, of lower contrast. */
    EXCLUSION,
    /** Hue of the source. */
    HUE,
    /** Saturation of the source. */
    SATURATION,
    /** Hue and saturation of the source. */
    COLOR,
    /** Luminosity of the source. */
    LUMINOSITY;

    /** @return whether each component is blended by itself */
    public boolean separable() {
        return compareTo(HUE) < 0;
    }

    /** @return whether white over white stays white; only such modes apply to spot planes (§11.7.4.2) */
    public boolean whitePreserving() {
        return separable() && this != DIFFERENCE && this != EXCLUSION;
    }
}
