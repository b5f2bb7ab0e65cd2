/** What inks look like on a substrate, and where no ink arrives. */
package inkground.appearance;
