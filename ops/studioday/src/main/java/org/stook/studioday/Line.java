package org.stook.studioday;

import java.util.List;

/**
 * A line of a drill's table.
 *
 * @param bar empty where nothing is asked
 */
record Line(String what, String found, String bar, boolean kept) {
    /** @param bad of which there may be none */
    static Line none(String what, long bad) {
        return new Line(what, "" + bad, "0", bad == 0);
    }

    /** @return exit code: 0 if all is kept */
    static int print(String title, List<Line> lines, List<String> misses) {
        System.out.printf("%n| %s | found | bar | kept |%n| --- | --- | --- | --- |%n", title);
        for (Line line : lines) {
            String kept = line.bar().isEmpty() ? "" : line.kept() ? "yes" : "NO";
            System.out.printf("| %s | %s | %s | %s |%n", line.what(), line.found(), line.bar(), kept);
        }
        System.out.println();
        misses.stream().distinct().limit(60).forEach(miss -> System.out.println("miss: " + miss));
        return lines.stream().allMatch(Line::kept) ? 0 : 1;
    }
}
