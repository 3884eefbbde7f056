package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;

/**
 * A strip of rows of one Laplacian band and of its local energy. Bands are never kept whole: a strip is computed, used
 * and overwritten, so that a frame costs little more memory than itself.
 */
final class BandStrip {
    /** Rows above and below that the energy of a row looks at. */
    private static final int HALO = 2;

    private final Frame fine;
    private final Frame coarse;
    private final int width;
    private final float[] line;
    private final float[] wide;
    private final float[] squares;
    private final float[] smooth;
    private float[][] band = {};
    private float[] energy = {};

    /** A band between a level of a Gaussian pyramid and the next coarser one. */
    BandStrip(Frame fine, Frame coarse) {
        this.fine = fine;
        this.coarse = coarse;
        this.width = fine.width();
        this.line = new float[coarse.width()];
        this.wide = new float[width + 1];
        this.squares = new float[5 * width];
        this.smooth = new float[width];
    }

    /** Computes rows {@code from .. to - 1}. */
    void compute(int from, int to) {
        reserve(to - from + 2 * HALO);
        for (int c = 0; c < fine.channels(); c++) {
            for (int y = from - HALO; y < to + HALO; y++) {
                bandRow(c, Binomial.mirror(y, fine.height()), (y - from + HALO) * width);
            }
        }
        for (int y = 0; y < to - from; y++) energyRow(y);
    }

    private void reserve(int rows) {
        if (energy.length >= rows * width) return;
        band = new float[fine.channels()][rows * width];
        energy = new float[rows * width];
    }

    private void bandRow(int channel, int y, int at) {
        Binomial.expandRow(coarse.plane(channel), y, line, wide);
        float[] in = fine.plane(channel).samples();
        float[] out = band[channel];
        for (int x = 0; x < width; x++) out[at + x] = in[y * width + x] - wide[x];
    }

    /** Mean square over the channels, smoothed with the 5 x 5 binomial kernel. */
    private void energyRow(int y) {
        for (int k = 0; k < 5; k++) {
            int at = (y + k) * width;
            float[] first = band[0];
            for (int x = 0; x < width; x++) squares[k * width + x] = first[at + x] * first[at + x];
            for (int c = 1; c < band.length; c++) {
                float[] more = band[c];
                for (int x = 0; x < width; x++) squares[k * width + x] += more[at + x] * more[at + x];
            }
        }
        Binomial.column(squares, width, 5, 2, smooth);
        float scale = 1f / band.length;
        for (int x = 0; x < width; x++) smooth[x] *= scale;
        Binomial.across(smooth, width, energy, y * width);
    }

    /** Band samples of a channel; row {@code y} of the strip starts at {@link #bandOffset}. */
    float[] band(int channel) {
        return band[channel];
    }

    int bandOffset(int row) {
        return (row + HALO) * width;
    }

    /** Local energy; row {@code y} of the strip starts at {@code y * width}. */
    float[] energy() {
        return energy;
    }
}
