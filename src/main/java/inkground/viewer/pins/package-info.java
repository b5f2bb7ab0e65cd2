/** What lies at the places that the user watches. */
package inkground.viewer.pins;
