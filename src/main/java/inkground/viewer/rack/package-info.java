/** The papers and garments to choose from. */
package inkground.viewer.rack;
