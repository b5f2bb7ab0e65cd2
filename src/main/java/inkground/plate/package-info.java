/**
 * From the display list to ink planes: the painting engine.
 *
 * <p>A page is painted in bands of {@link inkground.plate.InkPlanes#CELL_H} pixel rows, each cut into cells. Numbers are
 * integers throughout, so that the result of a pixel depends neither on the region asked for nor on the number of threads:
 * tints are 0 to {@link inkground.plate.Fixed#TINT_ONE}, coverages 0 to {@link inkground.plate.Fixed#COVER_ONE}.
 */
package inkground.plate;
