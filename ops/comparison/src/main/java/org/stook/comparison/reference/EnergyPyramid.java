package org.stook.comparison.reference;

import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;

/** A Laplacian pyramid that keeps, at each place and level, the coefficients of the frame with the largest local energy. */
final class EnergyPyramid implements AutoCloseable {
    private static final int SMALLEST = 32;
    private static final Size WINDOW = new Size(5, 5);

    private final Mat[] gaussian;
    private final Mat[] best;
    private final Mat[] bestEnergy;
    private final Mat up = new Mat();
    private final Mat grey = new Mat();
    private final Mat energy = new Mat();
    private final Mat mask = new Mat();
    private int frames;

    EnergyPyramid(int width, int height) {
        int levels = 1;
        while (Math.min(width, height) >> levels >= SMALLEST) levels++;
        gaussian = empty(levels);
        best = empty(levels);
        bestEnergy = empty(levels);
    }

    private static Mat[] empty(int levels) {
        Mat[] mats = new Mat[levels];
        for (int l = 0; l < levels; l++) mats[l] = new Mat();
        return mats;
    }

    /** Folds a warped frame in, three channels of 32-bit floats. It is used up. */
    void add(Mat frame) {
        int top = gaussian.length - 1;
        for (int l = 0; l < top; l++) opencv_imgproc.pyrDown(l == 0 ? frame : gaussian[l], gaussian[l + 1]);
        for (int l = 0; l < top; l++) {
            Mat band = l == 0 ? frame : gaussian[l];
            opencv_imgproc.pyrUp(gaussian[l + 1], up, band.size(), opencv_core.BORDER_DEFAULT);
            opencv_core.subtract(band, up, band);
            select(band, l);
        }
        if (frames++ == 0) gaussian[top].copyTo(best[top]);
        else opencv_core.add(best[top], gaussian[top], best[top]);
    }

    private void select(Mat band, int level) {
        opencv_imgproc.cvtColor(band, grey, opencv_imgproc.COLOR_BGR2GRAY);
        opencv_core.multiply(grey, grey, energy);
        opencv_imgproc.GaussianBlur(energy, energy, WINDOW, 0);
        if (frames == 0) {
            band.copyTo(best[level]);
            energy.copyTo(bestEnergy[level]);
            return;
        }
        opencv_core.compare(energy, bestEnergy[level], mask, opencv_core.CMP_GT);
        band.copyTo(best[level], mask);
        opencv_core.max(energy, bestEnergy[level], bestEnergy[level]);
    }

    /** The fused picture; the coarsest level is the mean of the frames. */
    Mat finish() {
        int top = best.length - 1;
        best[top].convertTo(best[top], -1, 1.0 / frames, 0);
        for (int l = top; l > 0; l--) {
            opencv_imgproc.pyrUp(best[l], up, best[l - 1].size(), opencv_core.BORDER_DEFAULT);
            opencv_core.add(best[l - 1], up, best[l - 1]);
        }
        return best[0];
    }

    @Override
    public void close() {
        for (Mat[] mats : new Mat[][] {gaussian, best, bestEnergy, {up, grey, energy, mask}}) {
            for (Mat mat : mats) mat.close();
        }
    }
}
