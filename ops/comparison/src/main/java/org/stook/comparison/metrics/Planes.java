package org.stook.comparison.metrics;

import java.util.Arrays;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** What several measures do to planes first. */
public final class Planes {
    private Planes() {}

    /**
     * Grey of a frame as the published evaluations of fusion take it: Rec. ITU-R BT.601 luma of the 8-bit codes (0.298936,
     * 0.587043, 0.114021), rounded to a whole code.
     *
     * @return whole codes divided by 255
     */
    public static Plane grey8(Frame frame) {
        Plane out = new Plane(frame.width(), frame.height());
        float[] to = out.samples();
        for (int i = 0; i < to.length; i++) {
            double code = frame.channels() == 1
                    ? code(frame, 0, i)
                    : luma(code(frame, 0, i), code(frame, 1, i), code(frame, 2, i));
            to[i] = (float) (Math.rint(code) / 255);
        }
        return out;
    }

    /** The plain luma of a frame, not rounded. */
    public static Plane luma(Frame frame) {
        if (frame.channels() == 1) return frame.plane(0);
        Plane out = new Plane(frame.width(), frame.height());
        float[] to = out.samples();
        for (int i = 0; i < to.length; i++) {
            to[i] = (float) luma(
                    frame.plane(0).samples()[i],
                    frame.plane(1).samples()[i],
                    frame.plane(2).samples()[i]);
        }
        return out;
    }

    private static double luma(double red, double green, double blue) {
        return 0.298936021293775 * red + 0.587043074451121 * green + 0.114020904255103 * blue;
    }

    private static double code(Frame frame, int channel, int i) {
        return Math.rint(Math.min(1, Math.max(0, frame.plane(channel).samples()[i])) * 255);
    }

    /** Samples times 255, as doubles. */
    static double[] codes(Plane plane) {
        double[] out = new double[plane.width() * plane.height()];
        Arrays.setAll(out, i -> plane.samples()[i] * 255.0);
        return out;
    }

    static void requireSameSize(Plane a, Plane b) {
        if (!a.sameSizeAs(b)) {
            throw new IllegalArgumentException("images of %d x %d and %d x %d cannot be compared"
                    .formatted(a.width(), a.height(), b.width(), b.height()));
        }
    }

    /** Correlation with a 3 x 3 kernel (row-major), zeros outside, same size. */
    static double[] correlate3(double[] in, int width, int height, double... kernel) {
        double[] out = new double[in.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double sum = 0;
                for (int dy = -1; dy <= 1; dy++) {
                    for (int dx = -1; dx <= 1; dx++) {
                        int sx = x + dx;
                        int sy = y + dy;
                        if (sx < 0 || sy < 0 || sx >= width || sy >= height) continue;
                        sum += kernel[(dy + 1) * 3 + dx + 1] * in[sy * width + sx];
                    }
                }
                out[y * width + x] = sum;
            }
        }
        return out;
    }
}
