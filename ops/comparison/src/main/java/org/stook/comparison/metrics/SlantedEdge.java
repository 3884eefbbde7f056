package org.stook.comparison.metrics;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/**
 * Edge-based spatial frequency response by the slanted-edge method of ISO 12233: the edge is found in every line by the centroid
 * of its derivative, a straight line is fitted, all samples are projected along it into bins of a quarter pixel (fourfold
 * oversampling), the profile is differentiated, windowed (Hamming) and transformed. What the difference over two bins and the
 * mean over one bin take away is given back. The standard's steps are from memory of its 2000 and 2017 editions.
 */
public final class SlantedEdge {
    private static final int OVERSAMPLING = 4;
    private static final double STEP = 0.005;

    private SlantedEdge() {}

    /**
     * @param linear values proportional to light
     * @param region holds one straight edge, 2 to 12 degrees off the vertical or the horizontal, and flat ground on both sides
     */
    public static FrequencyResponse measure(Plane linear, Area region) {
        double[][] lines = lines(linear, region);
        double[] line = fit(lines);
        double[] spread = differentiate(profile(lines, line));
        window(spread);
        return new FrequencyResponse(STEP, transform(spread));
    }

    /** The region with the edge upright. */
    private static double[][] lines(Plane plane, Area r) {
        double across = 0;
        double down = 0;
        for (int y = r.y(); y < r.y() + r.height() - 1; y++) {
            for (int x = r.x(); x < r.x() + r.width() - 1; x++) {
                across += plane.at(x + 1, y) - plane.at(x, y);
                down += plane.at(x, y + 1) - plane.at(x, y);
            }
        }
        boolean upright = Math.abs(across) >= Math.abs(down);
        double[][] lines = new double[upright ? r.height() : r.width()][upright ? r.width() : r.height()];
        for (int i = 0; i < lines.length; i++) {
            for (int j = 0; j < lines[i].length; j++) {
                lines[i][j] = upright ? plane.at(r.x() + j, r.y() + i) : plane.at(r.x() + i, r.y() + j);
            }
        }
        return lines;
    }

    /** Place of the edge as offset and slope over the line number; the second round looks near the first fit only. */
    private static double[] fit(double[][] lines) {
        double[] line = {(lines[0].length - 1) / 2.0, 0};
        for (int round = 0; round < 3; round++) {
            double reach = round == 0 ? lines[0].length : Math.max(8, lines[0].length / 4.0);
            double n = 0;
            double si = 0;
            double sii = 0;
            double sp = 0;
            double sip = 0;
            for (int i = 0; i < lines.length; i++) {
                double place = centroid(lines[i], line[0] + line[1] * i, reach);
                n++;
                si += i;
                sii += (double) i * i;
                sp += place;
                sip += i * place;
            }
            double slope = (n * sip - si * sp) / (n * sii - si * si);
            line = new double[] {(sp - slope * si) / n, slope};
        }
        return line;
    }

    private static double centroid(double[] samples, double centre, double reach) {
        double sum = 0;
        double moment = 0;
        for (int j = 1; j < samples.length; j++) {
            double place = j - 0.5;
            if (Math.abs(place - centre) > reach) continue;
            double weight = 0.54 + 0.46 * Math.cos(Math.PI * (place - centre) / reach);
            double d = (samples[j] - samples[j - 1]) * weight;
            sum += d;
            moment += d * place;
        }
        return moment / sum;
    }

    /** Mean of the samples in each quarter-pixel bin of the distance to the edge, at right angles to it. */
    private static double[] profile(double[][] lines, double[] line) {
        double upright = 1 / Math.sqrt(1 + line[1] * line[1]);
        int half = lines[0].length * OVERSAMPLING / 2 - 3 * OVERSAMPLING;
        double lean = Math.abs(line[1]) * lines.length / 2;
        half = (int) Math.max(8 * OVERSAMPLING, half - lean * OVERSAMPLING);
        double[] sum = new double[2 * half + 1];
        double[] count = new double[2 * half + 1];
        for (int i = 0; i < lines.length; i++) {
            for (int j = 0; j < lines[i].length; j++) {
                double distance = (j - line[0] - line[1] * i) * upright;
                int bin = (int) Math.rint(distance * OVERSAMPLING) + half;
                if (bin < 0 || bin >= sum.length) continue;
                sum[bin] += lines[i][j];
                count[bin]++;
            }
        }
        for (int b = 0; b < sum.length; b++) {
            if (count[b] > 0) sum[b] /= count[b];
            else if (b > 0) sum[b] = sum[b - 1];
        }
        return sum;
    }

    private static double[] differentiate(double[] profile) {
        double[] out = new double[profile.length];
        for (int i = 1; i < out.length - 1; i++) out[i] = (profile[i + 1] - profile[i - 1]) / 2;
        return out;
    }

    private static void window(double[] spread) {
        double half = (spread.length - 1) / 2.0;
        for (int i = 0; i < spread.length; i++) {
            spread[i] *= 0.54 + 0.46 * Math.cos(Math.PI * (i - half) / half);
        }
    }

    private static double[] transform(double[] spread) {
        double[] out = new double[(int) Math.round(1 / STEP) + 1];
        for (int k = 0; k < out.length; k++) {
            double f = k * STEP;
            double real = 0;
            double imaginary = 0;
            for (int i = 0; i < spread.length; i++) {
                double phase = 2 * Math.PI * f * i / OVERSAMPLING;
                real += spread[i] * Math.cos(phase);
                imaginary -= spread[i] * Math.sin(phase);
            }
            out[k] = Math.hypot(real, imaginary) / (sinc(2 * f / OVERSAMPLING) * sinc(f / OVERSAMPLING));
        }
        double zero = out[0];
        for (int k = 0; k < out.length; k++) out[k] /= zero;
        return out;
    }

    private static double sinc(double x) {
        return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    }
}
