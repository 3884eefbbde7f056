package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * Detail of a frame at full size: energy of the finest Laplacian band, mean over the channels, smoothed with two 5 x 5
 * binomial kernels (a Gaussian of 1.4 pixels).
 */
final class DetailMap {
    private final Rows rows;
    private final Plane once;
    private final Plane detail;

    DetailMap(int width, int height, Rows rows) {
        this.rows = rows;
        this.once = new Plane(width, height);
        this.detail = new Plane(width, height);
    }

    /** Detail of a frame, given also at half size; the plane is reused by the next call. */
    Plane of(Frame fine, Frame coarse) {
        int width = once.width();
        rows.runWith(once.height(), () -> {
            BandStrip strip = new BandStrip(fine, coarse);
            return (from, to) -> {
                strip.compute(from, to);
                System.arraycopy(strip.energy(), 0, once.samples(), from * width, (to - from) * width);
            };
        });
        return Binomial.smooth(once, detail, rows);
    }
}
