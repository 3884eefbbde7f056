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
