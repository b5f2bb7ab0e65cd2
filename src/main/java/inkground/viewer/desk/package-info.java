/** Does what the user asks, off the window's thread, and fills the state with what comes of it. */
package inkground.viewer.desk;
