package org.stook.comparison.metrics;

import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** Peak signal-to-noise ratio, decibels, for a peak of 1: {@code -10 log10(mean squared error)}. Equal images give +infinity. */
public final class Psnr {
    private Psnr() {}

    public static double of(Plane image, Plane truth) {
        return decibels(squaredError(image, truth, null), image.width() * (double) image.height());
    }

    /** Over all channels together. */
    public static double of(Frame image, Frame truth) {
        return ofFrames(image, truth, null);
    }

    /**
     * Over all channels of the masked pixels.
     *
     * @param mask row-major, one entry a pixel, true where a pixel counts
     * @return NaN if the mask is empty
     */
    public static double of(Frame image, Frame truth, boolean[] mask) {
        return ofFrames(image, truth, mask);
    }

    private static double ofFrames(Frame image, Frame truth, boolean @Nullable [] mask) {
        if (image.channels() != truth.channels()) {
            throw new IllegalArgumentException(
                    "frames of %d and %d channels cannot be compared".formatted(image.channels(), truth.channels()));
        }
        double sum = 0;
        for (int c = 0; c < image.channels(); c++) {
            sum += squaredError(image.plane(c), truth.plane(c), mask);
        }
        long pixels = mask == null ? (long) image.width() * image.height() : count(mask);
        return decibels(sum, (double) pixels * image.channels());
    }

    private static double squaredError(Plane image, Plane truth, boolean @Nullable [] mask) {
        Planes.requireSameSize(image, truth);
        int pixels = image.width() * image.height();
        if (mask != null && mask.length != pixels) {
            throw new IllegalArgumentException("a mask of %d entries for %d pixels".formatted(mask.length, pixels));
        }
        double sum = 0;
        for (int i = 0; i < pixels; i++) {
            if (mask == null || mask[i]) {
                double d = image.samples()[i] - (double) truth.samples()[i];
                sum += d * d;
            }
        }
        return sum;
    }

    private static long count(boolean[] mask) {
        long n = 0;
        for (boolean counts : mask) if (counts) n++;
        return n;
    }

    private static double decibels(double sum, double count) {
        return -10 * Math.log10(sum / count);
    }
}
