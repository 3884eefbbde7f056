package org.stook.comparison.reference;

import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.global.opencv_video;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;
import org.stook.imaging.frame.Placement;

/** Registers each frame to the one before it and chains the affine maps. */
final class EccChain {
    private static final int REDUCTION = 4;
    private static final int GAUSSIAN = 5;

    private final TermCriteria criteria = new TermCriteria(TermCriteria.COUNT | TermCriteria.EPS, 50, 1e-5);
    private Mat previous = new Mat();
    private Placement placement = Placement.identity();
    /** The last step from neighbour to neighbour, at the reduced size: a good first guess for the next. */
    private Placement step = Placement.identity();

    /** Begins at the reference frame, given in 8 bits blue, green, red. */
    void start(Mat reference) {
        previous = reduced(reference);
        placement = Placement.identity();
        step = Placement.identity();
    }

    /** Where the next neighbour lies: reference pixel to pixel of that frame. */
    Placement next(Mat frame) {
        Mat current = reduced(frame);
        try (Mat warp = matrix(step);
                Mat mask = new Mat()) {
            opencv_video.findTransformECC(
                    previous, current, warp, opencv_video.MOTION_AFFINE, criteria, mask, GAUSSIAN);
            step = placement(warp);
        } catch (RuntimeException notConverged) {
            // The library throws where the correlation cannot be raised; the last step stands in.
            System.err.println("registration did not converge: " + notConverged.getMessage());
        }
        placement = placement.then(enlarged(step));
        previous.close();
        previous = current;
        return placement;
    }

    private static Mat reduced(Mat frame) {
        Mat small = new Mat();
        try (Mat grey = new Mat()) {
            opencv_imgproc.cvtColor(frame, grey, opencv_imgproc.COLOR_BGR2GRAY);
            Size size = new Size(frame.cols() / REDUCTION, frame.rows() / REDUCTION);
            opencv_imgproc.resize(grey, small, size, 0, 0, opencv_imgproc.INTER_AREA);
        }
        return small;
    }

    /** Pixel i of the reduced picture lies at {@code n i + (n - 1) / 2} of the full one. */
    private static Placement enlarged(Placement reduced) {
        double o = (REDUCTION - 1) / 2.0;
        Placement up = Placement.affine(REDUCTION, 0, o, 0, REDUCTION, o);
        return up.inverse().then(reduced).then(up);
    }

    static Mat matrix(Placement placement) {
        double[] m = placement.toArray();
        Mat mat = new Mat(2, 3, opencv_core.CV_32F);
        try (FloatIndexer index = mat.createIndexer()) {
            for (int i = 0; i < 6; i++) index.put(i / 3, i % 3, (float) m[i]);
        }
        return mat;
    }

    private static Placement placement(Mat warp) {
        try (FloatIndexer index = warp.createIndexer()) {
            return Placement.affine(
                    index.get(0, 0),
                    index.get(0, 1),
                    index.get(0, 2),
                    index.get(1, 0),
                    index.get(1, 1),
                    index.get(1, 2));
        }
    }
}
