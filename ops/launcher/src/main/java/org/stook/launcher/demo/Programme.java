package org.stook.launcher.demo;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.stook.launcher.demo.Shoot.Stray;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.subject.Subjects;

/**
 * What is shot: a mineral, a shell and a watch movement of the Harrow Cabinet. A home that has been used for a demo before
 * gets other pieces of the same kinds, under other numbers.
 *
 * @param width of the frames, pixels
 * @param height of the frames, pixels
 * @param frames in each sweep
 */
record Programme(int width, int height, int frames) {

    /** The shoots of the first round that has left nothing in this folder yet. */
    List<Shoot> shoots(Path intake) {
        int round = 1;
        while (Files.exists(intake.resolve(name(round, 17, "mineral")))) round++;
        long seed = round;
        return List.of(
                new Shoot(
                        intake.resolve(name(round, 17, "mineral")),
                        Subjects.mineral(seed),
                        plan(3 * seed),
                        List.of(Stray.BLACK, Stray.TEST_SHOT)),
                new Shoot(
                        intake.resolve(name(round, 42, "shell")),
                        Subjects.shell(seed),
                        plan(3 * seed + 1),
                        List.of(Stray.TRUNCATED, Stray.EMPTY)),
                new Shoot(
                        intake.resolve(name(round, 68, "watch")),
                        Subjects.watch(seed),
                        plan(3 * seed + 2),
                        List.of(Stray.TEXT, Stray.WRONG_SIZE)));
    }

    private BracketPlan plan(long seed) {
        return BracketPlan.of(width, height, frames, seed);
    }

    private static String name(int round, int number, String kind) {
        return String.format(Locale.ROOT, "HC-%02d%02d-%s", round, number, kind);
    }
}
