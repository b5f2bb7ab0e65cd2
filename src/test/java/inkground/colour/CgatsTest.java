package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CgatsTest {
    private static final String SMALL =
            """
            CGATS.17
            # a comment
            KEYWORD "COLOR_REP"
            DESCRIPTOR\t"Two # patches"   # and more
            NUMBER_OF_FIELDS 8
            BEGIN_DATA_FORMAT
            SAMPLE_ID CMYK_C CMYK_M CMYK_Y CMYK_K
            LAB_L LAB_A LAB_B
            END_DATA_FORMAT
            NUMBER_OF_SETS 3
            BEGIN_DATA
            1 0 0 0 0 95 0 -2
            2\t100 0 0 0\t55
              -37 -50
            3 100 0 0 0 57 -37 -50 # again
            END_DATA
            """;

    @Test
    void keywords_in_small_letters_are_the_same_keywords() throws Exception {
        Cgats table = Cgats.parse(
                "descriptor \"small\"\r\nbegin_data_format\r\ncmyk_c lab_l\r\nend_data_format\r\n"
                        + "number_of_sets 1\r\nbegin_data\r\n10 90\r\nend_data\r\n",
                "small.txt");
        assertThat(table.header()).containsEntry("DESCRIPTOR", "small");
        assertThat(table.fields()).containsExactly("CMYK_C", "LAB_L");
        assertThat(table.rows()).hasSize(1);
    }

    @Test
    void tabs_comments_quotes_and_broken_rows_are_understood() throws Refusal {
        Cgats table = Cgats.parse(SMALL, "small.ti3");
        assertThat(table.header()).containsEntry("DESCRIPTOR", "Two # patches");
        assertThat(table.fields()).hasSize(8).contains("LAB_A");
        assertThat(table.rows()).hasSize(3);
        assertThat(table.rows().get(1)).containsExactly("2", "100", "0", "0", "0", "55", "-37", "-50");
    }

    @Test
    void other_line_ends_are_read_alike() throws Refusal {
        assertThat(Cgats.parse(SMALL.replace("\n", "\r\n"), "a")).isEqualTo(Cgats.parse(SMALL, "a"));
        assertThat(Cgats.parse(SMALL.replace("\n", "\r"), "a")).isEqualTo(Cgats.parse(SMALL, "a"));
    }

    @Test
    void repeated_patches_are_averaged() throws Refusal {
        Characterisation data = Characterisation.of(Cgats.parse(SMALL, "small.ti3"), "small.ti3");
        assertThat(data.patches()).hasSize(2);
        assertThat(data.find(1, 0, 0, 0)).isEqualTo(new Lab(56, -37, -50));
        assertThat(data.name()).isEqualTo("Two # patches");
        assertThat(data.measurements()).isEqualTo(3);
        assertThat(data.repeats().patches()).isEqualTo(1);
        assertThat(data.repeats().measurements()).isEqualTo(2);
        double apart = Cie.deltaE00(new Lab(55, -37, -50), new Lab(56, -37, -50));
        assertThat(data.repeats().maxDe00()).isCloseTo(apart, within(0.01));
        assertThat(data.repeats().meanDe00()).isCloseTo(apart, within(0.01));
        assertThat(data.repeats().farthest()).contains("SAMPLE_ID");
    }

    @Test
    void data_without_repeats_says_so() throws Refusal {
        String once = SMALL.replace("3 100 0 0 0", "3 90 0 0 0");
        Characterisation data = Characterisation.of(Cgats.parse(once, "a"), "a");
        assertThat(data.repeats()).isEqualTo(Characterisation.Repeats.NONE);
        assertThat(data.measurements()).isEqualTo(3);
    }

    @Test
    void the_bundled_data_repeats_29_patches() {
        Characterisation data = PrintConditions.bundledData("FOGRA39L");
        assertThat(data.measurements()).isEqualTo(1617);
        assertThat(data.repeats().measurements() - data.repeats().patches()).isEqualTo(29);
    }

    @ParameterizedTest
    @CsvSource({"SAMPLE_ID, SAMPLE_ID", "SAMPLE_NAME, SAMPLE_NAME", "sample_id, SAMPLE_ID"})
    void a_message_names_the_sample_that_the_file_names(String column, String named) {
        refused(
                SMALL.replace("SAMPLE_ID", column)
                        .replace("2\t100", "\"A 2\"\t100")
                        .replace("-37 -50\n3", "x -50\n3"),
                "row 2 of the data (" + named + " A 2), LAB_A",
                "'x' is not a number");
    }

    @ParameterizedTest
    @CsvSource({
        "CMYK_C CMYK_M CMYK_Y CMYK_K, Cyan Magenta Yellow Black",
        "CMYK_1 CMYK_2 CMYK_3 CMYK_4, Cyan Magenta Yellow Black",
        "CMYK_K CMYK_Y CMYK_M CMYK_C, Cyan Magenta Yellow Black",
        "C M Y K, Cyan Magenta Yellow Black",
        "Cyan Magenta Yellow Black, Cyan Magenta Yellow Black",
        "CMY_C CMY_M CMY_Y, Cyan Magenta Yellow",
        "4CLR_1 4CLR_2 4CLR_3 4CLR_4, Ink 1 Ink 2 Ink 3 Ink 4",
        "CMYKOG_C CMYKOG_M CMYKOG_Y CMYKOG_K CMYKOG_O CMYKOG_G, Cyan Magenta Yellow Black Orange Green",
        "ACLR_1 ACLR_2 ACLR_3 ACLR_4 ACLR_5 ACLR_6 ACLR_7 ACLR_8 ACLR_9 ACLR_A,"
                + " Ink 1 Ink 2 Ink 3 Ink 4 Ink 5 Ink 6 Ink 7 Ink 8 Ink 9 Ink 10"
    })
    void tint_columns_are_found_as_real_files_name_them(String columns, String inks) throws Refusal {
        Characterisation data = Characterisation.of(Cgats.parse(oneRow(columns), "t"), "t");
        assertThat(String.join(" ", data.inks())).isEqualTo(inks);
        double[] tints = data.patches().get(0).tints();
        for (int i = 0; i < tints.length; i++) {
            // each column holds its place from the left, in per cent; the order of channels is that of the inks
            int at = columns.startsWith("CMYK_K") ? tints.length - i : i + 1;
            assertThat(tints[i]).isCloseTo(at / 100.0, within(1e-12));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "RGB_R RGB_G RGB_B, 'RGB_R: this is data of a device that is driven by red, green and blue'",
        "CMYK_C CMYK_M CMYK_Y, 'need the columns CMYK_C, CMYK_M, CMYK_Y, CMYK_K, each'",
        "5CLR_1 5CLR_2 5CLR_3 5CLR_4, '5CLR_1, 5CLR_2, 5CLR_3, 5CLR_4, 5CLR_5, each once'",
        "3CLR_1 3CLR_2 3CLR_3 3CLR_4, 'of 3 inks need the columns 3CLR_1, 3CLR_2, 3CLR_3, each'",
        "CMYK_C CMYK_M CMYK_Y CMYK_K 4CLR_1 4CLR_2 4CLR_3 4CLR_4, 'several kinds (4CLR, CMYK)'",
        "CMYKM_C CMYKM_M CMYKM_Y CMYKM_K, 'each once'",
        "GREY, 'no CMYK_C'",
        "CMYK_C CMYK_C CMYK_M CMYK_Y CMYK_K, 'names the field CMYK_C twice'"
    })
    void tint_columns_that_cannot_be_used_are_refused_by_name(String columns, String message) {
        refused(oneRow(columns), message);
    }

    private static String oneRow(String columns) {
        StringBuilder row = new StringBuilder();
        for (int i = 1; i <= columns.split(" ").length; i++) {
            row.append(i).append(' ');
        }
        return "BEGIN_DATA_FORMAT\n" + columns + " LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n" + row
                + "50 0 0\nEND_DATA\n";
    }

    @ParameterizedTest
    @CsvSource({"ILLUMINANT \"D65\"", "OBSERVER \"10 degree\""})
    void colours_for_other_light_or_another_observer_are_refused_unless_there_are_spectra(String keyword)
            throws Refusal {
        refused(SMALL.replace("NUMBER_OF_FIELDS", keyword + "\nNUMBER_OF_FIELDS"), keyword.replace("\"", ""));
        StringBuilder columns = new StringBuilder();
        StringBuilder values = new StringBuilder();
        for (int nm = 400; nm <= 700; nm += 20) {
            columns.append(" SPECTRAL_NM").append(nm);
            values.append(" 0.18");
        }
        String spectra = oneRow("CMYK_C CMYK_M CMYK_Y CMYK_K")
                .replace("LAB_B", "LAB_B" + columns)
                .replace("50 0 0", "60 10 10" + values);
        assertThat(Characterisation.of(Cgats.parse(spectra, "a"), "a")
                        .patches()
                        .get(0)
                        .lab())
                .isEqualTo(new Lab(60, 10, 10));
        Lab found = Characterisation.of(Cgats.parse(keyword + "\n" + spectra, "a"), "a")
                .patches()
                .get(0)
                .lab();
        assertThat(Cie.deltaE76(found, new Lab(49.4961, 0, 0))).isLessThan(1e-3); // L* of Y = 0.18
    }

    @Test
    void misdeclared_numbers_are_refused_with_what_is_declared_and_what_is_there() throws Refusal {
        refused(SMALL.replace("SETS 3", "SETS 4"), "NUMBER_OF_SETS says 4", "holds 3");
        refused(SMALL.replace("SETS 3", "SETS 2"), "NUMBER_OF_SETS says 2", "holds 3");
        refused(SMALL.replace("SETS 3", "SETS many"), "NUMBER_OF_SETS says many", "holds 3");
        String uncounted = SMALL.replace("NUMBER_OF_SETS 3\n", "");
        refused(uncounted.replace("FIELDS 8", "FIELDS 9"), "NUMBER_OF_FIELDS says 9", "holds 8");
        refused(SMALL.replace("FIELDS 8", "FIELDS 9").replace("95 0 -2", "95 0"), "NUMBER_OF_FIELDS says 9");
        // a miscounted field alone is common and harmless: the number of rows confirms what was read
        assertThat(Cgats.parse(SMALL.replace("FIELDS 8", "FIELDS 9"), "a").rows())
                .hasSize(3);
    }

    @Test
    void xyz_serves_where_there_is_no_lab() throws Refusal {
        String xyz = SMALL.replace("LAB_L LAB_A LAB_B", "XYZ_X XYZ_Y XYZ_Z")
                .replace("95 0 -2", "84.48 87.62 74.57")
                .replace("-37 -50", "20 30");
        Characterisation data = Characterisation.of(Cgats.parse(xyz, "x"), "x");
        // the paper of FOGRA39L in both notations
        assertThat(Cie.deltaE76(data.find(0, 0, 0, 0), new Lab(95, 0, -2))).isLessThan(0.02);
    }

    @Test
    void a_file_cut_off_is_refused_with_its_name() {
        refused(SMALL.replace("END_DATA\n", ""), "small.ti3 is cut off", "END_DATA");
        refused(SMALL.replace("3 100 0 0 0 57 -37 -50 # again\n", ""), "NUMBER_OF_SETS says 3", "holds 2");
        refused(SMALL.replace("again", "").replace(" -50 #", " #"), "do not make whole rows");
    }

    @Test
    void a_byte_order_mark_and_small_letters_with_other_line_ends_change_nothing() throws Refusal {
        String other = "\ufeff" + SMALL.toLowerCase(java.util.Locale.ROOT).replace("\n", "\r\n");
        Characterisation read = Characterisation.of(Cgats.parse(other, "a"), "a");
        assertThat(read.find(1, 0, 0, 0)).isEqualTo(new Lab(56, -37, -50));
        assertThat(read.name()).isEqualTo("two # patches");
    }

    @Test
    void a_decimal_comma_is_refused_with_row_and_column() {
        refused(SMALL.replace("95 0 -2", "95,0 0 -2"), "row 1", "LAB_L", "'95,0' is not a number");
    }

    @Test
    void what_is_no_characterisation_file_is_refused() {
        refused("", "no BEGIN_DATA");
        refused("%PDF-1.7 nonsense", "no BEGIN_DATA");
        refused("BEGIN_DATA\n1 2\nEND_DATA\n", "without a BEGIN_DATA_FORMAT");
        refused(SMALL.replaceAll("(?s)BEGIN_DATA\n.*END_DATA\n", "BEGIN_DATA\nEND_DATA\n"), "says 3");
    }

    @Test
    void wrong_values_are_refused_with_row_and_column() {
        refused(SMALL.replace("2\t100", "2\t130"), "row 2", "CMYK_C", "130");
        refused(SMALL.replace("95 0 -2", "95 x -2"), "row 1", "LAB_A", "'x' is not a number");
        refused(SMALL.replace("95 0 -2", "NaN 0 -2"), "row 1", "LAB_L");
    }

    @Test
    void missing_columns_are_refused_and_those_there_named() {
        refused(SMALL.replace("CMYK_K", "GREY"), "CMYK_Y, CMYK_K, each once", "GREY");
        refused(SMALL.replace("LAB_B", "HUE"), "neither LAB_L", "HUE");
    }

    @Test
    void shares_are_told_from_per_cents() throws Refusal {
        String shares = SMALL.replace("100 0 0 0", "1 0 0 0")
                .replace("LAB_L LAB_A LAB_B", "XYZ_X XYZ_Y XYZ_Z")
                .replace("95 0 -2", "0.8448 0.8762 0.7457")
                .replace("55\n  -37 -50", "0.2 0.25 0.6")
                .replace("57 -37 -50", "0.2 0.25 0.6");
        Characterisation data = Characterisation.of(Cgats.parse(shares, "x"), "x");
        assertThat(Cie.deltaE76(data.find(0, 0, 0, 0), new Lab(95, 0, -2))).isLessThan(0.02);
        assertThat(data.find(1, 0, 0, 0).L()).isCloseTo(57.1, within(0.1));
    }

    @Test
    void contradictions_are_refused_with_their_row() {
        refused(SMALL.replace("57 -37 -50", "57 37 50"), "row 3", "measured before", "differs by dE00");
        String both = SMALL.replace("LAB_L LAB_A LAB_B", "LAB_L LAB_A LAB_B XYZ_X XYZ_Y XYZ_Z")
                .replace("95 0 -2", "95 0 -2 84.48 87.62 74.57")
                .replace("-37 -50", "-37 -50 20 30 60");
        refused(both, "row 2", "LAB_L", "XYZ_X", "D50");
    }

    @Test
    void five_inks_and_spectra_alone_make_a_model() throws Refusal {
        StringBuilder text = new StringBuilder("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID");
        for (int i = 1; i <= 5; i++) {
            text.append(" 5CLR_").append(i);
        }
        for (int nm = 400; nm <= 700; nm += 20) {
            text.append(" SPECTRAL_NM").append(nm);
        }
        text.append("\nEND_DATA_FORMAT\nBEGIN_DATA\n");
        for (int p = 0; p < 32; p++) {
            text.append(p);
            for (int i = 0; i < 5; i++) {
                text.append(' ').append((p >> i & 1) * 100);
            }
            for (int nm = 400; nm <= 700; nm += 20) {
                double r = 0.9;
                for (int i = 0; i < 5; i++) {
                    r *= (p >> i & 1) == 0 ? 1 : 0.15 + 0.85 * Math.pow(Math.cos((nm - 400) / 95.0 + i), 2);
                }
                text.append(' ').append(Math.round(r * 1e4) / 1e4);
            }
            text.append('\n');
        }
        text.append("END_DATA\n");
        Characterisation data = Characterisation.of(Cgats.parse(text.toString(), "five"), "five");
        assertThat(data.inks()).hasSize(5);
        assertThat(data.patches()).hasSize(32);
        double[] xyz = new double[3];
        NeugebauerModel.of(data).toXyz(new double[] {1, 0, 1, 0, 0}, xyz);
        assertThat(Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), data.find(1, 0, 1, 0, 0)))
                .isLessThan(0.1);
    }

    private static void refused(String text, String... parts) {
        assertThatThrownBy(() -> Characterisation.of(Cgats.parse(text, "small.ti3"), "small.ti3"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("small.ti3")
                .message()
                .contains(parts);
    }
}
