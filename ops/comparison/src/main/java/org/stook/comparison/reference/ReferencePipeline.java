package org.stook.comparison.reference;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgcodecs;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/** One stack through the straightforward pipeline; each frame is read once and not kept. */
public final class ReferencePipeline {
    private static final int[] UNCOMPRESSED = {
        opencv_imgcodecs.IMWRITE_TIFF_COMPRESSION, opencv_imgcodecs.IMWRITE_TIFF_COMPRESSION_NONE
    };

    private final Settings settings;
    private final Map<String, Double> seconds = new TreeMap<>();

    public ReferencePipeline(Settings settings) {
        this.settings = settings;
    }

    /**
     * @param reference rank of the frame that the others are placed to
     * @param register false if the frames lie in one geometry already
     * @param threads of the library
     */
    public record Settings(int reference, boolean register, int threads) {}

    /**
     * What came of a stack.
     *
     * @param commonArea of the composite within the reference frame
     * @param placements one a frame, in the order given
     * @param seconds wall time by stage
     */
    public record Result(Area commonArea, List<Placement> placements, Map<String, Double> seconds) {}

    /** Blends the files, given in sweep order, into a TIFF of 16 bits. */
    public Result run(List<Path> files, Path composite) throws IOException {
        opencv_core.setNumThreads(settings.threads());
        Placement[] placements = new Placement[files.size()];
        Arrays.fill(placements, Placement.identity());
        try (Mat reference = read(files.get(settings.reference()));
                EnergyPyramid pyramid = new EnergyPyramid(reference.cols(), reference.rows())) {
            fold(reference, Placement.identity(), pyramid);
            // Outwards from the reference frame, to the far end and then to the near one: the fold does not mind the
            // order.
            for (int direction : new int[] {1, -1}) {
                EccChain chain = new EccChain();
                chain.start(reference);
                for (int i = settings.reference() + direction; i >= 0 && i < files.size(); i += direction) {
                    try (Mat frame = read(files.get(i))) {
                        long start = System.nanoTime();
                        if (settings.register()) placements[i] = chain.next(frame);
                        spent("register", start);
                        fold(frame, placements[i], pyramid);
                    }
                }
            }
            Area area = CommonArea.of(List.of(placements), reference.cols(), reference.rows());
            write(pyramid, area, composite);
            return new Result(area, new ArrayList<>(List.of(placements)), seconds);
        }
    }

    private Mat read(Path file) throws IOException {
        long start = System.nanoTime();
        Mat frame = opencv_imgcodecs.imread(
                file.toString(), opencv_imgcodecs.IMREAD_COLOR | opencv_imgcodecs.IMREAD_ANYDEPTH);
        if (frame.empty()) throw new IOException(file + ": the library cannot read this picture");
        spent("read", start);
        return frame;
    }

    private void fold(Mat frame, Placement placement, EnergyPyramid pyramid) {
        long start = System.nanoTime();
        double peak = frame.depth() == opencv_core.CV_16U ? 65535 : 255;
        try (Mat samples = new Mat();
                Mat warped = new Mat();
                Mat matrix = EccChain.matrix(placement)) {
            frame.convertTo(samples, opencv_core.CV_32F, 1 / peak, 0);
            if (settings.register()) {
                int how = opencv_imgproc.INTER_CUBIC | opencv_imgproc.WARP_INVERSE_MAP;
                opencv_imgproc.warpAffine(
                        samples, warped, matrix, frame.size(), how, opencv_core.BORDER_REFLECT_101, new Scalar());
                samples.release();
            }
            spent("warp", start);
            start = System.nanoTime();
            pyramid.add(settings.register() ? warped : samples);
            spent("fuse", start);
        }
    }

    private void write(EnergyPyramid pyramid, Area area, Path composite) throws IOException {
        long start = System.nanoTime();
        Mat fused = pyramid.finish();
        spent("fuse", start);
        start = System.nanoTime();
        try (Mat cut = new Mat(fused, new Rect(area.x(), area.y(), area.width(), area.height()));
                Mat codes = new Mat()) {
            cut.convertTo(codes, opencv_core.CV_16U, 65535, 0);
            if (!opencv_imgcodecs.imwrite(composite.toString(), codes, UNCOMPRESSED)) {
                throw new IOException(composite + ": the library cannot write there");
            }
        }
        spent("write", start);
    }

    private void spent(String stage, long start) {
        seconds.merge(stage, (System.nanoTime() - start) / 1e9, Double::sum);
    }
}
