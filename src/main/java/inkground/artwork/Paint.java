package inkground.artwork;

import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.util.List;

/** What an area is filled with. */
public sealed interface Paint {
    /**
     * One colour everywhere.
     *
     * @param colour as the artwork states it
     */
    record Flat(Colour colour) implements Paint {}

    /**
     * A smooth shading used as a colour (shading pattern) or painted by itself: ISO 32000-2 §8.7.4.
     *
     * @param geometry how a point gets its colour, in the shading's own coordinates
     * @param space of the colours
     * @param function from the geometry's parameter (or parameters) to components of {@code space}; null when the
     *     geometry gives the components themselves
     * @param background colour outside the geometry, for patterns only; null for none
     * @param box clip in the shading's own coordinates; null for none
     * @param toPage from the shading's own coordinates to page space
     */
    record Shading(
            Geometry geometry, ColourSpace space, TintTransform function, Colour background, Box box, Matrix toPage)
            implements Paint {}

    /**
     * A cell painted again and again: §8.7.3. An uncoloured pattern's cell is recorded with the colour it is used with.
     *
     * @param cell operations of one cell, in the cell's own coordinates mapped by {@code cellToPage} already: page space
     *     of the cell at the origin
     * @param cellBox bounding box of the cell in pattern space
     * @param xStep horizontal distance of cells in pattern space, not 0
     * @param yStep vertical distance of cells in pattern space, not 0
     * @param toPage from pattern space to page space
     */
    record Tiling(List<Op> cell, Box cellBox, double xStep, double yStep, Matrix toPage) implements Paint {
        /** Copies the list. */
        public Tiling {
            cell = List.copyOf(cell);
        }
    }

    /** How a shading gives a point its parameter. */
    sealed interface Geometry {}

    /**
     * Colour varies along a line: §8.7.4.5.3.
     *
     * @param x0 start
     * @param y0 start
     * @param x1 end
     * @param y1 end
     * @param t0 parameter at the start
     * @param t1 parameter at the end
     * @param extendStart whether the first colour goes on before the start
     * @param extendEnd whether the last colour goes on past the end
     */
    record Axial(
            double x0, double y0, double x1, double y1, double t0, double t1, boolean extendStart, boolean extendEnd)
            implements Geometry {}

    /**
     * Colour varies between two circles: §8.7.4.5.4.
     *
     * @param x0 centre of the first circle
     * @param y0 centre of the first circle
     * @param r0 radius of the first circle, 0 or more
     * @param x1 centre of the second circle
     * @param y1 centre of the second circle
     * @param r1 radius of the second circle, 0 or more
     * @param t0 parameter at the first circle
     * @param t1 parameter at the second circle
     * @param extendStart whether the first colour goes on inside or before the first circle
     * @param extendEnd whether the last colour goes on past the second circle
     */
    record Radial(
            double x0,
            double y0,
            double r0,
            double x1,
            double y1,
            double r1,
            double t0,
            double t1,
            boolean extendStart,
            boolean extendEnd)
            implements Geometry {}

    /**
     * Colour is a function of the point: §8.7.4.5.2.
     *
     * @param domain of the function's two inputs
     * @param domainToShading from the domain to the shading's own coordinates
     */
    record OfPoint(Box domain, Matrix domainToShading) implements Geometry {}

    /**
     * Triangles with colours at the corners: §8.7.4.5.5 to 8, patches already cut into triangles fine enough for print.
     *
     * @param values per corner: x, y, then the parameter or the components; three corners a triangle
     * @param perCorner number of values per corner, 3 or more
     */
    record Triangles(float[] values, int perCorner) implements Geometry {}
}
