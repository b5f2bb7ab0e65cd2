/** What the window shows, as observable values without controls, and the port to the rest of the program. Knows no view. */
package inkground.viewer.state;
