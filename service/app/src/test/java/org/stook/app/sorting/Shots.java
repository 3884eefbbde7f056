package org.stook.app.sorting;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.SplittableRandom;

/** Shots for tests. */
final class Shots {
    private Shots() {}

    static Shot shot(long number, LocalDateTime time, Shot.Sight sight) {
        return new Shot(
                number, number + ".jpg", time, new Shot.Setting("body 1", "600 x 400", "1/60 f/4"), sight, false);
    }

    /** Of tiles that lie at depths of 0 to 15 steps; empty if the place of focus is NaN. */
    static float[] sharpness(double focus, long grainOf) {
        SplittableRandom grain = new SplittableRandom(grainOf);
        float[] logs = new float[Double.isNaN(focus) ? 0 : 120];
        for (int i = 0; i < logs.length; i++) {
            double beside = (focus - i / 8.0) / 1.5;
            logs[i] = (float) (-1.5 * Math.log1p(beside * beside) + 0.1 * grain.nextDouble());
        }
        return logs;
    }

    /** The same picture gives thumbnails that differ by grain alone. */
    static float[] thumbnail(int picture, long grainOf, String blank) {
        float[] thumbnail = new float[48 * 32];
        SplittableRandom random = new SplittableRandom(picture);
        SplittableRandom grain = new SplittableRandom(grainOf);
        for (int i = 0; i < thumbnail.length; i++) {
            thumbnail[i] = (float) (random.nextDouble() + 0.1 * grain.nextDouble());
        }
        if (!blank.isEmpty()) Arrays.fill(thumbnail, 0);
        return thumbnail;
    }
}
