package org.stook.comparison.metrics;

import org.stook.imaging.frame.Plane;

/**
 * Q^AB/F, how much of the edges of two sources a fused image keeps: C. S. Xydeas, V. Petrovic, Objective image fusion
 * performance measure, Electronics Letters 36(4) (2000) 308-309; also Proc. SPIE 4051 (2000) 89. Constants of the paper's
 * figure 1: strength 0.9994, -15, 0.5; direction 0.9879, -22, 0.8; weight = edge strength to the power 1.
 *
 * <p>Details that the paper leaves open follow the evaluation published with Y. Liu et al., Multi-focus image fusion: a survey
 * of the state of the art, Information Fusion 64 (2020) 71-91: zeros outside the image, direction by the plain arc tangent,
 * 1e-5 in the place of a zero divisor, grey codes 0 to 255 ({@link Planes#grey8}).
 */
public final class EdgePreservation {
    private static final double TINY = 1e-5;

    private EdgePreservation() {}

    /** 0 (nothing kept) to just below 1. */
    public static double of(Plane sourceA, Plane sourceB, Plane fused) {
        Planes.requireSameSize(sourceA, sourceB);
        Planes.requireSameSize(sourceA, fused);
        Edges a = Edges.of(sourceA);
        Edges b = Edges.of(sourceB);
        Edges f = Edges.of(fused);
        double kept = 0;
        double all = 0;
        for (int i = 0; i < f.strength.length; i++) {
            double weightA = nonZero(a.strength[i]);
            double weightB = nonZero(b.strength[i]);
            kept += weightA * kept(a, f, i) + weightB * kept(b, f, i);
            all += weightA + weightB;
        }
        return kept / all;
    }

    private static double kept(Edges source, Edges fused, int i) {
        double s = source.strength[i];
        double f = fused.strength[i];
        double strength = s > f ? f / s : s / nonZero(f);
        double direction = 1 - Math.abs(source.direction[i] - fused.direction[i]) * 2 / Math.PI;
        return sigmoid(strength, 0.9994, -15, 0.5) * sigmoid(direction, 0.9879, -22, 0.8);
    }

    private static double sigmoid(double x, double gamma, double kappa, double sigma) {
        return gamma / (1 + Math.exp(kappa * (x - sigma)));
    }

    private static double nonZero(double v) {
        return v == 0 ? TINY : v;
    }

    private record Edges(double[] strength, double[] direction) {
        static Edges of(Plane plane) {
            double[] codes = Planes.codes(plane);
            int w = plane.width();
            int h = plane.height();
            double[] across = Planes.correlate3(codes, w, h, -1, 0, 1, -2, 0, 2, -1, 0, 1);
            double[] down = Planes.correlate3(codes, w, h, -1, -2, -1, 0, 0, 0, 1, 2, 1);
            double[] strength = new double[codes.length];
            double[] direction = new double[codes.length];
            for (int i = 0; i < codes.length; i++) {
                strength[i] = Math.sqrt(across[i] * across[i] + down[i] * down[i]);
                direction[i] = Math.atan(down[i] / nonZero(across[i]));
            }
            return new Edges(strength, direction);
        }
    }
}
