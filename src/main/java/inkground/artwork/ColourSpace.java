package inkground.artwork;

import inkground.colour.BlackPointCompensation;
import inkground.colour.Rendering;
import inkground.colour.RenderingIntent;
import java.util.Arrays;
import java.util.List;

/** The colour spaces of ISO 32000-2 §8.6, as plain data. Which inks a colour prints with is decided later, by plates. */
public sealed interface ColourSpace {
    /** @return number of components of a colour, 1 to 32 */
    int components();

    /** @return lowest value of component {@code i} */
    default float min(int i) {
        return 0;
    }

    /** @return highest value of component {@code i} */
    default float max(int i) {
        return 1;
    }

    /** @return the same space, its colours brought to the print as an object wants it where they are defined by the CIE's */
    default ColourSpace by(Rendering rendering) {
        return this;
    }

    /** @return how the object that is painted wants its colours brought to the print: §8.6.5.8, table 57 */
    default Rendering rendering() {
        return Rendering.USUAL;
    }

    /** Grey of the device, 0 black to 1 white: §8.6.4.2. */
    record DeviceGray() implements ColourSpace {
        @Override
        public int components() {
            return 1;
        }
    }

    /** Red, green, blue of the device, 0 to 1: §8.6.4.3. Taken as sRGB (IEC 61966-2-1), which is what it is in practice. */
    record DeviceRgb() implements ColourSpace {
        @Override
        public int components() {
            return 3;
        }
    }

    /** Tints of the four process inks, 0 to 1: §8.6.4.4. */
    record DeviceCmyk() implements ColourSpace {
        @Override
        public int components() {
            return 4;
        }
    }

    /**
     * Grey with a measured white and gamma: §8.6.5.2.
     *
     * @param white XYZ of the white point, Y = 1
     * @param gamma exponent, above 0
     */
    record CalGray(List<Double> white, double gamma) implements ColourSpace {
        @Override
        public int components() {
            return 1;
        }
    }

    /**
     * Red, green, blue with a measured white, gammas and primaries: §8.6.5.3.
     *
     * @param white XYZ of the white point, Y = 1
     * @param gamma three exponents
     * @param matrix nine values Xa Ya Za Xb Yb Zb Xc Yc Zc
     * @param black whether the object that is painted wants its black matched
     */
    record CalRgb(List<Double> white, List<Double> gamma, List<Double> matrix, BlackPointCompensation black)
            implements ColourSpace {
        /** Black as is usual. */
        public CalRgb(List<Double> white, List<Double> gamma, List<Double> matrix) {
            this(white, gamma, matrix, BlackPointCompensation.DEFAULT);
        }

        @Override
        public ColourSpace by(Rendering rendering) {
            return new CalRgb(white, gamma, matrix, rendering.black());
        }

        @Override
        public Rendering rendering() {
            return new Rendering(RenderingIntent.RELATIVE, black);
        }

        @Override
        public int components() {
            return 3;
        }
    }

    /**
     * CIE L*a*b*: §8.6.5.4.
     *
     * @param white XYZ of the white point, Y = 1
     * @param range amin, amax, bmin, bmax
     * @param black whether the object that is painted wants its black matched
     */
    record CieLab(List<Double> white, List<Double> range, BlackPointCompensation black) implements ColourSpace {
        /** Black as is usual. */
        public CieLab(List<Double> white, List<Double> range) {
            this(white, range, BlackPointCompensation.DEFAULT);
        }

        @Override
        public ColourSpace by(Rendering rendering) {
            return new CieLab(white, range, rendering.black());
        }

        @Override
        public Rendering rendering() {
            return new Rendering(RenderingIntent.RELATIVE, black);
        }

        @Override
        public int components() {
            return 3;
        }

        @Override
        public float min(int i) {
            return i == 0 ? 0 : range.get(2 * i - 2).floatValue();
        }

        @Override
        public float max(int i) {
            return i == 0 ? 100 : range.get(2 * i - 1).floatValue();
        }
    }

