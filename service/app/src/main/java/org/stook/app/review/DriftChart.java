package org.stook.app.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Placement;

/** Where each frame lies against the reference frame: shift of the middle, rotation and scale there. */
final class DriftChart {
    private static final int WIDTH = 760;
    private static final int HEIGHT = 130;
    private static final int LEFT = 64;
    private static final int RIGHT = 12;
    private static final int TOP = 14;
    private static final int BOTTOM = 24;
    private static final int MOST_TICKS = 14;
    /** For the direction of the frame's rows at the middle, pixels. */
    private static final double ARM = 100;

    private DriftChart() {}

    /**
     * One frame against the reference frame.
     *
     * @param right of the middle of the picture, pixels
     * @param down likewise
     * @param degrees clockwise
     * @param percent by how much larger
     */
    public record Drift(String file, double right, double down, double degrees, double percent, double exposureEv) {}

    static List<Drift> drifts(RunRecord record) {
        double x = record.area().x() + (record.area().width() - 1) / 2.0;
        double y = record.area().y() + (record.area().height() - 1) / 2.0;
        return record.frames().stream()
                .filter(f -> f.placement() != null)
                .map(f -> drift(f, Objects.requireNonNull(f.placement()), x, y))
                .toList();
    }

    private static Drift drift(RunRecord.Frame frame, Placement p, double x, double y) {
        double angle = Math.atan2(p.y(x + ARM, y) - p.y(x - ARM, y), p.x(x + ARM, y) - p.x(x - ARM, y));
        return new Drift(
                frame.file(),
                p.x(x, y) - x,
                p.y(x, y) - y,
                Math.toDegrees(angle),
                100 * (p.scaleAt(x, y) - 1),
                frame.exposureEv());
    }

    static Chart shift(List<Drift> drifts) {
        return chart(
                "px",
                drifts.stream().mapToDouble(Drift::right).toArray(),
                drifts.stream().mapToDouble(Drift::down).toArray(),
                "right",
                "down");
    }

    static Chart rotation(List<Drift> drifts) {
        return chart("°", drifts.stream().mapToDouble(Drift::degrees).toArray(), new double[0], "rotation", "");
    }

    static Chart scale(List<Drift> drifts) {
        return chart("%", drifts.stream().mapToDouble(Drift::percent).toArray(), new double[0], "scale", "");
    }

    private static Chart chart(String unit, double[] first, double[] second, String firstName, String secondName) {
        double least = 0;
        double most = 0;
        for (double[] values : new double[][] {first, second}) {
            for (double v : values) {
                least = Math.min(least, v);
                most = Math.max(most, v);
            }
        }
        double span = Math.max(most - least, 1e-3);
        double low = least;
        double[] x = IntStream.range(0, first.length)
                .mapToDouble(i -> LEFT + (double) i / Math.max(1, first.length - 1) * (WIDTH - LEFT - RIGHT))
                .toArray();
        DoubleUnaryOperator y = v -> HEIGHT - BOTTOM - (v - low) / span * (HEIGHT - TOP - BOTTOM);
        List<Chart.Line> lines = new ArrayList<>();
        lines.add(new Chart.Line(
                firstName,
                Chart.path(
                        x,
                        IntStream.range(0, first.length)
                                .mapToDouble(i -> y.applyAsDouble(first[i]))
                                .toArray())));
        if (second.length > 0) {
            lines.add(new Chart.Line(
                    secondName,
                    Chart.path(
                            x,
                            IntStream.range(0, second.length)
                                    .mapToDouble(i -> y.applyAsDouble(second[i]))
                                    .toArray())));
        }
        int each = Math.max(1, (first.length + MOST_TICKS - 1) / MOST_TICKS);
        List<Chart.Tick> ticks = IntStream.range(0, first.length)
                .filter(i -> i % each == 0)
                .mapToObj(i -> new Chart.Tick(x[i], Integer.toString(i + 1)))
                .toList();
        return new Chart(WIDTH, HEIGHT, LEFT, lines, List.of(), ticks, levels(y, low, low + span, unit));
    }

    private static List<Chart.Level> levels(DoubleUnaryOperator y, double low, double high, String unit) {
        String format = high - low >= 10 ? "%.0f" : high - low >= 0.5 ? "%.1f" : "%.3f";
        List<Chart.Level> levels = new ArrayList<>();
        double[] marks = low < -0.15 * (high - low) && high > 0.15 * (high - low)
                ? new double[] {low, 0, high}
                : new double[] {low, high};
        for (double mark : marks) {
            levels.add(new Chart.Level(
                    y.applyAsDouble(mark), String.format(Locale.ROOT, format, mark + 0.0) + " " + unit));
        }
        return levels;
    }
}
