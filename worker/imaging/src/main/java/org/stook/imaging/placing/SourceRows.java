package org.stook.imaging.placing;

import org.stook.imaging.frame.Frame;

/**
 * The rows of a frame, made when asked for: so no whole frame need be kept in floating point. One thread; each thread
 * has a source of its own.
 */
public interface SourceRows {
    /** Fills one line a channel with row {@code y}, each as long as the frame is wide. */
    void read(int y, float[][] lines);

    /** The rows of a frame that is there as a whole. */
    static SourceRows of(Frame frame) {
        return (y, lines) -> {
            for (int c = 0; c < lines.length; c++) {
                System.arraycopy(frame.plane(c).samples(), y * frame.width(), lines[c], 0, frame.width());
            }
        };
    }
}
