/** The same artwork on several substrates side by side. */
package inkground.viewer.lineup;
