package inkground.plate;

/** With what an operation fills its shape, as planes see it. */
sealed interface Filling {
    /** One set of tints everywhere. */
    record Flat(Inking inking) implements Filling {}

    /**
     * Tints that vary.
     *
     * @param source of the tints
     * @param touched planes that are replaced; those the source gives no tint for get none
     * @param inks how many planes are inks; one beyond them is the bare plane, which leaves no ink
     * @param coverIsOpacity whether what the source covers only in part is thin there, not absent
     */
    record Varied(PixelSource source, long touched, int inks, boolean coverIsOpacity) implements Filling {}

    /**
     * A step of a pattern, painted already, at each of its repeats: as an isolated group of them would be.
     *
     * @param raster the step
     */
    record Steps(StepRaster raster) implements Filling {}

    /**
     * The operation is a group and brings its own content.
     *
     * @param list children
     * @param isolated starts from nothing
     * @param knockout children replace one another
     * @param paintsThrough whether painting the children straight onto the backdrop gives the same, when nothing veils the
     *     group as a whole
     * @param edge brings the colours of the children to the space around the group; null when they are of that space
     */
    record Content(PreparedList list, boolean isolated, boolean knockout, boolean paintsThrough, GroupEdge edge)
            implements Filling {}
}
