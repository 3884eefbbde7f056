package org.stook.comparison.stack;

import java.util.stream.IntStream;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * Lanczos interpolation of three lobes (C. E. Duchon, Journal of Applied Meteorology 18 (1979) 1016-1022; as an interpolation kernel
 * common practice), weights normalised, border pixels repeated. It keeps almost all contrast, so that a frame is not made softer than
 * it is by being put into place.
 */
public final class Resample {
    private static final int LOBES = 3;
    private static final int PHASES = 2048;
    private static final double[][] WEIGHTS = weights();

    private Resample() {}

    /** The part {@code area} of the reference frame as {@code frame}, placed by {@code placement}, shows it. */
    public static Frame place(Frame frame, Placement placement, Area area) {
        return new Frame(
                frame.planes().stream().map(p -> place(p, placement, area)).toList());
    }

    /** The same for one plane. */
    public static Plane place(Plane plane, Placement placement, Area area) {
        Plane out = new Plane(area.width(), area.height());
        IntStream.range(0, area.height()).parallel().forEach(row -> {
            int y = area.y() + row;
            for (int column = 0; column < area.width(); column++) {
                int x = area.x() + column;
                out.set(column, row, (float) at(plane, placement.x(x, y), placement.y(x, y)));
            }
        });
        return out;
    }

    private static double at(Plane plane, double x, double y) {
        double phaseX = Math.rint(x * PHASES) / PHASES;
        double phaseY = Math.rint(y * PHASES) / PHASES;
        int left = (int) Math.floor(phaseX) - LOBES + 1;
        int top = (int) Math.floor(phaseY) - LOBES + 1;
        double[] across = WEIGHTS[(int) ((phaseX - Math.floor(phaseX)) * PHASES)];
        double[] down = WEIGHTS[(int) ((phaseY - Math.floor(phaseY)) * PHASES)];
        double sum = 0;
        for (int j = 0; j < 2 * LOBES; j++) {
            int row = clamp(top + j, plane.height()) * plane.width();
            double line = 0;
            for (int i = 0; i < 2 * LOBES; i++)
                line += across[i] * plane.samples()[row + clamp(left + i, plane.width())];
            sum += down[j] * line;
        }
        return sum;
    }

    private static int clamp(int v, int extent) {
        return Math.max(0, Math.min(extent - 1, v));
    }

    private static double[][] weights() {
        double[][] weights = new double[PHASES][2 * LOBES];
        for (int p = 0; p < PHASES; p++) {
            double sum = 0;
            for (int i = 0; i < 2 * LOBES; i++) {
                double d = Math.PI * (i - LOBES + 1 - p / (double) PHASES);
                weights[p][i] = d == 0 ? 1 : LOBES * Math.sin(d) * Math.sin(d / LOBES) / (d * d);
                sum += weights[p][i];
            }
            for (int i = 0; i < 2 * LOBES; i++) weights[p][i] /= sum;
        }
        return weights;
    }
}
