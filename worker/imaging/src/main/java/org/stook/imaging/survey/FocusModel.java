package org.stook.imaging.survey;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Where every frame is focused and where every tile lies, on one common axis, from the sharpness of the tiles alone.
 *
 * <p>All tiles lose sharpness alike as focus moves away from them: the energy of an octave band falls as
 * {@code (1 + (distance / width)^2)^(-3/2)}, flat near focus and with the third power far off, as the squared transfer
 * function of a blur disc does on average (Hopkins 1955, The frequency response of a defocused optical system); the width
 * doubles from octave to octave. Places of frames and tiles on the axis are found in turn (unfolding: Coombs 1964, A theory
 * of data). Unlike differences of sharpness, places on the axis do not depend on how much of the subject lies at a depth.
 */
final class FocusModel {
    private static final int ROUNDS = 10;
    /** Rounds in which a tile may lie anywhere; later it only moves nearby. */
    private static final int WIDE_ROUNDS = 3;

    private static final double NEARBY = 3;
    /** How far outside the sweep a tile may lie. */
    private static final double BEYOND = 6;

    private static final double TILE_GRID = 0.25;
    private static final double FRAME_GRID = 0.05;
    private static final int FRAME_REACH = 40;
    private static final int FRAME_NEARBY = 10;
    private static final double FIRST_WIDTH = 2;
    /** By what a width may change in a round. */
    private static final double[] FACTORS = {0.7, 0.85, 1, 1.18, 1.43};

    private static final int KEPT = 2;
    /** Errors of a logarithm of sharpness beyond this count for less. */
    private static final double ROBUST = 0.3;
    /** Errors of neighbouring tiles and octaves are not independent: by so much are squared errors larger than they look. */
    private static final double REPEATS = 10;

    private static final int FINE_OCTAVES = 2;
    /** Logarithm of sharpness that a tile has lost at most where it counts as about in focus. */
    private static final double NEAR_FOCUS = -0.7;

    private static final int FEWEST_TILES = 12;

    private final double[] position;
    private final double[] deviation;
    private final double[] tile;
    private final List<SharpnessCurve> curves;
    private final double[] widths;

    /**
     * @param order start: the frames in about the right order, at least four of them
     * @param start about where they lie
     */
    FocusModel(List<FrameSurvey> all, int[] order, double[] start) {
        this.position = start.clone();
        this.deviation = new double[order.length];
        this.curves = SharpnessCurve.strongest(all, order);
        this.tile = new double[all.get(order[0]).tiles()];
        Arrays.fill(tile, Double.NaN);
        this.widths = IntStream.range(0, all.get(order[0]).octaves().size())
                .mapToDouble(k -> FIRST_WIDTH * (1 << k))
                .toArray();
    }

    /** Finds all places; afterwards positions are in usual steps and the first one is 0. */
    FocusModel fit() {
        for (int round = 0; round < ROUNDS; round++) {
            placeTiles(round < WIDE_ROUNDS);
            if (round > 0) chooseWidths();
            placeFrames(round < WIDE_ROUNDS ? FRAME_REACH : FRAME_NEARBY);
            normalise();
        }
        placeTiles(false);
        return this;
    }

    /** Robust misfit of all curves, to compare fits that began elsewhere. */
    double misfit() {
        double sum = 0;
        for (SharpnessCurve c : curves) {
            sum += c.misfit(FallTable.row(position, tile[c.tile()], widths[c.octave()]), ROBUST);
        }
        return sum;
    }

    /**
     * How much less sharp (natural logarithm of energy) frame {@code i} is than its place on the axis promises, as the median
     * over tiles that it should show about sharpest; 0 where those are few.
     */
    double lack(int i) {
        double[] lacks = curves.stream()
                .filter(c -> c.octave() < FINE_OCTAVES)
                .mapToDouble(c -> {
                    float[] fall = FallTable.row(position, tile[c.tile()], widths[c.octave()]);
                    return fall[i] < NEAR_FOCUS ? Double.NaN : c.height(fall) + fall[i] - c.log()[i];
                })
                .filter(lack -> !Double.isNaN(lack))
                .toArray();
        return lacks.length < FEWEST_TILES ? 0 : Seriation.median(lacks);
    }

    /** Place of frame {@code i} of the start order. */
    double position(int i) {
        return position[i];
    }

    /** Expected error (one sigma) of that place. */
    double deviation(int i) {
        return deviation[i];
    }

