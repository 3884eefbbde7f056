package org.stook.imaging.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** Small stacks with known answers, and the measures the tests of this package share. All seeds are fixed. */
final class Stacks {
    static final int SCENE = 11;

    private Stacks() {}

    static Blended blend(BlendMethod method, List<Frame> frames, int threads) {
        Frame first = frames.get(0);
        Blend blend =
                method.begin(new BlendPlan(first.width(), first.height(), first.channels(), frames.size(), threads));
        for (int pass = 0; pass < blend.passes(); pass++) {
            for (int i = 0; i < frames.size(); i++) blend.add(pass, i, new WholeFrame(frames.get(i)));
        }
        return blend.finish();
    }

    /** As {@link #blend}, but every frame is handed over in the same buffers, which are spoilt afterwards. */
    static Blended blendLent(BlendMethod method, List<Frame> frames) {
        Frame first = frames.get(0);
        Frame lent = Frame.blank(first.width(), first.height(), first.channels());
        Blend blend = method.begin(new BlendPlan(first.width(), first.height(), first.channels(), frames.size(), 2));
        for (int pass = 0; pass < blend.passes(); pass++) {
            for (int i = 0; i < frames.size(); i++) {
                for (int c = 0; c < first.channels(); c++) {
                    float[] from = frames.get(i).plane(c).samples();
                    System.arraycopy(from, 0, lent.plane(c).samples(), 0, from.length);
                }
                blend.add(pass, i, new WholeFrame(lent));
                for (Plane plane : lent.planes()) Arrays.fill(plane.samples(), 9);
            }
        }
        return blend.finish();
    }

    /** Coloured texture with detail of all sizes, values about 0.2 to 0.8. */
    static Frame texture(int width, int height, int channels, int seed) {
        Random random = new Random(seed);
        List<Plane> planes = new ArrayList<>();
        Plane grey = noise(width, height, random);
        for (int c = 0; c < channels; c++) {
            Plane own = noise(width, height, random);
            Plane plane = new Plane(width, height);
            for (int i = 0; i < width * height; i++) {
                plane.samples()[i] = 0.7f * grey.samples()[i] + 0.3f * own.samples()[i];
            }
            planes.add(plane);
        }
        return new Frame(planes);
    }

    private static Plane noise(int width, int height, Random random) {
        Plane sum = new Plane(width, height);
        Arrays.fill(sum.samples(), 0.5f);
        for (double radius : new double[] {0.7, 2, 5}) {
            Plane white = new Plane(width, height);
            for (int i = 0; i < width * height; i++) white.samples()[i] = (float) random.nextGaussian();
            Plane soft = blur(white, radius);
            for (int i = 0; i < width * height; i++) sum.samples()[i] += (float) (0.2 * radius) * soft.samples()[i];
        }
        return sum;
    }

    /**
     * The texture of {@link #SCENE}: its left half is sharp in frame 1, its right half in the last frame but one, blurred
     * by a Gaussian of 1.2 px a frame elsewhere; with Gaussian noise.
     */
    static List<Frame> twoDistances(int width, int height, int frames, double noise) {
        Random random = new Random(5);
        Frame truth = texture(width, height, 3, SCENE);
        return IntStream.range(0, frames)
                .mapToObj(i -> new Frame(truth.planes().stream()
                        .map(plane -> {
                            Plane left = blur(plane, 1.2 * Math.abs(i - 1));
                            Plane right = blur(plane, 1.2 * Math.abs(i - (frames - 2)));
                            for (int k = 0; k < width * height; k++) {
                                if (k % width >= width / 2) left.samples()[k] = right.samples()[k];
                                left.samples()[k] += (float) (noise * random.nextGaussian());
                            }
                            return left;
                        })
                        .toList()))
                .toList();
    }

    static List<Frame> flat(int width, int height, int frames, double noise) {
        Random random = new Random(6);
        return IntStream.range(0, frames)
                .mapToObj(i -> {
                    Frame frame = Frame.blank(width, height, 3);
                    for (Plane plane : frame.planes()) {
                        for (int k = 0; k < width * height; k++) {
                            plane.samples()[k] = (float) (0.5 + noise * random.nextGaussian());
                        }
                    }
                    return frame;
                })
                .toList();
    }

