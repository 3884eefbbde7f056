package org.stook.imaging.placing;

import org.stook.imaging.frame.Frame;

/**
 * The rows of a frame, made when asked for: so no whole frame need be kept in floating point. One thread; each thread
 * has a source of its own.
 */
public interface SourceRows {
    /**
     * Fills the beginning of a line, in which the channels stand one behind the other.
     *
     * @param y row of the frame
     * @param from first column that is read
     * @param count columns, and so the place in the line at which the second channel begins
     */
    void read(int y, int from, int count, int channels, float[] line);

    /** The rows of a frame that is there as a whole. */
    static SourceRows of(Frame frame) {
        return (y, from, count, channels, line) -> {
            for (int c = 0; c < channels; c++) {
                System.arraycopy(frame.plane(c).samples(), y * frame.width() + from, line, c * count, count);
            }
        };
    }
}
