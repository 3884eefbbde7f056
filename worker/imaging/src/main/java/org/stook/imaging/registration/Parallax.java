package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Placement;

/**
 * What one transform per frame leaves over. If the camera itself moves towards the subject, as on a rail, near parts grow
 * faster than far ones, and every frame leaves the same mark: at one place of the subject all neighbouring frames are off
 * the same way. Chance is not, nor is defocus, which turns about as the sweep passes the place. So residuals of neighbours
 * are averaged place by place over the sweep, and what lasts, less what chance would leave, is the parallax of one step.
 */
final class Parallax {
    private static final int ACROSS = 10;
    private static final int DOWN = 8;
    /** A place must be matched in so many pairs, and in this share of all. */
    private static final int FEWEST = 4;

    private static final double SHARE = 0.4;

    private final Coordinates coordinates;
    private final List<Placement> placements;
    private final List<List<double[]>> places = new ArrayList<>();
    private int pairs;

    /** @param placements reference to frame, normal coordinates */
    Parallax(Coordinates coordinates, List<Placement> placements) {
        this.coordinates = coordinates;
        this.placements = placements;
        for (int i = 0; i < ACROSS * DOWN; i++) places.add(new ArrayList<>());
    }

    /** The greatest lasting residual of any place over so many steps of the sweep, full-size pixels; 0 if only chance. */
    double over(int steps, List<PairAligner.PairFound> found) {
        for (PairAligner.PairFound pair : found) if (pair.second() - pair.first() == 1) add(pair);
        double[] lasting = places.stream()
                .filter(p -> p.size() >= FEWEST && p.size() >= SHARE * pairs)
                .mapToDouble(Parallax::lasting)
                .sorted()
                .toArray();
        // Of few places the greatest may be a fluke; the third greatest is not.
        return lasting.length < FEWEST ? 0 : lasting[lasting.length - 3] * steps * coordinates.unit();
    }

    private void add(PairAligner.PairFound found) {
        Pair finest = found.levels().get(found.levels().size() - 1);
        Placement here = placements.get(found.first());
        Placement map = here.inverse().then(placements.get(found.second()));
        Placement back = here.inverse();
        double[][] sums = new double[places.size()][3];
        for (Match m : finest.matches()) {
            int place = place(back.x(m.px(), m.py()), back.y(m.px(), m.py()));
            if (place < 0) continue;
            sums[place][0] += m.qx() - map.x(m.px(), m.py());
            sums[place][1] += m.qy() - map.y(m.px(), m.py());
            sums[place][2]++;
        }
        for (int i = 0; i < sums.length; i++) {
            double n = sums[i][2];
            if (n > 0) places.get(i).add(new double[] {sums[i][0] / n, sums[i][1] / n});
        }
        pairs++;
    }

    private int place(double x, double y) {
        double aspect = (double) coordinates.height() / coordinates.width();
        double right = Math.min(1, 1 / aspect);
        double bottom = Math.min(1, aspect);
        int column = (int) Math.floor((x / right + 1) / 2 * ACROSS);
        int row = (int) Math.floor((y / bottom + 1) / 2 * DOWN);
        return column < 0 || row < 0 || column >= ACROSS || row >= DOWN ? -1 : row * ACROSS + column;
    }

    /** Median of the residuals less three times its standard error (of a median of normal errors: 1.25 sigma / sqrt n). */
    private static double lasting(List<double[]> residuals) {
        double[] middle = new double[2];
        double spread = 0;
        for (int axis = 0; axis < 2; axis++) {
            int a = axis;
            double[] v = residuals.stream().mapToDouble(r -> r[a]).toArray();
            double median = ShiftCheck.median(v);
            middle[axis] = median;
            double mad = ShiftCheck.median(
                    Arrays.stream(v).map(r -> Math.abs(r - median)).toArray());
            spread = Math.hypot(spread, 1.48 * mad);
        }
        double error = 1.25 * spread / Math.sqrt(residuals.size());
        return Math.max(0, Math.hypot(middle[0], middle[1]) - 3 * error);
    }

    static int farthest(int frames, int reference) {
        return IntStream.of(reference, frames - 1 - reference).max().orElse(0);
    }
}
