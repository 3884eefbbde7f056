package org.stook.scenes.subject;

/** One height field of a subject: depth, cover and colour at every point. Must be safe for use by several threads. */
public interface Sheet {
    /** Fills {@code hit} for the point (x, y) in picture heights; the depth is to stay within the extent's. */
    void sample(double x, double y, Hit hit);

    /** Bounds outside which the cover is 0. */
    Extent extent();
}
