/** The surface that the proof lies on: tiles, their stock, and the lines drawn over them. */
package inkground.viewer.surface;
