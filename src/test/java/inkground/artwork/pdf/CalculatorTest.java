package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Operators as defined in ISO 32000-2 table 42 and the PostScript language reference; results worked out by hand. */
class CalculatorTest {
    private static float[] run(String program, int outputs, float... in) throws IOException {
        double[] domain = new double[2 * in.length];
        double[] range = new double[2 * outputs];
        for (int i = 0; i < in.length; i++) {
            domain[2 * i] = -1000;
            domain[2 * i + 1] = 1000;
        }
        for (int i = 0; i < outputs; i++) {
            range[2 * i] = -1000;
            range[2 * i + 1] = 1000;
        }
        float[] out = new float[outputs];
        Calculator.parse(program, domain, range).apply(in, out);
        return out;
    }

    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource({
        "3 4 add, 7",
        "3 4 sub, -1",
        "3 4 mul, 12",
        "3 4 div, 0.75",
        "3 0 div, 0",
        "-5 3 idiv, -1",
        "5 3 mod, 2",
        "-5 3 mod, -2",
        "5.0 2.0 mod, 1",
        "4.5 neg, -4.5",
        "-4.5 abs, 4.5",
        "3.2 ceiling, 4",
        "-4.8 floor, -5",
        "6.5 round, 7",
        "-6.5 round, -6",
        "-4.8 truncate, -4",
        "16 sqrt, 4",
        "30 sin, 0.5",
        "60 cos, 0.5",
        "1 1 atan, 45",
        "-1 0 atan, 270",
        "9 0.5 exp, 3",
        "100 log, 2",
        "2.718281828459045 ln, 1",
        "-47.8 cvi, -47",
        "52 7 and, 4",
        "17 5 or, 21",
        "12 3 xor, 15",
        "true not, 0",
        "52 not, -53",
        "7 3 bitshift, 56",
        "142 -3 bitshift, 17",
        "4 4 eq, 1",
        "4 5 ne, 1",
        "4 5 gt, 0",
        "4 4 ge, 1",
        "4 5 lt, 1",
        "5 4 le, 0",
        "true {2} {3} ifelse, 2",
        "false {2} {3} ifelse, 3",
        "9 true {pop 8} if, 8",
        "1 2 exch sub, 1",
        "7 dup mul, 49",
        "1 2 3 2 index, 1",
        "1 2 3 3 1 roll pop, 1",
        "1 2 3 3 -1 roll, 1",
        "1 2 2 copy add add add, 6"
    })
    void operatorsGiveTheResultsOfTheStandard(String program, float expected) throws IOException {
        assertThat(run("{" + program + "}", 1, 0)[0]).isCloseTo(expected, within(1e-5f));
    }

    @Test
    void inputsAreOnTheStackAndTheTopIsTheLastOutput() throws IOException {
        assertThat(run("{ exch % swap\n }", 2, 1, 2)).containsExactly(2, 1);
    }

    @Test
    void inputsAndOutputsAreClipped() throws IOException {
        float[] out = new float[1];
        Calculator.parse("{ 2 mul }", new double[] {0, 1}, new double[] {0, 1.5})
                .apply(new float[] {5}, out);
        assertThat(out).containsExactly(1.5f);
    }

    @Test
    void aProgramThatRunsOutOfOperandsGivesZerosInsteadOfFailing() throws IOException {
        assertThat(run("{ pop pop }", 2, 7)).containsExactly(0, 0);
        assertThat(run("{ " + "dup ".repeat(500) + "}", 1, 7)).containsExactly(7);
    }

    @Test
    void malformedProgramsAreRejected() {
        assertThatThrownBy(() -> run("{ 1 add", 1, 0)).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> run("1 add }", 1, 0)).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> run("{ 1 frobnicate }", 1, 0)).hasMessageContaining("frobnicate");
        assertThatThrownBy(() -> run("{ if }", 1, 0)).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> run("{".repeat(100) + "}".repeat(100), 1, 0)).hasMessageContaining("deeply");
    }
}
