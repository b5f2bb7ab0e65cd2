/** Colour as numbers: CIE spaces and differences, sRGB, print conditions from characterisation data, ICC profiles. */
package inkground.colour;
