/** Small makings shared by the views, and what the keys do. */
package inkground.viewer.ui;
