package inkground.handoff;

import inkground.geometry.Matrix;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSNumber;

/** A content stream being written, token by token. */
final class Tokens {
    /** Tokens that the clips of one page may add up to; beyond, the file would be of no use to anyone. */
    static final int MOST = 20_000_000;

    private final List<Object> list = new ArrayList<>();

    /** An operator with its operands, as read. */
    record Instruction(Operator operator, List<COSBase> operands) {
        Instruction {
            operands = List.copyOf(operands);
        }

        String name() {
            return operator.getName();
        }

        /** @return operand {@code i}, or 0 where there is no such number */
        double number(int i) {
            return i < operands.size() && operands.get(i) instanceof COSNumber n ? n.floatValue() : 0;
        }
    }

    List<Object> list() {
        return list;
    }

    Tokens add(Instruction instruction) {
        list.addAll(instruction.operands());
        list.add(instruction.operator());
        return this;
    }

    Tokens addAll(List<Instruction> instructions) {
        instructions.forEach(this::add);
        return this;
    }

    Tokens add(String operator, COSBase... operands) {
        list.addAll(List.of(operands));
        list.add(Operator.getOperator(operator));
        return this;
    }

    Tokens mode(int textRenderingMode) {
        return add("Tr", COSInteger.get(textRenderingMode));
    }

    /** Clips to a path of page space. */
    Tokens clip(Path2D path, Matrix userToPage) {
        Shapes.write(path, userToPage, (operator, numbers) -> {
            for (double number : numbers) {
                list.add(number(number));
            }
            list.add(Operator.getOperator(operator));
        });
        return add("W*").add("n");
    }

    private static COSNumber number(double value) {
        try {
            return COSNumber.get(plain(value));
        } catch (java.io.IOException e) {
            throw new ArithmeticException("no number: " + value); // digits, a sign and a point always parse
        }
    }

    private static String plain(double value) {
        String text = String.format(Locale.ROOT, "%.5f", value);
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
    }
}
