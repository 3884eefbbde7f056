package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;

/**
 * Draws frames into an area of the reference frame. Stateless; rows may be drawn by several threads at once, and what a
 * row becomes does not depend on how the rows were shared out.
 *
 * <p>Resampling runs along the frame's rows first, then down the area's columns (E. Catmull and A. R. Smith, "3-D
 * transformations of images in scanline order", SIGGRAPH 1980): twenty taps a sample instead of a hundred. Frames of one
 * stack are turned against each other by far less than the angle at which that order would cost sharpness.
 */
public final class Placer {
    /** Pixels that must exist around every point that is sampled. */
    public static final int SUPPORT = 5;

    private final Area area;

    public Placer(Area area) {
        this.area = area;
    }

    /**
     * Draws rows {@code from .. to - 1} of the area. Many rows at once are cheaper than few.
     *
     * @param source rows of the whole frame; every point of the area must map at least {@link #SUPPORT} pixels inside it
     * @param width of the frame, pixels
     * @param target a frame of the area's size, channels as the source
     */
    public void draw(SourceRows source, int width, Placement placement, int from, int to, Frame target) {
        int depth = 0;
        for (int row = from; row < to; row++) depth = Math.max(depth, last(placement, row) - first(placement, row) + 1);
        Strip strip = new Strip(source, width, target.channels(), area, placement, depth);
        DownColumns down = new DownColumns(area, placement);
        for (int row = from; row < to; row++) {
            strip.advance(first(placement, row), last(placement, row));
            down.prepare(row);
            for (int c = 0; c < target.channels(); c++) {
                down.draw(strip, c, target.plane(c).samples(), row * area.width());
            }
        }
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
