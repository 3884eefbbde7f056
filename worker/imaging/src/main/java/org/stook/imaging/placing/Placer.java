package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;

/**
 * Draws frames into areas of the reference frame. One thread; what it works in is kept for the next area.
 *
 * <p>Resampling runs along the frame's rows first, then down the area's columns (E. Catmull and A. R. Smith, "3-D
 * transformations of images in scanline order", SIGGRAPH 1980): twenty taps a sample instead of a hundred. Frames of one
 * stack are turned against each other by far less than the angle at which that order would cost sharpness. For the first
 * pass rows and columns change places, so that in both passes whole lines are mixed.
 */
public final class Placer {
    /** Pixels that must exist around every point that is sampled. */
    public static final int SUPPORT = 5;

    /** Areas of this size stay in the processor's cache while they are drawn. */
    private static final int TILE_WIDTH = 128;

    private static final int TILE_HEIGHT = 64;

    /** Columns by which rows of the frame above and below the area's corners may need more, where frames are turned. */
    private static final int SLANT = 3;

    private final Workspace space = new Workspace();

    /** Which of the channels of a source are drawn with the sharp kernel; the others, that only guide, bilinearly. */
    public record Channels(int sharp, int all) {
        public static Channels sharp(int count) {
            return new Channels(count, count);
        }
    }

    /**
     * Draws an area small enough for the processor's cache.
     *
     * @param source rows of the whole frame; every point of the area must map at least {@link #SUPPORT} pixels inside it
     * @param width of the frame, pixels
     * @param target one picture a channel: rows of samples, at least as many and as long as the area's
     */
    public void draw(
            Area area, SourceRows source, int width, Placement placement, Channels channels, float[][][] target) {
        Area needed = needed(area, placement, width);
        space.fit(channels.all(), needed, area.width());
        read(source, needed, channels.all());
        Crossing crossing = new Crossing(placement);
        LineMix across = new LineMix(
                needed.height(),
                channels,
                (column, row) -> crossing.column(area.x() + column, needed.y() + (double) row));
        for (int x = 0; x < area.width(); x++) {
            across.prepare(x);
            across.draw(space.columns, needed.x(), space.narrow[x]);
        }
        for (int c = 0; c < channels.all(); c++) {
            Workspace.turn(
                    space.narrow, c * needed.height(), area.width(), space.lines, c * area.width(), needed.height());
        }
        LineMix down =
                new LineMix(area.width(), channels, (row, column) -> placement.y(area.x() + column, area.y() + row));
        for (int y = 0; y < area.height(); y++) {
            down.prepare(y);
            down.draw(space.lines, needed.y(), space.line);
            for (int c = 0; c < channels.all(); c++) {
                System.arraycopy(space.line, c * area.width(), target[c][y], 0, area.width());
            }
        }
    }

    private void read(SourceRows source, Area needed, int channels) {
        int wide = needed.width();
        int high = needed.height();
        for (int y = 0; y < high; y++) source.read(needed.y() + y, needed.x(), wide, channels, space.rows[y]);
        for (int c = 0; c < channels; c++) {
            Workspace.turn(space.rows, c * wide, high, space.columns, c * high, wide);
        }
    }

    /** Draws an area of any size, all channels sharply, into a frame, from its row {@code top} on. */
    public void draw(Area area, SourceRows source, int width, Placement placement, Frame target, int top) {
        float[][][] rows = new float[target.channels()][TILE_HEIGHT][TILE_WIDTH];
        for (int y = 0; y < area.height(); y += TILE_HEIGHT) {
            for (int x = 0; x < area.width(); x += TILE_WIDTH) {
                int w = Math.min(TILE_WIDTH, area.width() - x);
                int h = Math.min(TILE_HEIGHT, area.height() - y);
                Area tile = new Area(area.x() + x, area.y() + y, w, h);
                draw(tile, source, width, placement, Channels.sharp(rows.length), rows);
                for (int c = 0; c < rows.length; c++) {
                    target.plane(c).put(rows[c], new Area(x, top + y, w, h));
                }
            }
        }
    }

    private static Area needed(Area area, Placement placement, int width) {
        double left = Double.MAX_VALUE;
        double right = 0;
        double top = Double.MAX_VALUE;
        double bottom = 0;
        for (int x : new int[] {area.x(), area.x() + area.width() - 1}) {
            for (int y : new int[] {area.y(), area.y() + area.height() - 1}) {
                left = Math.min(left, placement.x(x, y));
                right = Math.max(right, placement.x(x, y));
                top = Math.min(top, placement.y(x, y));
                bottom = Math.max(bottom, placement.y(x, y));
            }
        }
        int x = Math.max(0, (int) left + Kernel.FIRST - SLANT);
        int y = (int) top + Kernel.FIRST;
        int end = Math.min(width, (int) right + Kernel.FIRST + Kernel.TAPS + SLANT);
        return new Area(x, y, end - x, (int) bottom + Kernel.FIRST + Kernel.TAPS - y);
    }
}
