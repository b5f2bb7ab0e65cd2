/** The cross-section of inks, underbase and substrate. */
package inkground.viewer.stack;
