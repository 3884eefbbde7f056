package org.stook.imaging.registration;

import java.util.List;
import org.stook.imaging.frame.Placement;

/**
 * Chooses the simplest model that the matches ask for, by the Bayesian information criterion (Schwarz 1978, Estimating the
 * dimension of a model) on robust squared errors. One tile is seen in several pairs and at several sizes, so that its
 * errors are not independent: the gain in fit is divided accordingly.
 */
final class ModelChoice {
    /** About how often one piece of texture is counted: three pairs, one and a half sizes. */
    private static final double REPEATS = 5;

    private ModelChoice() {}

    record Choice(Model model, Adjusted adjusted) {}

    static Choice choose(List<Pair> pairs, List<Placement> start, boolean[] held) {
        Choice best = null;
        double bestScore = Double.POSITIVE_INFINITY;
        int moving = 0;
        for (boolean h : held) if (!h) moving++;
        int matches = pairs.stream().mapToInt(p -> p.matches().size()).sum();
        Adjusted richest = new Adjustment(pairs, start, held, Model.PROJECTIVE).solve();
        for (Model model : Model.values()) {
            Adjusted adjusted = model == Model.PROJECTIVE ? richest : new Adjustment(pairs, start, held, model).solve();
            double penalty = moving * model.parameters() * Math.log(Math.max(1, 2 * matches / REPEATS));
            double score = misfit(pairs, adjusted, richest.scale2()) / REPEATS + penalty;
            if (score < bestScore) {
                bestScore = score;
                best = new Choice(model, adjusted);
            }
        }
        if (best == null) throw new IllegalStateException("no model has a finite misfit");
        return best;
    }

    /** Minus twice the logarithm of the likelihood, Geman and McClure's form. */
    private static double misfit(List<Pair> pairs, Adjusted adjusted, double[] scale2) {
        double sum = 0;
        for (int p = 0; p < pairs.size(); p++) {
            Pair pair = pairs.get(p);
            Placement map = adjusted.placements()
                    .get(pair.first())
                    .inverse()
                    .then(adjusted.placements().get(pair.second()));
            for (Match m : pair.matches()) {
                double ratio = Adjustment.chi2(map, m) / scale2[p];
                sum += ratio / (1 + ratio / Adjustment.CUT);
            }
        }
        return sum;
    }
}
