package org.stook.imaging.frame;

import java.io.IOException;

/**
 * The luminance of the frames of a sweep, readable again and again, so that no stage has to keep them all. Luminance is
 * the encoded grey of the frame (0 to 1), before flicker is evened out.
 */
public interface LumaSource {
    /** Number of frames, in sweep order. */
    int frames();

    /** Width of a frame at full size, pixels. */
    int width();

    /** Height of a frame at full size, pixels. */
    int height();

    /**
     * Luminance of one frame, reduced.
     *
     * @param reduction 1, 2, 4 or 8: each sample is the mean of reduction x reduction pixels; a last column or row that
     *     does not fill a whole cell is left out
     */
    Plane read(int frame, int reduction) throws IOException;
}
