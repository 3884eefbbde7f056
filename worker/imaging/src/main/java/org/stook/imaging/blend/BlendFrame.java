package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/** One frame in its place, as a blend sees it. Only lent. All areas are areas of the composite. */
public interface BlendFrame {
    /** Fills a plane of half the composite's size, rounded up, with the frame's {@link DetailMap}; sample i lies at pixel 2 i. */
    void detail(Plane half);

    /** Fills a plane of a quarter of the composite's size with the frame's luminance, smoothed; sample i lies at pixel 4 i. */
    void guide(Plane quarter);

    /**
     * Draws a part of the frame; from several threads at once.
     *
     * @param target one picture a channel, of encoded toned values, and one more of the luminance as decoded, which is what
     *     {@link #guide} shows: rows of samples, at least as many and as long as the area's
     */
    void draw(Area area, float[][][] target);
}
