package org.stook.imaging.crop;

import org.stook.imaging.frame.Area;

/**
 * What the crop takes away from the reference frame.
 *
 * @param left columns lost, pixels; likewise the other three sides
 * @param percent of the reference frame's area that is lost
 */
public record LostBorder(int left, int top, int right, int bottom, double percent) {
    public static LostBorder of(int width, int height, Area kept) {
        double share = 1 - (double) kept.pixels() / ((double) width * height);
        return new LostBorder(
                kept.x(), kept.y(), width - kept.x() - kept.width(), height - kept.y() - kept.height(), 100 * share);
    }
}
