package org.stook.comparison.reference;

import java.util.List;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/** The upright rectangle of the reference frame that every frame shows. */
final class CommonArea {
    private CommonArea() {}

    /** Exact for shifts and scales, a little small for turned frames. */
    static Area of(List<Placement> placements, int width, int height) {
        double left = 0;
        double top = 0;
        double right = width - 1;
        double bottom = height - 1;
        for (Placement placement : placements) {
            Placement back = placement.inverse();
            left = Math.max(left, Math.max(back.x(0, 0), back.x(0, height - 1)));
            right = Math.min(right, Math.min(back.x(width - 1, 0), back.x(width - 1, height - 1)));
            top = Math.max(top, Math.max(back.y(0, 0), back.y(width - 1, 0)));
            bottom = Math.min(bottom, Math.min(back.y(0, height - 1), back.y(width - 1, height - 1)));
        }
        int x = (int) Math.ceil(left - 1e-6);
        int y = (int) Math.ceil(top - 1e-6);
        return new Area(x, y, (int) Math.floor(right + 1e-6) - x + 1, (int) Math.floor(bottom + 1e-6) - y + 1);
    }
}
