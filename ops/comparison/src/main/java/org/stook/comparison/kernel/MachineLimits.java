package org.stook.comparison.kernel;

import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import org.stook.imaging.frame.Parallel;

/**
 * What all cores together can do at most: move bytes between memory and the processor, and calculate with what lies in the
 * nearest cache. Both measured with the plainest loops that there are.
 *
 * @param bytesPerNanosecond read and written, added up
 * @param operationsPerNanosecond multiplications and additions of single precision in vector code
 */
public record MachineLimits(double bytesPerNanosecond, double operationsPerNanosecond) {
    private static final int LARGE = 1 << 25;
    private static final int SMALL = 1 << 11;
    private static final int ROUNDS = 50_000;
    /** The first are slow, for nothing is compiled yet. */
    private static final int TURNS = 32;
    /** By so many floats arrays grow from turn to turn: where they lie within the processor's lines counts by a factor of two. */
    private static final int STEP = 4;

    public static MachineLimits measure(int threads) {
        float[][] from = new float[threads][LARGE];
        float[][] to = new float[threads][LARGE];
        double copying = best(threads, turn -> i -> System.arraycopy(from[i], 0, to[i], 0, LARGE));
        double calculating = best(threads, turn -> {
            float[][] near = new float[threads][SMALL + turn * STEP];
            float[][] sums = new float[threads][SMALL + turn / STEP * STEP];
            return i -> {
                for (int round = 0; round < ROUNDS; round++) multiplyAndAdd(near[i], sums[i]);
            };
        });
        return new MachineLimits(8.0 * LARGE * threads / copying, 2.0 * SMALL * ROUNDS * threads / calculating);
    }

    private static void multiplyAndAdd(float[] in, float[] sum) {
        for (int x = 0; x < SMALL; x++) sum[x] += 0.5f * in[x];
    }

    /** Nanoseconds. */
    private static double best(int threads, IntFunction<IntConsumer> work) {
        double best = Double.POSITIVE_INFINITY;
        for (int turn = 0; turn < TURNS; turn++) {
            IntConsumer now = work.apply(turn);
            long start = System.nanoTime();
            Parallel.forEach(threads, threads, now);
            best = Math.min(best, System.nanoTime() - start);
        }
        return best;
    }
}
