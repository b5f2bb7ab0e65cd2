/** Papers, garments and print processes: data files, validated on load. */
package inkground.substrate;