    /** Place of a tile; NaN where it shows too little texture. */
    double tile(int t) {
        return tile[t];
    }

    private void placeTiles(boolean anywhere) {
        double first = Arrays.stream(position).min().orElse(0) - BEYOND;
        double last = Arrays.stream(position).max().orElse(0) + BEYOND;
        FallTable table =
                new FallTable(position, first, TILE_GRID, (int) Math.ceil((last - first) / TILE_GRID) + 1, widths);
        double[][] costs = new double[tile.length][];
        for (SharpnessCurve c : curves) {
            double[] sum = costs[c.tile()];
            if (sum == null) costs[c.tile()] = sum = new double[table.places()];
            double known = tile[c.tile()];
            boolean all = anywhere || Double.isNaN(known);
            for (int z = 0; z < sum.length; z++) {
                boolean looked = all || Math.abs(table.place(z) - known) <= NEARBY;
                sum[z] += looked ? c.misfit(table.row(c.octave(), z), ROBUST) : Double.MAX_VALUE / 1e3;
            }
        }
        for (int t = 0; t < tile.length; t++) {
            if (costs[t] != null)
                tile[t] = first + TILE_GRID * Minimum.of(costs[t]).at();
        }
    }

    private void chooseWidths() {
        double[][] sums = new double[widths.length][FACTORS.length];
        for (SharpnessCurve c : curves) {
            for (int i = 0; i < FACTORS.length; i++) {
                double width = widths[c.octave()] * FACTORS[i];
                sums[c.octave()][i] += c.misfit(FallTable.row(position, tile[c.tile()], width), ROBUST);
            }
        }
        for (int k = 0; k < widths.length; k++) {
            int best = KEPT;
            for (int i = 0; i < FACTORS.length; i++) if (sums[k][i] < sums[k][best]) best = i;
            widths[k] *= FACTORS[best];
        }
    }

    private void placeFrames(int reach) {
        double[] heights = new double[curves.size()];
        for (int k = 0; k < heights.length; k++) {
            SharpnessCurve c = curves.get(k);
            heights[k] = c.height(FallTable.row(position, tile[c.tile()], widths[c.octave()]));
        }
        for (int i = 0; i < position.length; i++) {
            double[] places = new double[2 * reach + 1];
            for (int s = 0; s < places.length; s++) places[s] = position[i] + (s - reach) * FRAME_GRID;
            double[] costs = new double[places.length];
            double weight = 1e-9;
            for (int k = 0; k < heights.length; k++) {
                SharpnessCurve c = curves.get(k);
                float w = c.weight()[i];
                if (w < 0.05f) continue;
                weight += w;
                float[] fall = FallTable.row(places, tile[c.tile()], widths[c.octave()]);
                for (int s = 0; s < costs.length; s++) {
                    costs[s] += w * SharpnessCurve.cost(c.log()[i] - heights[k] - fall[s], ROBUST);
                }
            }
            Minimum minimum = Minimum.of(costs);
            position[i] += (minimum.at() - reach) * FRAME_GRID;
            deviation[i] = FRAME_GRID * Math.sqrt(REPEATS * minimum.value() / weight / Math.max(1e-9, minimum.bend()));
        }
    }

    private void normalise() {
        double[] sorted = position.clone();
        Arrays.sort(sorted);
        double[] steps = new double[sorted.length - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = sorted[i + 1] - sorted[i];
        double usual = Seriation.median(steps);
        if (usual <= 0) return;
        for (int i = 0; i < position.length; i++) {
            position[i] = (position[i] - sorted[0]) / usual;
            deviation[i] /= usual;
        }
        for (int t = 0; t < tile.length; t++) tile[t] = (tile[t] - sorted[0]) / usual;
        for (int k = 0; k < widths.length; k++) widths[k] /= usual;
    }

    /**
     * Lowest of equally spaced values, refined by a parabola.
     *
     * @param at index with fraction
     * @param bend second difference there
     */
    private record Minimum(double at, double value, double bend) {
        static Minimum of(double[] v) {
            int best = 0;
            for (int i = 1; i < v.length; i++) if (v[i] < v[best]) best = i;
            if (best == 0 || best == v.length - 1) return new Minimum(best, v[best], 0);
            double bend = v[best - 1] - 2 * v[best] + v[best + 1];
            double shift = bend <= 0 ? 0 : 0.5 * (v[best - 1] - v[best + 1]) / bend;
            return new Minimum(best + shift, v[best], bend);
        }
    }
}
