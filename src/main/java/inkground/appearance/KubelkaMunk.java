package inkground.appearance;

/**
 * A layer that scatters and absorbs, after Kubelka and Munk [KUBELKA1948], in one band of light. Known by what it sends back over
 * black and over white, so that nothing but two measurements is needed.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>reflectances</td><td>0 to 1; over black at most as much as over white</td></tr>
 * <tr><td>thickness</td><td>0 to infinity, in multiples of the layer measured</td></tr>
 * </table>
 *
 * <p>Example: a layer of 0.6 over white and 0.3 over black has T² = 0.21, and over a ground of 0.5 shows 0.4235; two of them 0.4019.
 *
 * @param overBlack reflectance over a black ground: the layer's own light
 * @param through squared transmittance: what of a ground's light comes back through it twice, before the light that goes to and
 *     fro is added
 */
record KubelkaMunk(double overBlack, double through) {
    // Less light than this over black counts as none: a pure filter.
    private static final double CLEAR = 1e-12;

    /**
     * @param overWhite reflectance over the perfect white, 0 to 1
     * @param overBlack reflectance over the perfect black, 0 to {@code overWhite}
     * @return the layer, as thick as measured
     */
    static KubelkaMunk of(double overWhite, double overBlack) {
        return new KubelkaMunk(overBlack, Math.max(0, overWhite - overBlack) * Math.max(0, 1 - overBlack));
    }

    /**
     * The layer of which two reflectances are known over two grounds that are neither white nor black. Both follow {@code R = Rb + T² G
     * / (1 − Rb G)}; without T² that is one linear equation for the layer's own light, {@code Rb = (G1 R2 − G2 R1) / (G1 − G2 + G1 G2 (R2
     * − R1))}. Example: over 0.8 and 0.05 a clear filter of T² 0.5 shows 0.4 and 0.025, and Rb is 0.
     *
     * @param lightGround reflectance of the lighter ground, above that of the darker
     * @param overLight reflectance of the layer over it
     * @param darkGround reflectance of the darker ground, 0 or more
     * @param overDark reflectance of the layer over it
     * @return the layer; what noise puts outside of the possible is clipped
     */
    static KubelkaMunk ofGrounds(double lightGround, double overLight, double darkGround, double overDark) {
        double below = lightGround - darkGround + lightGround * darkGround * (overDark - overLight);
        double own = (lightGround * overDark - darkGround * overLight) / Math.max(1e-9, below);
        own = Math.max(0, Math.min(overLight, own));
        double through = (overLight - own) * (1 - own * lightGround) / Math.max(1e-9, lightGround);
        return new KubelkaMunk(own, Math.max(0, through));
    }

    /** @return reflectance over a ground, exact for black (0) and white (1) */
    double over(double ground) {
        // Bands of saturated colours can be a little above 1, where the series of reflections has no sum.
        return overBlack + through * ground / Math.max(1e-6, 1 - overBlack * ground);
    }

    /**
     * The same ink printed thicker or thinner.
     *
     * @param times thickness in multiples of this layer, 0 or more; infinity for a layer that hides everything
     * @return a layer of that thickness; none at all at 0
     */
    KubelkaMunk times(double times) {
        if (!(times >= 0)) {
            throw new IllegalArgumentException("a thickness of " + times);
        }
        if (times == 1) {
            return this;
        }
        if (times == 0) {
            return new KubelkaMunk(0, 1);
        }
        if (overBlack < CLEAR) {
            return new KubelkaMunk(0, times == Double.POSITIVE_INFINITY && through < 1 ? 0 : Math.pow(through, times));
        }
        if (through <= 0) {
            return this; // it hides already
        }
        double overWhite = over(1);
        // a = (S + K) / S, from the two reflectances; 1 where nothing is absorbed
        double a = Math.max(1, 0.5 * (overWhite + (overBlack - overWhite + 1) / overBlack));
        double b = Math.sqrt(a * a - 1);
        if (b < 1e-7) {
            double scatter = times * overBlack / (1 - overBlack);
            double own = scatter == Double.POSITIVE_INFINITY ? 1 : scatter / (1 + scatter);
            return new KubelkaMunk(own, (1 - own) * (1 - own));
        }
        double end = a - b; // reflectance of the infinitely thick layer
        // coth(b S x) = c gives own light 1 / (a + b c); c falls from infinity to 1 as the layer grows.
        double once = (1 / overBlack - a) / b;
        double bSx = 0.5 * Math.log((once + 1) / Math.max(1e-300, once - 1)) * times;
        if (bSx > 350) {
            return new KubelkaMunk(end, 0);
        }
        double coth = 1 / Math.tanh(bSx);
        double own = 1 / (a + b * coth);
        double t = b / (a * Math.sinh(bSx) + b * Math.cosh(bSx));
        return new KubelkaMunk(own, t * t);
    }
}
