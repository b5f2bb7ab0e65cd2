/** The bench with a garment on it: its picture, the artwork that is moved about on it, and the figures of where it lies. */
package inkground.viewer.worn;
