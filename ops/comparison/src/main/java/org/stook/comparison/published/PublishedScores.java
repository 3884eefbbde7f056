package org.stook.comparison.published;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Scores of 18 methods on the first ten Lytro pairs, as Y. Liu et al., Information Fusion 64 (2020) 71-91, published them: one row
 * a pair and method.
 */
public final class PublishedScores {
    /** Column of Q^AB/F (there called Q_G). */
    public static final String EDGE_PRESERVATION = "Q_G";

    /** Column of Piella and Heijmans' edge-dependent index. */
    public static final String EDGE_DEPENDENT = "Q_E";

    private final List<String> columns;
    private final List<String[]> rows = new ArrayList<>();

    public PublishedScores(Path csv) throws IOException {
        List<String> lines = Files.readAllLines(csv);
        columns = List.of(lines.get(0).split(","));
        for (String line : lines.subList(1, lines.size())) rows.add(line.split(","));
    }

    /** Score of one method on one pair. */
    public double score(String pair, String method, String column) {
        for (String[] row : rows) {
            if (row[0].equals(pair) && row[1].equals(method)) return Double.parseDouble(row[columns.indexOf(column)]);
        }
        throw new IllegalArgumentException("no published score of %s on pair %s".formatted(method, pair));
    }

    /** Mean over all pairs of each method, in the order of publication. */
    public Map<String, Double> means(String column) {
        Map<String, List<Double>> values = new LinkedHashMap<>();
        for (String[] row : rows) {
            values.computeIfAbsent(row[1], m -> new ArrayList<>())
                    .add(Double.parseDouble(row[columns.indexOf(column)]));
        }
        Map<String, Double> means = new LinkedHashMap<>();
        values.forEach(
                (m, v) -> means.put(m, v.stream().mapToDouble(d -> d).average().orElseThrow()));
        return means;
    }
}
