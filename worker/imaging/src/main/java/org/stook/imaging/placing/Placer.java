package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;

/**
 * Draws frames into an area of the reference frame. Stateless.
 *
 * <p>Resampling runs along the frame's rows first, then down the area's columns (E. Catmull and A. R. Smith, "3-D
 * transformations of images in scanline order", SIGGRAPH 1980): twenty taps a sample instead of a hundred. Frames of one
 * stack are turned against each other by far less than the angle at which that order would cost sharpness.
 */
public final class Placer {
    /** Pixels that must exist around every point that is sampled. */
    public static final int SUPPORT = 5;

    private final Area area;

    /** Areas small enough for the processor's cache are quickest; many rows at once are cheaper than few. */
    public Placer(Area area) {
        this.area = area;
    }

    /**
     * Draws the area.
     *
     * @param source rows of the whole frame; every point of the area must map at least {@link #SUPPORT} pixels inside it
     * @param width of the frame, pixels
     * @param target one picture a channel of the source: rows of samples, at least as many and as long as the area's
     */
    public void draw(SourceRows source, int width, Placement placement, float[][][] target) {
        int depth = 0;
        for (int row = 0; row < area.height(); row++) {
            depth = Math.max(depth, last(placement, row) - first(placement, row) + 1);
        }
        Strip strip = new Strip(source, width, target.length, area, placement, depth);
        DownColumns down = new DownColumns(area, placement);
        for (int row = 0; row < area.height(); row++) {
            strip.advance(first(placement, row), last(placement, row));
            down.prepare(row);
            for (int c = 0; c < target.length; c++) down.draw(strip, c, target[c][row]);
        }
    }

    /** Draws the area into a frame of its size. */
    public void draw(SourceRows source, int width, Placement placement, Frame target) {
        float[][][] rows = new float[target.channels()][area.height()][area.width()];
        draw(source, width, placement, rows);
        Area whole = Area.whole(area.width(), area.height());
        for (int c = 0; c < rows.length; c++) target.plane(c).put(rows[c], whole);
    }

    private int first(Placement placement, int row) {
        double y = area.y() + row;
        double left = placement.y(area.x(), y);
        double right = placement.y(area.x() + area.width() - 1.0, y);
        return (int) Math.min(left, right) + Kernel.FIRST;
    }

    private int last(Placement placement, int row) {
        double y = area.y() + row;
        double left = placement.y(area.x(), y);
        double right = placement.y(area.x() + area.width() - 1.0, y);
        return (int) Math.max(left, right) + Kernel.FIRST + Kernel.TAPS - 1;
    }
}
