/** Background work: one scheduler class, its outcomes, and how it reports. Knows nothing of what is computed. */
package inkground.viewer.task;
