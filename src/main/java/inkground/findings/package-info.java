/** What will or may go wrong on press, found in the display list and in the planes. */
package inkground.findings;
