package org.stook.imaging.placing;

import org.stook.imaging.frame.Frame;

/**
 * The rows of a frame, made when asked for: so no whole frame need be kept in floating point. One thread; each thread
 * has a source of its own.
 */
public interface SourceRows {
    /** Fills one line a channel with row {@code y}, from column {@code from} on. */
    void read(int y, int from, float[][] lines);

    /** The rows of a frame that is there as a whole. */
    static SourceRows of(Frame frame) {
        return (y, from, lines) -> {
            for (int c = 0; c < lines.length; c++) {
                System.arraycopy(frame.plane(c).samples(), y * frame.width() + from, lines[c], 0, lines[c].length);
            }
        };
    }
}
