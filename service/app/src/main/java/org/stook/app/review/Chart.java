package org.stook.app.review;

import java.util.List;
import java.util.Locale;

/**
 * A plot, ready to be written as SVG: everything in user units of its view box.
 *
 * @param width of the view box
 * @param height of the view box
 * @param left where the x axis begins
 * @param lines to draw, the most important last
 * @param bands hatched stretches of the x axis
 * @param ticks along the x axis
 * @param levels along the y axis
 */
public record Chart(
        int width, int height, int left, List<Line> lines, List<Band> bands, List<Tick> ticks, List<Level> levels) {
    /** @param name class of its look, and what the key calls it. @param path of an SVG path */
    public record Line(String name, String path) {}

    /** @param label what it means, a few words */
    public record Band(double x, double width, String label) {}

    public record Tick(double x, String label) {}

    public record Level(double y, String label) {}

    /** "M x y L x y ..." */
    static String path(double[] x, double[] y) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < x.length; i++) {
            path.append(i == 0 ? "M" : "L").append(number(x[i])).append(' ').append(number(y[i]));
        }
        return path.toString();
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
