/**
 * Does what the user asks, off the window's thread, and fills the state with what comes of it: one desk for each kind of request,
 * set up by {@link inkground.viewer.desk.ProofDesk}, with their work done by {@link inkground.viewer.desk.BackgroundWork}.
 */
package inkground.viewer.desk;
