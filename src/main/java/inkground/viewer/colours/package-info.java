/** The colours of the artwork: what each is printed as, and the files that come of it. */
package inkground.viewer.colours;
