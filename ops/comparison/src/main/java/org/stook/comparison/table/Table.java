package org.stook.comparison.table;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Rows under one heading, in columns of even width. */
public final class Table {
    private final String title;
    private final List<String[]> lines = new ArrayList<>();

    private Table(String title, String... head) {
        this.title = title;
        lines.add(head);
    }

    /** The table of checks: Stook beside the reference pipeline, the oracle and the bar. */
    public static Table ofChecks(String title) {
        return new Table(title, "check", "Stook", "OpenCV reference", "oracle", "bar", "met");
    }

    /** A table with columns of its own. */
    public static Table of(String title, String... head) {
        return new Table(title, head);
    }

    public void add(Row row) {
        lines.add(row.cells());
    }

    public void add(String... cells) {
        lines.add(cells);
    }

    /** Prints the machine, the title and the rows. */
    public void print(PrintStream out) {
        out.println();
        out.println(title);
        out.println(Machine.describe());
        int[] widths = new int[lines.get(0).length];
        for (String[] line : lines) {
            for (int c = 0; c < line.length; c++) widths[c] = Math.max(widths[c], line[c].length());
        }
        for (int r = 0; r < lines.size(); r++) {
            out.println(line(lines.get(r), widths));
            if (r == 0) out.println(rule(widths));
        }
        out.flush();
    }

    private static String line(String[] cells, int[] widths) {
        StringBuilder text = new StringBuilder("|");
        for (int c = 0; c < cells.length; c++) {
            String pad = " ".repeat(widths[c] - cells[c].length());
            // The first column reads as words, the others as figures.
            text.append(' ').append(c == 0 ? cells[c] + pad : pad + cells[c]).append(" |");
        }
        return text.toString();
    }

    private static String rule(int[] widths) {
        StringBuilder text = new StringBuilder("|");
        for (int width : widths) text.append("-".repeat(width + 2)).append('|');
        return text.toString();
    }
}