    /**
     * A space defined by an ICC profile: §8.6.5.5.
     *
     * @param profile the profile's bytes, as embedded; possibly broken
     * @param components 1, 3 or 4
     * @param alternate the space to use when the profile cannot be used; of as many components
     * @param rendering how the object that is painted wants its colours brought to the print
     */
    record Icc(Profile profile, int components, ColourSpace alternate, Rendering rendering) implements ColourSpace {
        /** As a page begins. */
        public Icc(Profile profile, int components, ColourSpace alternate) {
            this(profile, components, alternate, Rendering.USUAL);
        }

        @Override
        public ColourSpace by(Rendering other) {
            return new Icc(profile, components, alternate, other);
        }

        /** As of the alternate: a profile of Lab colours has Lab as alternate, and its numbers have that range. */
        @Override
        public float min(int i) {
            return alternate.min(i);
        }

        @Override
        public float max(int i) {
            return alternate.max(i);
        }
    }

    /** The bytes of an ICC profile, compared by content so that equal profiles are converted once. */
    final class Profile {
        private final byte[] bytes;
        private final int hash;

        /** @param bytes copied */
        public Profile(byte[] bytes) {
            this.bytes = bytes.clone();
            this.hash = Arrays.hashCode(this.bytes);
        }

        /** @return a copy of the bytes */
        public byte[] bytes() {
            return bytes.clone();
        }

        @Override
        public boolean equals(Object o) {
            return o == this || o instanceof Profile p && hash == p.hash && Arrays.equals(bytes, p.bytes);
        }

        @Override
        public int hashCode() {
            return hash;
        }
    }

    /**
     * A palette: §8.6.6.3. The one component is an index, 0 to {@link #highest}.
     *
     * @param base space of the palette's colours; never Indexed
     * @param highest largest index, 0 to 255
     * @param table (highest + 1) × base.components() bytes, each scaled over the base's range
     */
    record Indexed(ColourSpace base, int highest, Table table) implements ColourSpace {
        @Override
        public int components() {
            return 1;
        }

        @Override
        public float max(int i) {
            return highest;
        }

        @Override
        public ColourSpace by(Rendering rendering) {
            ColourSpace other = base.by(rendering);
            return other.equals(base) ? this : new Indexed(other, highest, table);
        }

        /** @return the base-space colour at an index, clipped to the table */
        public float[] lookup(int index) {
            int n = base.components();
            int at = Math.max(0, Math.min(highest, index)) * n;
            float[] out = new float[n];
            for (int i = 0; i < n; i++) {
                out[i] = base.min(i) + (base.max(i) - base.min(i)) * table.at(at + i) / 255f;
            }
            return out;
        }
    }

    /** Palette bytes, compared by content; bytes beyond the end read as 0. */
    final class Table {
        private final byte[] bytes;

        /** @param bytes copied */
        public Table(byte[] bytes) {
            this.bytes = bytes.clone();
        }

        /** @return byte {@code i} as 0 to 255 */
        public int at(int i) {
            return i < bytes.length ? bytes[i] & 255 : 0;
        }

        @Override
        public boolean equals(Object o) {
            return o instanceof Table t && Arrays.equals(bytes, t.bytes);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(bytes);
        }
    }

    /**
     * One named colorant: §8.6.6.4. The name may be All or None.
     *
     * @param name colorant
     * @param alternate space that approximates it where there is no such ink
     * @param tint from one tint to a colour of {@code alternate}
     */
    record Separation(String name, ColourSpace alternate, TintTransform tint) implements ColourSpace {
        @Override
        public int components() {
            return 1;
        }
    }

    /**
     * Several named colorants: §8.6.6.5, NChannel included.
     *
     * @param names colorants; None marks a component that prints nothing
     * @param alternate space that approximates them
     * @param tint from the tints to a colour of {@code alternate}
     * @param colorants Separation spaces of single colorants given in the attributes; may be empty
     * @param hints how the inks mix
     */
    record DeviceN(
            List<String> names,
            ColourSpace alternate,
            TintTransform tint,
            List<Separation> colorants,
            MixingHints hints)
            implements ColourSpace {
        /** Copies the lists. */
        public DeviceN {
            names = List.copyOf(names);
            colorants = List.copyOf(colorants);
        }

        /** Without mixing hints. */
        public DeviceN(List<String> names, ColourSpace alternate, TintTransform tint, List<Separation> colorants) {
            this(names, alternate, tint, colorants, MixingHints.NONE);
        }

        @Override
        public int components() {
            return names.size();
        }
    }
}
