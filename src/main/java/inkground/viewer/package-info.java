/**
 * The window: one observable {@link inkground.viewer.state.ViewerState} without controls, a {@link
 * inkground.viewer.desk.ProofDesk} that does what the user asks off the window's thread, and views, a package each, that bind to
 * the state. Nothing outside this package knows JavaFX.
 */
package inkground.viewer;
