package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/** Frames taken twice at one focus position, and files copied. */
final class Twins {
    /** A step below this share of the usual one is no step. */
    private static final double NO_STEP = 0.25;
    /** And sharpness changes by less than this share of what it does between neighbours. */
    private static final double NO_CHANGE = 0.5;

    private Twins() {}

    static List<Stray> find(List<FrameSurvey> all, FocusAxis axis) {
        List<Stray> strays = new ArrayList<>();
        FocusDistances distances = FocusDistances.between(all, axis.frames());
        int kept = 0;
        for (int i = 1; i < axis.frames().length; i++) {
            boolean same = samePicture(all.get(axis.frames()[kept]), all.get(axis.frames()[i]));
            if (!same && !sameFocus(axis, distances, kept, i)) {
                kept = i;
                continue;
            }
            // The later capture is the one that was not needed.
            int a = axis.frames()[kept];
            int b = axis.frames()[i];
            strays.add(new Stray(
                    Math.max(a, b),
                    Stray.Reason.DUPLICATE,
                    same ? "is the same picture as" : "repeats the focus of",
                    OptionalInt.of(Math.min(a, b))));
            if (b < a) kept = i;
        }
        return strays;
    }

    private static boolean sameFocus(FocusAxis axis, FocusDistances distances, int i, int k) {
        double sigma = Math.hypot(axis.deviations()[i], axis.deviations()[k]);
        double step = axis.positions()[k] - axis.positions()[i];
        return axis.frames().length >= FocusAxis.FEWEST
                && step + sigma < NO_STEP
                && distances.at(i, k) < NO_CHANGE * distances.usualStep();
    }

    private static boolean samePicture(FrameSurvey a, FrameSurvey b) {
        for (int k = 0; k < a.octaves().size(); k++) {
            if (!Arrays.equals(a.octaves().get(k), b.octaves().get(k))) return false;
        }
        return Arrays.equals(a.thumbnail().samples(), b.thumbnail().samples());
    }
}
