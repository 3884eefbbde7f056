package org.stook.imaging.placing;

import org.stook.imaging.frame.Frame;

/**
 * The rows of a frame, made when asked for: so no whole frame need be kept in floating point. One thread; each thread
 * has a source of its own.
 */
public interface SourceRows {
    /**
     * Fills the beginning of one line a channel.
     *
     * @param y row of the frame
     * @param from first column that is read
     * @param count columns
     */
    void read(int y, int from, int count, float[][] lines);

    /** The rows of a frame that is there as a whole. */
    static SourceRows of(Frame frame) {
        return (y, from, count, lines) -> {
            for (int c = 0; c < lines.length; c++) {
                System.arraycopy(frame.plane(c).samples(), y * frame.width() + from, lines[c], 0, count);
            }
        };
    }
}
