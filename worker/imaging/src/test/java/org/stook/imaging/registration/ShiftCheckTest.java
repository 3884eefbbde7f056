package org.stook.imaging.registration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By simulation: frames that tremble by up to four pixels to each side, or wander by about two a frame. */
class ShiftCheckTest {
    private static final int TRIALS = 1000;
    private static final double UNIT = 1500;

    private final Random random = new Random(3);

    @ParameterizedTest
    @CsvSource({"9, false", "12, false", "60, false", "9, true", "12, true", "60, true"})
    void seldomTakesTremblingOrWanderingForABump(int frames, boolean wandering) {
        int alarms = 0;
        for (int t = 0; t < TRIALS; t++) {
            ShiftCheck check = new ShiftCheck(path(frames, 4, wandering), path(frames, 4, wandering));
            boolean moved = Arrays.stream(check.steps()).anyMatch(s -> s > 0);
            if (moved || Arrays.stream(check.bumps()).anyMatch(b -> b > 0)) alarms++;
        }
        assertThat(alarms).isLessThan(TRIALS / 20);
    }

    @ParameterizedTest
    @CsvSource({"9, 0.7", "12, 0.75", "60, 0.8"})
    void findsABumpOfFourTimesTheTremble(int frames, double share) {
        int found = 0;
        for (int t = 0; t < TRIALS; t++) {
            double[] x = path(frames, 2, false);
            int at = 1 + random.nextInt(frames - 2);
            x[at] += 8 / UNIT;
            ShiftCheck check = new ShiftCheck(x, path(frames, 2, false));
            boolean steady = Arrays.stream(check.steps()).allMatch(s -> s == 0);
            if (steady && check.bumps()[at] > 0) found++;
        }
        assertThat(found).isGreaterThan((int) (share * TRIALS));
    }

    @ParameterizedTest
    @CsvSource({"9", "12", "60"})
    void tellsAStepFromABump(int frames) {
        int found = 0;
        for (int t = 0; t < TRIALS; t++) {
            double[] x = path(frames, 0.5, false);
            int at = 3 + random.nextInt(frames - 6);
            for (int f = at; f < frames; f++) x[f] += 8 / UNIT;
            ShiftCheck check = new ShiftCheck(x, path(frames, 0.5, false));
            if (check.steps()[at] > 0 && Arrays.stream(check.bumps()).allMatch(b -> b == 0)) found++;
        }
        assertThat(found).isGreaterThan(9 * TRIALS / 10);
    }

    private double[] path(int frames, double pixels, boolean wandering) {
        double[] path = new double[frames];
        double drift = random.nextGaussian();
        double place = 0;
        for (int f = 0; f < frames; f++) {
            place += pixels / 2 * random.nextGaussian();
            path[f] = (drift * f + (wandering ? place : pixels * (2 * random.nextDouble() - 1))) / UNIT;
        }
        return path;
    }
}
