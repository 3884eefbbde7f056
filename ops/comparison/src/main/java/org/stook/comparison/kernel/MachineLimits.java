package org.stook.comparison.kernel;

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
    private static final int ROUNDS = 200_000;
    private static final int TURNS = 5;

    public static MachineLimits measure(int threads) {
        float[][] from = new float[threads][LARGE];
        float[][] to = new float[threads][LARGE];
        double copying = best(threads, i -> System.arraycopy(from[i], 0, to[i], 0, LARGE));
        float[][] near = new float[threads][SMALL];
        float[][] sums = new float[threads][SMALL];
        double calculating = best(threads, i -> {
            for (int round = 0; round < ROUNDS; round++) multiplyAndAdd(near[i], sums[i]);
        });
        return new MachineLimits(8.0 * LARGE * threads / copying, 2.0 * SMALL * ROUNDS * threads / calculating);
    }

    private static void multiplyAndAdd(float[] in, float[] sum) {
        for (int x = 0; x < sum.length; x++) sum[x] += 0.5f * in[x];
    }

    /** Nanoseconds. */
    private static double best(int threads, java.util.function.IntConsumer work) {
        double best = Double.POSITIVE_INFINITY;
        for (int turn = 0; turn < TURNS; turn++) {
            long start = System.nanoTime();
            Parallel.forEach(threads, threads, work);
            best = Math.min(best, System.nanoTime() - start);
        }
        return best;
    }
}
