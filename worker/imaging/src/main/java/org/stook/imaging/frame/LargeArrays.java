package org.stook.imaging.frame;

import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.IntFunction;
import java.util.function.Supplier;

/**
 * Makes arrays as large as pictures while other threads decode frames.
 *
 * <p>The runtime's decoder pins its arrays nearly all the time, and the collector does not run while an array is pinned: it
 * lets an allocation wait three times for a moment without pins, and then says that memory is out, however much could be
 * collected (JDK-8192647; seen with the Serial and the Parallel collector of Java 17). So where memory gets scarce, large arrays
 * are only made while the decoders rest. They do so between two pieces of their input, many times a second.
 */
public final class LargeArrays {
    /** Smaller arrays lie among the young objects, where there is room again as soon as no array is pinned. */
    private static final int LARGE_BYTES = 1 << 20;
    /** Memory is scarce if less than this part of it is left. */
    private static final int PART = 3;

    /** Fair: a decoder that comes to rest does not overtake who waits for it. */
    private static final ReentrantReadWriteLock PINS = new ReentrantReadWriteLock(true);

    private LargeArrays() {}

    public static float[] floats(int count) {
        return make(count, Float.BYTES, float[]::new);
    }

    public static byte[] bytes(int count) {
        return make(count, Byte.BYTES, byte[]::new);
    }

    private static <T> T make(int count, int each, IntFunction<T> array) {
        long bytes = (long) count * each;
        return bytes < LARGE_BYTES || !isScarce(bytes)
                ? array.apply(count)
                : whileNothingIsPinned(() -> array.apply(count));
    }

    static <T> T whileNothingIsPinned(Supplier<T> array) {
        PINS.writeLock().lock();
        try {
            return array.get();
        } finally {
            PINS.writeLock().unlock();
        }
    }

    private static boolean isScarce(long bytes) {
        Runtime memory = Runtime.getRuntime();
        long left = memory.maxMemory() - memory.totalMemory() + memory.freeMemory();
        return left - bytes < memory.maxMemory() / PART;
    }

    /** This thread is going to pin arrays, and to make no large ones until {@link #endPinning}. */
    public static void beginPinning() {
        PINS.readLock().lock();
    }

    /** Nothing is pinned at this moment: whoever waits for that may go on first. Does nothing in threads that pin nothing. */
    public static void rest() {
        if (!PINS.hasQueuedThreads() || PINS.getReadHoldCount() == 0) return;
        PINS.readLock().unlock();
        PINS.readLock().lock();
    }

    public static void endPinning() {
        PINS.readLock().unlock();
    }
}
