package org.stook.comparison.stack;

import java.util.stream.IntStream;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/** Puts frames into place, border pixels repeated. Written apart from the imaging core, so that it can judge it. */
public final class Resample {
    private final Interpolation kernel;

    private Resample(Interpolation kernel) {
        this.kernel = kernel;
    }

    /** The part {@code area} of the reference frame as {@code frame}, placed by {@code placement}, shows it. */
    public static Frame place(Frame frame, Placement placement, Area area) {
        return place(frame, placement, area, Interpolation.LANCZOS);
    }

    /** The same with a kernel of choice. */
    public static Frame place(Frame frame, Placement placement, Area area, Interpolation kernel) {
        Resample resample = new Resample(kernel);
        return new Frame(frame.planes().stream()
                .map(p -> resample.place(p, placement, area))
                .toList());
    }

    private Plane place(Plane plane, Placement placement, Area area) {
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

    private double at(Plane plane, double x, double y) {
        double phaseX = Math.rint(x * Interpolation.PHASES) / Interpolation.PHASES;
        double phaseY = Math.rint(y * Interpolation.PHASES) / Interpolation.PHASES;
        int left = (int) Math.floor(phaseX) - kernel.lobes() + 1;
        int top = (int) Math.floor(phaseY) - kernel.lobes() + 1;
        double[] across = kernel.weights((int) ((phaseX - Math.floor(phaseX)) * Interpolation.PHASES));
        double[] down = kernel.weights((int) ((phaseY - Math.floor(phaseY)) * Interpolation.PHASES));
        double sum = 0;
        for (int j = 0; j < down.length; j++) {
            int row = clamp(top + j, plane.height()) * plane.width();
            double line = 0;
            for (int i = 0; i < across.length; i++)
                line += across[i] * plane.samples()[row + clamp(left + i, plane.width())];
            sum += down[j] * line;
        }
        return sum;
    }

    private static int clamp(int v, int extent) {
        return Math.max(0, Math.min(extent - 1, v));
    }
}
