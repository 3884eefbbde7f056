package org.stook.imaging.tone;

/**
 * Colour difference CIEDE2000 with k_L = k_C = k_H = 1, after Sharma, Wu and Dalal, "The CIEDE2000 Color-Difference
 * Formula: Implementation Notes, Supplementary Test Data, and Mathematical Observations", Color Research and
 * Application 30(1), 2005; symbols as there.
 */
public final class DeltaE {
    private static final double POW_25_7 = 6103515625.0;

    private DeltaE() {}

    /** Delta E 00 of two colours; symmetric, 0 for equal ones. */
    public static double ciede2000(Lab one, Lab two) {
        double meanChroma = (StrictMath.hypot(one.a(), one.b()) + StrictMath.hypot(two.a(), two.b())) / 2;
        double g = 0.5 * (1 - ratio7(meanChroma));
        double a1 = (1 + g) * one.a();
        double a2 = (1 + g) * two.a();
        double c1 = StrictMath.hypot(a1, one.b());
        double c2 = StrictMath.hypot(a2, two.b());
        double h1 = hue(a1, one.b());
        double h2 = hue(a2, two.b());
        boolean neutral = c1 * c2 == 0;

        double dHue = neutral ? 0 : h2 - h1;
        if (dHue > 180) dHue -= 360;
        else if (dHue < -180) dHue += 360;
        double dH = 2 * Math.sqrt(c1 * c2) * sin(dHue / 2);

        double meanL = (one.l() + two.l()) / 2;
        double meanC = (c1 + c2) / 2;
        double meanH = neutral ? h1 + h2 : meanHue(h1, h2);
        double t = 1
                - 0.17 * cos(meanH - 30)
                + 0.24 * cos(2 * meanH)
                + 0.32 * cos(3 * meanH + 6)
                - 0.20 * cos(4 * meanH - 63);
        double l50 = (meanL - 50) * (meanL - 50);
        double sl = 1 + 0.015 * l50 / Math.sqrt(20 + l50);
        double sc = 1 + 0.045 * meanC;
        double sh = 1 + 0.015 * meanC * t;
        double turn = (meanH - 275) / 25;
        double rt = -sin(60 * StrictMath.exp(-turn * turn)) * 2 * ratio7(meanC);

        double l = (two.l() - one.l()) / sl;
        double c = (c2 - c1) / sc;
        double h = dH / sh;
        return Math.sqrt(l * l + c * c + h * h + rt * c * h);
    }

    private static double ratio7(double chroma) {
        double seventh = StrictMath.pow(chroma, 7);
        return Math.sqrt(seventh / (seventh + POW_25_7));
    }

    /** Degrees, 0 to 360; 0 for a neutral colour. */
    private static double hue(double a, double b) {
        if (a == 0 && b == 0) return 0;
        double degrees = StrictMath.toDegrees(StrictMath.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double meanHue(double h1, double h2) {
        double sum = h1 + h2;
        if (Math.abs(h1 - h2) <= 180) return sum / 2;
        return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
    }

    private static double sin(double degrees) {
        return StrictMath.sin(StrictMath.toRadians(degrees));
    }

    private static double cos(double degrees) {
        return StrictMath.cos(StrictMath.toRadians(degrees));
    }
}
