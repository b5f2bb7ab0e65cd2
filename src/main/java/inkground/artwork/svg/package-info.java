/** Reads SVG files into artwork: vectors stay vectors, type stays known as type, gradients stay gradients. */
package inkground.artwork.svg;
