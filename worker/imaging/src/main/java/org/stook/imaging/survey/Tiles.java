package org.stook.imaging.survey;

import org.stook.imaging.frame.Plane;

/** A grid of tiles that covers a plane of any size; the same grid serves all octaves. */
record Tiles(int across, int down) {
    float[] means(Plane plane) {
        return average(plane, false);
    }

    float[] meanSquares(Plane plane) {
        return average(plane, true);
    }

    int count() {
        return across * down;
    }

    private float[] average(Plane plane, boolean squared) {
        float[] result = new float[count()];
        for (int ty = 0; ty < down; ty++) {
            for (int tx = 0; tx < across; tx++) {
                result[ty * across + tx] = (float) average(plane, tx, ty, squared);
            }
        }
        return result;
    }

    private double average(Plane plane, int tx, int ty, boolean squared) {
        int x0 = left(plane, tx);
        int x1 = Math.max(x0 + 1, left(plane, tx + 1));
        int y0 = top(plane, ty);
        int y1 = Math.max(y0 + 1, top(plane, ty + 1));
        double sum = 0;
        for (int y = y0; y < y1; y++) {
            for (int x = x0; x < x1; x++) {
                float v = plane.at(x, y);
                sum += squared ? v * v : v;
            }
        }
        return sum / ((double) (x1 - x0) * (y1 - y0));
    }

    private int left(Plane plane, int tx) {
        return Math.min(plane.width() - (tx < across ? 1 : 0), (int) ((long) tx * plane.width() / across));
    }

    private int top(Plane plane, int ty) {
        return Math.min(plane.height() - (ty < down ? 1 : 0), (int) ((long) ty * plane.height() / down));
    }
}
