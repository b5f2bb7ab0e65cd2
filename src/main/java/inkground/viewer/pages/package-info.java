/** The pages of a file, to look through. */
package inkground.viewer.pages;
