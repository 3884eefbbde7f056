package org.stook.comparison.metrics;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.tone.DeltaE;
import org.stook.imaging.tone.Lab;

/**
 * How far two even patches of sRGB frames differ: CIEDE2000 of their mean colours (the formula is held by the 34 pairs of Sharma, Wu
 * and Dalal 2005 in the imaging core's tests). From sRGB to XYZ for D65 by IEC 61966-2-1, with the matrix to seven
 * digits as B. Lindbloom tabulates it (from memory).
 */
public final class Colours {
    private static final double[] WHITE = {0.95047, 1, 1.08883};

    private Colours() {}

    /** Delta E 2000 between the mean of one area and the mean of another. */
    public static double difference(Frame one, Area areaOne, Frame two, Area areaTwo) {
        return DeltaE.ciede2000(mean(one, areaOne), mean(two, areaTwo));
    }

    /** CIELAB of the mean linear light of an area. */
    public static Lab mean(Frame frame, Area area) {
        double[] linear = new double[3];
        for (int c = 0; c < 3; c++) {
            double sum = 0;
            for (int y = area.y(); y < area.y() + area.height(); y++) {
                for (int x = area.x(); x < area.x() + area.width(); x++)
                    sum += linear(frame.plane(c).at(x, y));
            }
            linear[c] = sum / area.pixels();
        }
        double r = linear[0];
        double g = linear[1];
        double b = linear[2];
        double[] xyz = {
            0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
            0.2126729 * r + 0.7151522 * g + 0.0721750 * b,
            0.0193339 * r + 0.1191920 * g + 0.9503041 * b
        };
        return Lab.of(xyz, WHITE);
    }

    /** Linear light of an encoded sRGB value. */
    public static double linear(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
    }
}
