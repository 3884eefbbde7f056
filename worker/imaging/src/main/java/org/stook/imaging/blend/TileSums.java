package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * What a mix has added up so far. Rows of tiles are copied out and back: loops over lines that share one index are quick,
 * loops into planes are not.
 */
record TileSums(Frame fine, Plane fineWeight, Frame coarse, Plane coarseWeight) {
    /**
     * Adds a line to a row of a plane.
     *
     * @param core the part of the plane that is meant
     * @param skip samples of the line that come before the part
     * @param scratch a line of the same length
     */
    static void add(Plane plane, Area core, int row, float[] line, int skip, float[] scratch) {
        int at = row * plane.width() + core.x();
        System.arraycopy(plane.samples(), at, scratch, skip, core.width());
        for (int x = 0; x < scratch.length; x++) scratch[x] += line[x];
        System.arraycopy(scratch, skip, plane.samples(), at, core.width());
    }
}
