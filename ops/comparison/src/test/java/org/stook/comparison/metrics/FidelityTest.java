package org.stook.comparison.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.bytedeco.javacpp.indexer.DoubleIndexer;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_quality.QualitySSIM;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** PSNR and structural similarity against OpenCV's own (quality module) and against closed forms. */
class FidelityTest {
    private static final Plane TEXTURE = random(64, 48, 1, 0.2);
    private static final Plane NOISY = plus(TEXTURE, random(64, 48, 2, 0.03));

    @Test
    void oneCodeOfDifferenceIs48Decibels() {
        Plane shifted = new Plane(64, 48);
        for (int i = 0; i < 64 * 48; i++) shifted.samples()[i] = TEXTURE.samples()[i] + 1 / 255f;

        // 20 log10 255 = 48.1308, the usual worked example.
        assertThat(Psnr.of(shifted, TEXTURE)).isCloseTo(48.1308, within(1e-3));
    }

    @Test
    void signalToNoiseAgreesWithOpenCv() {
        double theirs = opencv_core.PSNR(mat(NOISY), mat(TEXTURE), 255);

        assertThat(Psnr.of(NOISY, TEXTURE)).isCloseTo(theirs, within(1e-4));
    }

    @Test
    void aMaskLimitsTheCountToItsPixels() {
        boolean[] mask = new boolean[64 * 48];
        mask[100] = true;
        Plane spoilt = new Plane(64, 48, TEXTURE.samples().clone());
        spoilt.samples()[100] += 0.1f;
        spoilt.samples()[101] += 0.5f;

        assertThat(Psnr.of(new Frame(List.of(spoilt)), new Frame(List.of(TEXTURE)), mask))
                .isCloseTo(20, within(1e-3));
    }

    @Test
    void structuralSimilarityAgreesWithOpenCv() {
        Mat map = new Mat();
        QualitySSIM.compute(mat(NOISY), mat(TEXTURE), map);
        // OpenCV reflects at the border; only where the window fits are both defined alike.
        double theirs = 0;
        DoubleIndexer index = map.createIndexer();
        for (int y = 5; y < 48 - 5; y++) for (int x = 5; x < 64 - 5; x++) theirs += index.get(y, x);

        assertThat(StructuralSimilarity.of(NOISY, TEXTURE)).isCloseTo(theirs / (54 * 38), within(1e-4));
    }

    @Test
    void anImageIsWhollyLikeItself() {
        assertThat(StructuralSimilarity.of(TEXTURE, TEXTURE)).isCloseTo(1, within(1e-12));
    }

    @Test
    void imagesOfTwoSizesAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Psnr.of(TEXTURE, new Plane(10, 10)))
                .withMessageContaining("64 x 48")
                .withMessageContaining("10 x 10");
    }

    static Plane random(int w, int h, int seed, double sigma) {
        Random random = new Random(seed);
        Plane plane = new Plane(w, h);
        for (int i = 0; i < w * h; i++) plane.samples()[i] = (float) (0.5 + sigma * random.nextGaussian());
        return plane;
    }

    private static Plane plus(Plane a, Plane noise) {
        Plane out = new Plane(a.width(), a.height());
        for (int i = 0; i < a.samples().length; i++) out.samples()[i] = a.samples()[i] + noise.samples()[i] - 0.5f;
        return out;
    }

    private static Mat mat(Plane plane) {
        Mat mat = new Mat(plane.height(), plane.width(), opencv_core.CV_32F);
        FloatIndexer index = mat.createIndexer();
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) index.put(y, x, plane.at(x, y) * 255);
        }
        return mat;
    }
}
