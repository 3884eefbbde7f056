package org.stook.imaging.blend;

/** Luminance of a frame, encoded 0 to 1, row by row, as often as asked. */
public interface LumaRows {
    /**
     * Fills two lines with row {@code y} taken apart, from their second samples on: its even columns and its odd ones. Beyond
     * these the lines are left alone.
     */
    void read(int y, float[] even, float[] odd);
}
