package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;

/**
 * What a placer works in, kept from one area to the next: the part of the frame that is needed, row by row and then column by
 * column, and that part drawn at the area's columns, again both ways.
 */
final class Workspace {
    /** Rows read at a time, so that turning them moves short runs rather than single samples. */
    private static final int TURNED = 4;

    /** One a channel; rows of the frame, later rows at the area's columns. */
    float[][][] rows = {};
    /** Columns of the frame. */
    float[][][] columns = {};
    /** Columns of the area, still with the frame's rows. */
    float[][][] narrow = {};

    /** Makes room. */
    void fit(int channels, Area needed, int width) {
        boolean fits = rows.length >= channels
                && rows[0].length >= needed.height()
                && rows[0][0].length >= Math.max(needed.width(), width)
                && columns[0].length >= needed.width()
                && narrow[0].length >= width;
        if (fits) return;
        int high = needed.height();
        rows = new float[channels][high][Math.max(needed.width(), width)];
        columns = new float[channels][needed.width()][high];
        narrow = new float[channels][width][high];
    }

    /** Turns {@code count} lines into as many columns of {@code to}, whose first {@code length} lines are filled. */
    static void turn(float[][] from, int count, float[][] to, int length) {
        int i = 0;
        for (; i + TURNED <= count; i += TURNED) {
            float[] a = from[i];
            float[] b = from[i + 1];
            float[] c = from[i + 2];
            float[] d = from[i + 3];
            for (int k = 0; k < length; k++) {
                float[] out = to[k];
                out[i] = a[k];
                out[i + 1] = b[k];
                out[i + 2] = c[k];
                out[i + 3] = d[k];
            }
        }
        for (; i < count; i++) for (int k = 0; k < length; k++) to[k][i] = from[i][k];
    }
}
