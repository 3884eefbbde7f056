package org.stook.comparison.reference;

import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
import org.stook.imaging.frame.Frame;

/** The reference pipeline's blend alone, for frames that lie in place already. */
public final class ReferenceBlend implements AutoCloseable {
    private final int width;
    private final int height;
    private final EnergyPyramid pyramid;

    public ReferenceBlend(int width, int height) {
        this.width = width;
        this.height = height;
        pyramid = new EnergyPyramid(width, height);
    }

    /** Folds one frame of three channels in. */
    public void add(Frame frame) {
        try (Mat mat = new Mat(height, width, opencv_core.CV_32FC3);
                FloatIndexer index = mat.createIndexer()) {
            float[] row = new float[3 * width];
            for (int y = 0; y < height; y++) {
                // The library keeps blue first.
                for (int c = 0; c < 3; c++) {
                    for (int x = 0; x < width; x++)
                        row[3 * x + 2 - c] = frame.plane(c).at(x, y);
                }
                index.put(y, 0, row, 0, row.length);
            }
            pyramid.add(mat);
        }
    }

    /** The composite, clipped to 0..1. */
    public Frame finish() {
        Frame out = Frame.blank(width, height, 3);
        try (FloatIndexer index = pyramid.finish().createIndexer()) {
            float[] row = new float[3 * width];
            for (int y = 0; y < height; y++) {
                index.get(y, 0, row, 0, row.length);
                for (int c = 0; c < 3; c++) {
                    for (int x = 0; x < width; x++) {
                        out.plane(c).set(x, y, Math.min(1, Math.max(0, row[3 * x + 2 - c])));
                    }
                }
            }
        }
        return out;
    }

    @Override
    public void close() {
        pyramid.close();
    }
}
