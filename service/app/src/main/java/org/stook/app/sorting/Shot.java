package org.stook.app.sorting;

import java.time.LocalDateTime;
import java.util.Comparator;
import java.util.List;

/**
 * What sorting has to know of one accepted frame.
 *
 * @param file its row
 * @param name of the file
 * @param time by the camera's clock, or as near as is known
 * @param setting body, lens, size and exposure
 * @param sight what it shows
 * @param kept taken back by a person: no stray
 */
public record Shot(long file, String name, LocalDateTime time, Setting setting, Sight sight, boolean kept) {
    /** In order of capture. */
    public static final Comparator<Shot> BY_TIME =
            Comparator.comparing(Shot::time).thenComparing(Shot::name).thenComparing(Shot::file);

    /**
     * @param camera body, one text
     * @param size such as 6000 x 4000
     * @param exposure lens, exposure time, f-number and sensitivity, one text
     */
    public record Setting(String camera, String size, String exposure) {}

    /**
     * @param thumbnail luminance of the whole frame, small, row-major
     * @param sharpness logarithm of the sharpness of each of its tiles; empty where it is not known
     * @param codes what was read on labels
     * @param unread labels on which nothing could be read
     * @param blank what it is instead of a picture ("is black"), empty for a picture
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    public record Sight(float[] thumbnail, float[] sharpness, List<Code> codes, int unread, String blank) {
        public Sight {
            codes = List.copyOf(codes);
        }
    }

    /** A code as read. */
    public record Code(String symbology, String text) {}

    boolean isBlank() {
        return !sight.blank().isEmpty();
    }

    /** Zero-mean normalised cross-correlation of the thumbnails, -1 to 1; 1 where either is flat and nothing can be said. */
    double likeness(Shot other) {
        float[] a = sight.thumbnail();
        float[] b = other.sight.thumbnail();
        if (a.length != b.length || a.length == 0) {
            return a.length == b.length ? 1 : -1;
        }
        double meanA = mean(a);
        double meanB = mean(b);
        double aa = 0;
        double bb = 0;
        double ab = 0;
        for (int i = 0; i < a.length; i++) {
            double p = a[i] - meanA;
            double q = b[i] - meanB;
            aa += p * p;
            bb += q * q;
            ab += p * q;
        }
        double flat = 1e-5 * a.length;
        return aa < flat || bb < flat ? 1 : ab / Math.sqrt(aa * bb);
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float value : values) sum += value;
        return sum / values.length;
    }
}
