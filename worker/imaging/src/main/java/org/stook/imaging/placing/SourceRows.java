package org.stook.imaging.placing;

/**
 * The rows of a frame, made when asked for: so no whole frame need be kept in floating point. One thread; each thread
 * has a source of its own.
 */
public interface SourceRows {
    /** Fills one line a channel with row {@code y}, each as long as the frame is wide. */
    void read(int y, float[][] lines);
}
