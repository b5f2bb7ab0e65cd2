/** Reads pictures (PNG, JPEG, TIFF, WebP, GIF, BMP) into artwork of one image a page, in the colours the file states. */
package inkground.artwork.image;
