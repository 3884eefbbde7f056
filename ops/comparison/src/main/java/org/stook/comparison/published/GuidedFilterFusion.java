package org.stook.comparison.published;

import java.util.ArrayList;
import java.util.List;
import org.stook.comparison.metrics.Planes;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * S. Li, X. Kang, J. Hu, Image fusion with guided filtering, IEEE Transactions on Image Processing 22(7) (2013) 2864-2875, with
 * the constants of the paper: base layer = mean of 31 x 31; saliency = absolute Laplacian under an 11 x 11 Gaussian of 5 px; weights
 * of the base refined with r = 45, eps = 0.3, of the detail with r = 7, eps = 1e-6. It is fully specified and stands in the
 * published list, so that its score here against its score there calibrates the measures.
 */
public final class GuidedFilterFusion {
    private static final double[] SALIENCY = gaussian(11, 5);
    private static final double TINY = 1e-12;

    private GuidedFilterFusion() {}

    /** @return the fused frame, rounded to whole 8-bit codes as the published results are */
    public static Frame fuse(List<Frame> frames) {
        List<double[]> guides = new ArrayList<>();
        for (Frame frame : frames) guides.add(doubles(Planes.grey8(frame)));
        int w = frames.get(0).width();
        int h = frames.get(0).height();
        List<double[]> choice = choice(guides, w, h);
        List<double[]> base = new ArrayList<>();
        List<double[]> detail = new ArrayList<>();
        for (int n = 0; n < frames.size(); n++) {
            base.add(quantised(GuidedFilter.apply(guides.get(n), choice.get(n), w, h, 45, 0.3)));
            detail.add(quantised(GuidedFilter.apply(guides.get(n), choice.get(n), w, h, 7, 1e-6)));
        }
        normalise(base);
        normalise(detail);
        return join(frames, base, detail);
    }

    /** 1 where a frame is the most salient of all, else 0. */
    private static List<double[]> choice(List<double[]> guides, int w, int h) {
        List<double[]> saliency = new ArrayList<>();
        for (double[] guide : guides) saliency.add(Filters.separable(laplacian(guide, w, h), w, h, SALIENCY));
        List<double[]> choice = new ArrayList<>();
        for (int n = 0; n < guides.size(); n++) choice.add(new double[w * h]);
        for (int i = 0; i < w * h; i++) {
            int most = 0;
            for (int n = 1; n < guides.size(); n++) if (saliency.get(n)[i] > saliency.get(most)[i]) most = n;
            choice.get(most)[i] = 1;
        }
        return choice;
    }

    private static double[] laplacian(double[] in, int w, int h) {
        double[] out = new double[in.length];
        for (int y = 0; y < h; y++) {
            int up = Math.max(0, y - 1) * w;
            int down = Math.min(h - 1, y + 1) * w;
            for (int x = 0; x < w; x++) {
                double sides =
                        in[y * w + Math.max(0, x - 1)] + in[y * w + Math.min(w - 1, x + 1)] + in[up + x] + in[down + x];
                out[y * w + x] = Math.abs(sides - 4 * in[y * w + x]);
            }
        }
        return out;
    }

    private static double[] quantised(double[] weights) {
        double[] out = new double[weights.length];
        for (int i = 0; i < out.length; i++) out[i] = Math.rint(Math.min(1, Math.max(0, weights[i])) * 255) / 255;
        return out;
    }

    private static void normalise(List<double[]> weights) {
        for (int i = 0; i < weights.get(0).length; i++) {
            double sum = 0;
            for (double[] w : weights) sum += w[i] + TINY;
            for (double[] w : weights) w[i] = (w[i] + TINY) / sum;
        }
    }

    private static Frame join(List<Frame> frames, List<double[]> base, List<double[]> detail) {
        Frame out = Frame.blank(
                frames.get(0).width(), frames.get(0).height(), frames.get(0).channels());
        double[] mean31 = new double[31];
        java.util.Arrays.fill(mean31, 1 / 31.0);
        for (int c = 0; c < out.channels(); c++) {
            double[] sum = new double[out.width() * out.height()];
            for (int n = 0; n < frames.size(); n++) {
                double[] samples = doubles(frames.get(n).plane(c));
                double[] low = Filters.separable(samples, out.width(), out.height(), mean31);
                for (int i = 0; i < sum.length; i++) {
                    sum[i] += base.get(n)[i] * low[i] + detail.get(n)[i] * (samples[i] - low[i]);
                }
            }
            float[] to = out.plane(c).samples();
            for (int i = 0; i < to.length; i++)
                to[i] = (float) (Math.rint(Math.min(1, Math.max(0, sum[i])) * 255) / 255);
        }
        return out;
    }

    private static double[] doubles(Plane plane) {
        double[] out = new double[plane.width() * plane.height()];
        for (int i = 0; i < out.length; i++) out[i] = plane.samples()[i];
        return out;
    }

    private static double[] gaussian(int length, double sigma) {
        double[] taps = new double[length];
        double sum = 0;
        for (int i = 0; i < length; i++) {
            double d = i - (length - 1) / 2.0;
            taps[i] = Math.exp(-d * d / (2 * sigma * sigma));
            sum += taps[i];
        }
        for (int i = 0; i < length; i++) taps[i] /= sum;
        return taps;
    }
}
