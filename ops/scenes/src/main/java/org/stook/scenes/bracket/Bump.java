package org.stook.scenes.bracket;

/**
 * A knock against the table: from this frame on, or for this frame only, the picture lies elsewhere.
 *
 * @param frame which frame, from 0
 * @param x shift to the right, pixels
 * @param y shift downwards, pixels
 * @param lasting whether the frames after it stay shifted
 */
public record Bump(int frame, double x, double y, boolean lasting) {
    boolean hits(int index) {
        return index == frame || (lasting && index > frame);
    }
}
