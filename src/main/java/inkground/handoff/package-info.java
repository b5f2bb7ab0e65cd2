/** Files for the printer: the artwork put right, in the form it came in. */
package inkground.handoff;
