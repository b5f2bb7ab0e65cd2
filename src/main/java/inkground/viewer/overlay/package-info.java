/** The switches and legends of what is drawn over the proof. */
package inkground.viewer.overlay;
