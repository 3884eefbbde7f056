package org.stook.scenes.subject;

/**
 * One even patch of the patch card; positions in picture heights about the centre, light linear.
 *
 * @param left left edge
 * @param top top edge
 * @param size length of a side
 * @param tint light in linear values
 */
public record Patch(double left, double top, double size, Tint tint) {
    /** Distance to the nearest edge, positive inside. */
    double inside(double x, double y) {
        double across = Math.min(x - left, left + size - x);
        return Math.min(across, Math.min(y - top, top + size - y));
    }
}
