package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** Frames taken twice at one focus position, and files copied. */
final class Twins {
    /** A step below this share of the usual one is no step. */
    private static final double NO_STEP = 0.3;

    private Twins() {}

    static List<Stray> find(FocusDistances d, int[] path) {
        List<Stray> strays = new ArrayList<>();
        double usual = Seriation.median(Seriation.steps(d, path));
        int kept = 0;
        for (int i = 1; i < path.length; i++) {
            double step = d.at(path[kept], path[i]);
            boolean same = step < 1e-7;
            if (!same && (path.length < 4 || step > NO_STEP * usual)) {
                kept = i;
                continue;
            }
            // The later capture is the one that was not needed.
            int later = Math.max(path[kept], path[i]);
            int earlier = Math.min(path[kept], path[i]);
            strays.add(new Stray(
                    d.frames()[later],
                    Stray.Reason.DUPLICATE,
                    same ? "is the same picture as" : "repeats the focus of",
                    OptionalInt.of(d.frames()[earlier])));
            if (path[i] == earlier) kept = i;
        }
        return strays;
    }
}
