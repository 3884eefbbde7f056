package org.stook.scenes.bracket;

/**
 * Where the subject lies in the sweep.
 *
 * @param near sweep position, in frames, of its nearest point
 * @param far sweep position of its farthest point
 */
public record Span(double near, double far) {
    /** Sweep position of a depth; 0 is the subject's nearest, 1 its farthest point, a backdrop lies beyond 1. */
    public double position(double depth) {
        return near + depth * (far - near);
    }
}
