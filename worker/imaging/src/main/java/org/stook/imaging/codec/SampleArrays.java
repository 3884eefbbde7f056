package org.stook.imaging.codec;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.LargeArrays;
import org.stook.imaging.frame.Samples;

/**
 * Arrays of decoded frames that are filled again with the next ones: those of large frames are a burden to the collector, which
 * finds unbroken room for a new one by moving whatever else there is. Only 8-bit samples are kept. Safe for several threads.
 */
public final class SampleArrays {
    /** As many as are ever filled, used and waiting at one time; more would only take up memory. */
    private static final int FREE = 3;

    private final Deque<byte[]> free = new ArrayDeque<>();

    /** An array that holds anything. */
    public byte[] take(int length) {
        byte[] known = find(length);
        return known == null ? LargeArrays.bytes(length) : known;
    }

    private synchronized byte @Nullable [] find(int length) {
        for (byte[] array : free) {
            if (array.length == length) {
                free.remove(array);
                return array;
            }
        }
        // Frames of another size come now; what is left of the old size will hardly be asked for.
        free.clear();
        return null;
    }

    /** Samples that nobody will look at any more. */
    public void giveBack(Samples samples) {
        if (samples instanceof Samples.EightLumaChroma eight) giveBack(eight.codes());
        else if (samples instanceof Samples.Eight eight) giveBack(eight.codes());
    }

    private synchronized void giveBack(byte[] array) {
        if (free.size() < FREE) free.push(array);
    }

    /** Lets go of all that is kept. */
    public synchronized void forget() {
        free.clear();
    }
}
