package org.stook.imaging.registration;

import java.util.List;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;

/**
 * Chooses the simplest model that the matches ask for, by the Bayesian information criterion (Schwarz 1978, Estimating the
 * dimension of a model) on robust squared errors. These are less independent than they seem ({@link Settlement#OPTIMISM}):
 * the gain in fit is divided accordingly.
 */
final class ModelChoice {
    /** By how much squared errors are counted too often. */
    private static final double REPEATS = Settlement.OPTIMISM * Settlement.OPTIMISM;

    private ModelChoice() {}

    record Choice(Model model, Adjusted adjusted) {}

    /** @param threads how many may be used; the result does not depend on it */
    static Choice choose(List<Pair> pairs, List<Placement> start, boolean[] held, int threads) {
        Choice best = null;
        double bestScore = Double.POSITIVE_INFINITY;
        int moving = 0;
        for (boolean h : held) if (!h) moving++;
        int matches = pairs.stream().mapToInt(p -> p.matches().size()).sum();
        Model[] models = Model.values();
        Adjusted[] all = new Adjusted[models.length];
        Parallel.forEach(models.length, threads, i -> {
            // The richest takes the longest, so it goes first.
            int at = models.length - 1 - i;
            all[at] = new Adjustment(pairs, start, held, models[at]).solve();
        });
        Adjusted richest = all[Model.PROJECTIVE.ordinal()];
        for (Model model : models) {
            Adjusted adjusted = all[model.ordinal()];
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
