package org.stook.app.intake;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * An operator's manifest: comma-separated text (RFC 4180, UTF-8) named {@code *.stacks.csv} with the columns first, last, subject
 * and view; the last two names and the view may be left empty. Each line is a stack.
 */
final class ManifestFile {
    /**
     * A stack.
     *
     * @param first name of its first file
     * @param last name of its last file, in the order of their characters
     * @param view empty if there is none
     */
    record Line(String first, String last, String subject, String view) {}

    private static final String HEADER = "first,last,subject,view";
    private static final long LARGEST = 1 << 20;
    private static final int COLUMNS = 4;
    private static final int LONGEST = 200;

    private ManifestFile() {}

    static boolean is(Path file) {
        return String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(".stacks.csv");
    }

    /** @throws IllegalArgumentException naming the line, what was found and what was expected */
    static List<Line> read(Path file) throws IOException {
        if (Files.size(file) > LARGEST) {
            throw new IllegalArgumentException(
                    "found %d bytes, expected at most %d".formatted(Files.size(file), LARGEST));
        }
        List<String> rows;
        try {
            rows = Files.readAllLines(file);
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException("found bytes that are no UTF-8, expected text", e);
        }
        String head = rows.isEmpty() ? "" : rows.get(0).replace("\uFEFF", "").strip();
        if (!head.toLowerCase(Locale.ROOT).equals(HEADER)) {
            throw new IllegalArgumentException("line 1: found '%s', expected '%s'".formatted(head, HEADER));
        }
        List<Line> lines = new ArrayList<>();
        for (int i = 1; i < rows.size(); i++) {
            if (!rows.get(i).isBlank()) lines.add(line(i + 1, rows.get(i)));
        }
        apart(lines);
        return lines;
    }

    private static Line line(int number, String row) {
        List<String> cells = cells(row);
        if (cells.size() < COLUMNS - 1 || cells.size() > COLUMNS) {
            throw new IllegalArgumentException(
                    "line %d: found %d columns, expected %s".formatted(number, cells.size(), HEADER));
        }
        String first = cells.get(0);
        String last = cells.get(1).isEmpty() ? first : cells.get(1);
        String subject = cells.get(2);
        if (first.isEmpty() || first.compareTo(last) > 0) {
            throw new IllegalArgumentException(
                    "line %d: found files '%s' to '%s', expected the first to come before the last"
                            .formatted(number, first, last));
        }
        if (subject.isEmpty() || subject.length() > LONGEST) {
            throw new IllegalArgumentException("line %d: found a subject of %d characters, expected 1 to %d"
                    .formatted(number, subject.length(), LONGEST));
        }
        return new Line(first, last, subject, cells.size() < COLUMNS ? "" : cells.get(COLUMNS - 1));
    }

    private static List<String> cells(String row) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : row.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString().strip());
        return cells;
    }

    private static void apart(List<Line> lines) {
        Set<Line> seen = new HashSet<>();
        for (Line line : lines) {
            seen.stream()
                    .filter(other -> other.first().compareTo(line.last()) <= 0
                            && line.first().compareTo(other.last()) <= 0)
                    .findFirst()
                    .ifPresent(other -> {
                        throw new IllegalArgumentException(
                                "found files of %s in the lines of both %s and %s, expected each once"
                                        .formatted(line.first(), other.subject(), line.subject()));
                    });
            seen.add(line);
        }
    }
}
