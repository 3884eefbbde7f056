package org.stook.app.review;

import org.stook.imaging.frame.Area;

/**
 * A square around a place of a composite.
 *
 * @param x of its middle, pixels of the composite
 * @param y likewise
 * @param side pixels of the composite, 16 to 1024
 */
public record Spot(double x, double y, int side) {
    public Spot {
        side = Math.max(16, Math.min(1024, side));
    }

    /** In reference pixels, moved to lie inside the area; smaller only if the area is. */
    Area within(Area area) {
        int width = Math.min(side, area.width());
        int height = Math.min(side, area.height());
        int left = (int) Math.max(0, Math.min(area.width() - width, Math.round(x - width / 2.0)));
        int top = (int) Math.max(0, Math.min(area.height() - height, Math.round(y - height / 2.0)));
        return new Area(area.x() + left, area.y() + top, width, height);
    }
}
