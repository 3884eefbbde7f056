package org.stook.imaging.blend;

/** Luminance of a frame, encoded 0 to 1, row by row, as often as asked. */
public interface LumaRows {
    /** Fills {@code out} with row {@code y}. */
    void read(int y, float[] out);
}
