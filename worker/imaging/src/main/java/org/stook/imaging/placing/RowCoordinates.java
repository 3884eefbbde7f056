package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/** Where the pixels of one row of the area fall in the frame; worked out once and used for every channel. */
final class RowCoordinates {
    private final Area area;
    private final Placement placement;
    private final int[] columns;
    private final int[] rows;
    final int[] weightX;
    final int[] weightY;

    RowCoordinates(Area area, Placement placement) {
        this.area = area;
        this.placement = placement;
        columns = new int[area.width()];
        rows = new int[area.width()];
        weightX = new int[area.width()];
        weightY = new int[area.width()];
    }

    void locate(int row) {
        double y = area.y() + row;
        for (int i = 0; i < area.width(); i++) {
            double x = area.x() + i;
            double fx = placement.x(x, y);
            double fy = placement.y(x, y);
            // Inside the common area coordinates are positive, so the cast is a floor.
            columns[i] = (int) fx;
            rows[i] = (int) fy;
            weightX[i] = Kernel.offset(fx - columns[i]);
            weightY[i] = Kernel.offset(fy - rows[i]);
        }
    }

    /** Index of the top left tap of pixel i in a plane of that stride. */
    int corner(int i, int stride) {
        return (rows[i] + Kernel.FIRST) * stride + columns[i] + Kernel.FIRST;
    }
}
