/** Artwork placed on a garment that is cut, sewn and laid flat: where it lies in millimetres, whether it fits, how it looks. */
package inkground.garment;
