/** Two revisions of the artwork, beside or over each other, and what changed between them. */
package inkground.viewer.compare;
