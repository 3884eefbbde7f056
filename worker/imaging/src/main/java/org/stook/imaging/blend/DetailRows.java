package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * Detail of a frame at half size, row by row: energy of the finest Laplacian band of its luminance, smoothed by the 5 x 5
 * binomial kernel as it is halved. The band itself never exists as a whole. One thread.
 */
final class DetailRows {
    private final Frame fine;
    private final Plane coarse;
    private final HalvingRows halving;
    private final float[] luma;
    private final float[] narrow;
    private final float[] wide;
    private final float[] detail;

    /** @param coarse luminance of the frame at half size */
    DetailRows(Frame fine, Plane coarse) {
        this.fine = fine;
        this.coarse = coarse;
        this.halving = new HalvingRows(fine.width(), fine.height());
        this.luma = new float[fine.width()];
        this.narrow = new float[coarse.width()];
        this.wide = new float[fine.width() + 1];
        this.detail = new float[coarse.width()];
    }

    /** What is done with a row; the line is only lent. */
    interface Use {
        void row(int y, float[] detail);
    }

    /** Gives rows {@code from .. to - 1} of half size. */
    void each(int from, int to, Use use) {
        for (int y = halving.begin(from, to); y < halving.end(); y++) {
            square(y, halving.slot(y));
            while (halving.ready(y)) use.row(halving.take(detail, 0), detail);
        }
    }

    private void square(int y, float[] out) {
        Luma.row(fine, y, luma);
        Binomial.expandRow(coarse, y, narrow, wide);
        for (int x = 0; x < out.length; x++) {
            float d = luma[x] - wide[x];
            out[x] = d * d;
        }
    }
}
