package org.stook.app.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How sharp each part of the subject is in each frame of the sweep, by place on the focus axis: a line a cell of the frame, in per cent
 * of the sharpest frame there. Where no line comes near the top between two frames, there is a depth that no frame has.
 */
final class FocusChart {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 190;
    private static final int LEFT = 40;
    private static final int RIGHT = 12;
    private static final int TOP = 18;
    private static final int BOTTOM = 26;
    /** More lines only hide each other. */
    private static final int MOST_LINES = 60;

    private static final int FEWEST_LINES = 3;
    private static final int MOST_TICKS = 14;

    private final RunRecord.Focus focus;
    private final double[] at;

    private FocusChart(RunRecord.Focus focus) {
        this.focus = focus;
        double first = focus.frames().get(0).position();
        double last = focus.frames().get(focus.frames().size() - 1).position();
        double span = Math.max(1e-9, last - first);
        this.at = focus.frames().stream()
                .mapToDouble(f -> LEFT + (f.position() - first) / span * (WIDTH - LEFT - RIGHT))
                .toArray();
    }

    /** @param focus of at least two frames */
    static Chart of(RunRecord.Focus focus) {
        FocusChart chart = new FocusChart(focus);
        List<Chart.Line> lines = new ArrayList<>();
        chart.cells().forEach(cell -> lines.add(new Chart.Line("cell", chart.curve(cell))));
        return new Chart(
                WIDTH,
                HEIGHT,
                LEFT,
                lines,
                chart.gaps(),
                chart.ticks(),
                List.of(new Chart.Level(y(100), "100 %"), new Chart.Level(y(50), "50 %"), new Chart.Level(y(0), "0")));
    }

    private static double y(double percent) {
        return TOP + (100 - percent) / 100 * (HEIGHT - TOP - BOTTOM);
    }

    /** Of the cells that are sharpest in each frame those that rise and fall most, so that every depth has some. */
    private List<Integer> cells() {
        int each = Math.max(FEWEST_LINES, MOST_LINES / focus.frames().size());
        return IntStream.range(0, focus.columns() * focus.rows())
                .filter(c -> focus.frames().get(0).sharpness().get(c) >= 0)
                .boxed()
                .sorted(Comparator.comparingInt(this::least))
                .collect(Collectors.groupingBy(this::sharpest, TreeMap::new, Collectors.toList()))
                .values()
                .stream()
                .flatMap(cells -> cells.stream().limit(each))
                .toList();
    }

    /** Index of the frame in which the cell is sharpest. */
    private int sharpest(int cell) {
        int best = 0;
        for (int f = 1; f < focus.frames().size(); f++) {
            if (at(f, cell) > at(best, cell)) best = f;
        }
        return best;
    }

    private int least(int cell) {
        return IntStream.range(0, focus.frames().size())
                .map(f -> at(f, cell))
                .min()
                .orElse(0);
    }

    private int at(int frame, int cell) {
        return focus.frames().get(frame).sharpness().get(cell);
    }

    private String curve(int cell) {
        double[] heights = focus.frames().stream()
                .mapToDouble(f -> y(f.sharpness().get(cell)))
                .toArray();
        return Chart.path(at, heights);
    }

    private List<Chart.Band> gaps() {
        List<Chart.Band> bands = new ArrayList<>();
        for (RunRecord.Gap gap : focus.gaps()) {
            int before = index(gap.before());
            int after = index(gap.after());
            if (before < 0 || after < 0) continue;
            double from = Math.min(at[before], at[after]);
            bands.add(new Chart.Band(
                    from,
                    Math.abs(at[after] - at[before]),
                    String.format(Locale.ROOT, "about %.0f missing", Math.max(1, gap.missing()))));
        }
        return bands;
    }

    private int index(String file) {
        for (int i = 0; i < focus.frames().size(); i++) {
            if (focus.frames().get(i).file().equals(file)) return i;
        }
        return -1;
    }

    private List<Chart.Tick> ticks() {
        int each = Math.max(1, (focus.frames().size() + MOST_TICKS - 1) / MOST_TICKS);
        return IntStream.range(0, focus.frames().size())
                .filter(i -> i % each == 0)
                .mapToObj(i -> new Chart.Tick(at[i], Integer.toString(i + 1)))
                .toList();
    }
}
