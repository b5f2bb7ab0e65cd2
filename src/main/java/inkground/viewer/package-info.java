/**
 * The window: one observable {@link inkground.viewer.ViewerState} without controls, a {@link inkground.viewer.ProofDesk}
 * that does what the user asks off the window's thread, and views that bind to the state. Nothing outside this package
 * knows JavaFX.
 */
package inkground.viewer;
