/**
 * Draws the demo artwork: a poster and a shirt print for an invented rowing club. Writes PDF through PDFBox and knows nothing
 * of the proofing pipeline, so that what the pipeline reads is a real file and not its own idea of one.
 */
package inkground.demo;
