package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;

/**
 * What a placer works in, kept from one area to the next: the part of the frame that is needed, row by row and then column by
 * column, and that part drawn at the area's columns, again both ways. The channels of a line stand one behind the other: loops
 * along it are long then, and loops of a hundred samples spend most of their time on getting in and out of vector code.
 */
final class Workspace {
    /** Rows read at a time, so that turning them moves short runs rather than single samples. */
    private static final int TURNED = 4;

    /** Rows of the frame. */
    float[][] rows = {};
    /** Columns of the frame. */
    float[][] columns = {};
    /** Columns of the area, still with the frame's rows. */
    float[][] narrow = {};
    /** Rows of the frame at the area's columns. */
    float[][] lines = {};
    /** A row of the area. */
    float[] line = {};

    /** Makes room. */
    void fit(int channels, Area needed, int width) {
        int high = needed.height();
        int wide = needed.width();
        boolean fits = rows.length >= high
                && rows[0].length >= channels * wide
                && columns.length >= wide
                && columns[0].length >= channels * high
                && narrow.length >= width
                && line.length >= channels * width;
        if (fits) return;
        rows = new float[high][channels * wide];
        columns = new float[wide][channels * high];
        narrow = new float[width][channels * high];
        lines = new float[high][channels * width];
        line = new float[channels * width];
    }

    /**
     * Turns a channel of lines into columns: sample {@code k} of line {@code i} goes to sample {@code i} of line {@code k}.
     *
     * @param first sample of the channel in the lines that are turned
     * @param count of lines that are turned
     * @param at first sample of the channel in the lines that are filled
     * @param length of lines that are filled
     */
    static void turn(float[][] from, int first, int count, float[][] to, int at, int length) {
        int i = 0;
        for (; i + TURNED <= count; i += TURNED) {
            float[] a = from[i];
            float[] b = from[i + 1];
            float[] c = from[i + 2];
            float[] d = from[i + 3];
            int here = at + i;
            for (int k = 0; k < length; k++) {
                float[] out = to[k];
                out[here] = a[first + k];
                out[here + 1] = b[first + k];
                out[here + 2] = c[first + k];
                out[here + 3] = d[first + k];
            }
        }
        for (; i < count; i++) for (int k = 0; k < length; k++) to[k][at + i] = from[i][first + k];
    }
}
