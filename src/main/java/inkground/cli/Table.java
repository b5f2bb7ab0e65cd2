package inkground.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of words in columns. Columns whose cells all start with a digit or a minus are set flush right. */
final class Table {
    private final List<String[]> rows = new ArrayList<>();

    Table(String... heads) {
        rows.add(heads);
    }

    void row(String... cells) {
        String[] clean = new String[cells.length];
        for (int i = 0; i < cells.length; i++) {
            clean[i] = Console.printable(cells[i]);
        }
        rows.add(clean);
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < row.length; column++) {
                int width = width(column);
                String pad = " ".repeat(width - length(row[column]));
                line.append("  ").append(numeric(column) ? pad + row[column] : row[column] + pad);
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    private int width(int column) {
        return rows.stream().mapToInt(row -> length(row[column])).max().orElse(0);
    }

    private boolean numeric(int column) {
        return rows.size() > 1 && rows.stream().skip(1).allMatch(row -> row[column].matches("-?[0-9].*"));
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }
}
