package org.stook.comparison.run;

import java.nio.file.Path;
import java.util.List;
import org.stook.comparison.stack.FrameFiles;
import org.stook.imaging.frame.Parallel;

/** How long it takes to decode frames and no more: the floor under any pipeline. */
public final class Decoding {
    private Decoding() {}

    /**
     * Seconds to decode all frames, the best of several turns.
     *
     * @param turns the first of which finds little compiled
     */
    public static double seconds(List<Path> frames, int threads, int turns) {
        double best = Double.POSITIVE_INFINITY;
        for (int turn = 0; turn < turns; turn++) {
            long start = System.nanoTime();
            Parallel.forEach(frames.size(), threads, i -> FrameFiles.read(frames.get(i)));
            best = Math.min(best, (System.nanoTime() - start) / 1e9);
        }
        return best;
    }
}
