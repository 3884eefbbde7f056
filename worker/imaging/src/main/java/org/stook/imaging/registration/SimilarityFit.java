package org.stook.imaging.registration;

import java.util.List;
import org.stook.imaging.frame.Placement;

/** The similarity that fits points best in the least-squares sense, in closed form (Horn 1987, without reflection). */
final class SimilarityFit {
    private SimilarityFit() {}

    /** First to second places of the matches, all weighing the same; the identity for fewer than two places. */
    static Placement of(List<Match> matches) {
        double px = matches.stream().mapToDouble(Match::px).average().orElse(0);
        double py = matches.stream().mapToDouble(Match::py).average().orElse(0);
        double qx = matches.stream().mapToDouble(Match::qx).average().orElse(0);
        double qy = matches.stream().mapToDouble(Match::qy).average().orElse(0);
        double along = 0;
        double across = 0;
        double spread = 0;
        for (Match m : matches) {
            double x = m.px() - px;
            double y = m.py() - py;
            along += x * (m.qx() - qx) + y * (m.qy() - qy);
            across += x * (m.qy() - qy) - y * (m.qx() - qx);
            spread += x * x + y * y;
        }
        if (spread == 0) return Placement.identity();
        double a = along / spread;
        double b = across / spread;
        return Placement.affine(a, -b, qx - a * px + b * py, b, a, qy - b * px - a * py);
    }
}
