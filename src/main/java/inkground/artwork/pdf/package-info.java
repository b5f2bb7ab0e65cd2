/** Reads PDF files (ISO 32000-2) into artwork: geometry, layers, colours as the file states them, and display lists. */
package inkground.artwork.pdf;
