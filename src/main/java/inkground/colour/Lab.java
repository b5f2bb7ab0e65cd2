package inkground.colour;

/**
 * CIE 1976 L*a*b*, relative to D50, 2° observer (CIE 15).
 *
 * @param L lightness, 0 to 100
 * @param a green (−) to red (+)
 * @param b blue (−) to yellow (+)
 */
public record Lab(double L, double a, double b) {}
