package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Placement;

/**
 * Holds the placements against what a sweep does: scale and shift change smoothly and in one direction. A frame beside
 * the path was bumped, a step in the path means that something moved, a scale against the trend stands at the wrong place.
 */
final class RampCheck {
    /** Fewer frames do not make a path. */
    private static final int FEWEST = 5;

    private final Coordinates coordinates;
    private final BitSet blank;

    /** @param blank frames in which there is nothing to match */
    RampCheck(Coordinates coordinates, BitSet blank) {
        this.coordinates = coordinates;
        this.blank = blank;
    }

    /**
     * One entry per frame, in order.
     *
     * @param cornerErrors full-size pixels, infinite for frames that could not be registered
     */
    List<Optional<Doubt>> doubts(List<Placement> placements, double[] cornerErrors) {
        List<Optional<Doubt>> doubts = new ArrayList<>();
        for (int f = 0; f < cornerErrors.length; f++) doubts.add(basic(f, cornerErrors[f]));
        int[] sure = IntStream.range(0, cornerErrors.length)
                .filter(f -> doubts.get(f).isEmpty())
                .toArray();
        if (sure.length >= FEWEST) {
            shifts(placements, sure, doubts);
            scales(placements, sure, doubts);
        }
        return doubts;
    }

    private Optional<Doubt> basic(int frame, double cornerError) {
        if (Double.isInfinite(cornerError)) {
            return doubt(
                    Doubt.Reason.NOT_REGISTERED,
                    blank.get(frame)
                            ? "could not be registered: it shows nothing but evenness or noise"
                            : "could not be registered: too little in it matches its neighbours");
        }
        if (cornerError > Math.max(1, 5e-4 * coordinates.unit())) {
            return doubt(
                    Doubt.Reason.UNSURE,
                    "is placed, but a corner may be off by %.1f px: little of it is sharp enough to match",
                    cornerError);
        }
        return Optional.empty();
    }

    private static Optional<Doubt> doubt(Doubt.Reason reason, String format, Object... values) {
        return Optional.of(new Doubt(reason, String.format(Locale.ROOT, format, values)));
    }

    private void shifts(List<Placement> placements, int[] frames, List<Optional<Doubt>> doubts) {
        double[] x = Arrays.stream(frames)
                .mapToDouble(f -> placements.get(f).x(0, 0))
                .toArray();
        double[] y = Arrays.stream(frames)
                .mapToDouble(f -> placements.get(f).y(0, 0))
                .toArray();
        ShiftCheck check = new ShiftCheck(x, y);
        double[] steps = check.steps();
        double[] bumps = check.bumps();
        for (int i = 0; i < frames.length; i++) {
            if (bumps[i] > 0) doubts.set(frames[i], bumped(bumps[i] * coordinates.unit()));
            else if (steps[i] > 0) doubts.set(frames[i], moved(steps[i] * coordinates.unit()));
        }
    }

    private static Optional<Doubt> bumped(double px) {
        return doubt(
                Doubt.Reason.BUMPED,
                "lies %.1f px beside the path of its neighbours: it was bumped; its placement allows for that",
                px);
    }

    private static Optional<Doubt> moved(double px) {
        return doubt(
                Doubt.Reason.MOVED,
                "from here on everything lies %.1f px elsewhere: stand or subject moved; the placements allow for that",
                px);
    }

    private void scales(List<Placement> placements, int[] frames, List<Optional<Doubt>> doubts) {
        double[] scale = Arrays.stream(frames)
                .mapToDouble(f -> Math.log(placements.get(f).scaleAt(0, 0)))
                .toArray();
        ScaleCheck check = new ScaleCheck(scale, coordinates.unit());
        for (int i = 0; i < frames.length; i++) {
            if (!check.breaksRamp(i)) continue;
            int after = check.belongsAfter(i);
            int places = after < i ? i - 1 - after : after - i;
            doubts.set(
                    frames[i],
                    doubt(
                            Doubt.Reason.OUT_OF_ORDER,
                            "stands at the wrong place: by its scale it belongs %d %s %s in the sweep",
                            places,
                            places == 1 ? "place" : "places",
                            after < i ? "earlier" : "later"));
        }
    }
}