    /** Gaussian blur by plain convolution, borders repeated. */
    static Plane blur(Plane plane, double sigma) {
        if (sigma <= 0)
            return new Plane(plane.width(), plane.height(), plane.samples().clone());
        return blurColumns(transpose(blurColumns(transpose(plane), sigma)), sigma);
    }

    private static Plane blurColumns(Plane plane, double sigma) {
        int reach = (int) Math.ceil(4 * sigma);
        double[] kernel = IntStream.rangeClosed(-reach, reach)
                .mapToDouble(k -> Math.exp(-k * k / (2 * sigma * sigma)))
                .toArray();
        double total = Arrays.stream(kernel).sum();
        Plane out = new Plane(plane.width(), plane.height());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) {
                    sum += kernel[k + reach] * plane.at(x, Math.max(0, Math.min(plane.height() - 1, y + k)));
                }
                out.set(x, y, (float) (sum / total));
            }
        }
        return out;
    }

    private static Plane transpose(Plane plane) {
        Plane out = new Plane(plane.height(), plane.width());
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) out.set(y, x, plane.at(x, y));
        }
        return out;
    }

    static void assertClose(Frame actual, Frame expected, double tolerance) {
        for (int c = 0; c < expected.channels(); c++) {
            for (int i = 0; i < expected.width() * expected.height(); i++) {
                assertThat((double) actual.plane(c).samples()[i])
                        .isCloseTo(expected.plane(c).samples()[i], within(tolerance));
            }
        }
    }

    static double mean(Plane plane) {
        double sum = 0;
        int pixels = plane.width() * plane.height();
        for (int i = 0; i < pixels; i++) sum += plane.samples()[i];
        return sum / pixels;
    }

    static double deviation(Plane plane) {
        double mean = mean(plane);
        double sum = 0;
        int pixels = plane.width() * plane.height();
        for (int i = 0; i < pixels; i++) sum += Math.pow(plane.samples()[i] - mean, 2);
        return Math.sqrt(sum / pixels);
    }

    static double[] tileDeviations(Plane plane, int side) {
        List<Double> out = new ArrayList<>();
        for (int y = 0; y + side <= plane.height(); y += side) {
            for (int x = 0; x + side <= plane.width(); x += side) {
                Plane tile = new Plane(side, side);
                for (int i = 0; i < side * side; i++) tile.samples()[i] = plane.at(x + i % side, y + i / side);
                out.add(deviation(tile));
            }
        }
        return out.stream().mapToDouble(d -> d).toArray();
    }

    /** Peak signal-to-noise ratio in dB over columns {@code from .. to - 1}, peak 1. */
    static double psnr(Frame actual, Frame truth, int from, int to) {
        double sum = 0;
        for (int c = 0; c < truth.channels(); c++) {
            for (int y = 0; y < truth.height(); y++) {
                for (int x = from; x < to; x++) {
                    double e = actual.plane(c).at(x, y) - truth.plane(c).at(x, y);
                    sum += e * e;
                }
            }
        }
        return -10 * Math.log10(sum / ((double) truth.channels() * truth.height() * (to - from)));
    }

    /** The rank that most pixels of columns {@code from .. to - 1} come from. */
    static int commonRank(short[] map, int width, int from, int to) {
        int[] counts = new int[1 << 16];
        for (int i = 0; i < map.length; i++) {
            if (i % width >= from && i % width < to) counts[map[i] & 0xffff]++;
        }
        return IntStream.range(0, counts.length)
                .reduce((a, b) -> counts[b] > counts[a] ? b : a)
                .orElseThrow();
    }

    /** Median over columns {@code from .. to - 1}, leaving out NaN. */
    static double median(Plane plane, int from, int to) {
        double[] values = IntStream.range(0, plane.width() * plane.height())
                .filter(i -> i % plane.width() >= from && i % plane.width() < to)
                .mapToDouble(i -> plane.samples()[i])
                .filter(v -> !Double.isNaN(v))
                .sorted()
                .toArray();
        return values[values.length / 2];
    }
}
