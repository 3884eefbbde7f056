package org.stook.scenes.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;

/**
 * What goes wrong with files. Swapped, repeated and missing frames come from {@link BracketWriter#withOrder}, knocks
 * against the table from {@link BracketPlan#withBumps}.
 */
public final class Mishaps {
    private Mishaps() {}

    /** Cuts a file off after this share of its bytes, as when a cable is pulled. */
    public static void truncate(Path file, double share) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, (int) (bytes.length * share)));
    }

    /** Leaves a file of no bytes. */
    public static void empty(Path file) throws IOException {
        Files.write(file, new byte[0]);
    }

    /** Puts text into a file whose name says picture. */
    public static void notAnImage(Path file) throws IOException {
        Files.write(file, "Harrow Cabinet, list of loans\n".repeat(40).getBytes(StandardCharsets.US_ASCII));
    }

    /** Overwrites a tenth of a file, in its second half, with noise; header and size stay. */
    public static void scramble(Path file, long seed) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        SplittableRandom random = new SplittableRandom(seed);
        int from = bytes.length * 6 / 10;
        for (int i = from; i < from + bytes.length / 10; i++) bytes[i] = (byte) random.nextInt();
        Files.write(file, bytes);
    }

    /** Writes file {@code index} of a bracket in three quarters of its size. */
    public static void wrongSize(BracketWriter writer, int index, Path folder) throws IOException {
        Bracket bracket = writer.bracket();
        BracketPlan plan = bracket.plan();
        Bracket smaller = Bracket.of(bracket.subject(), plan.withSize(plan.width() * 3 / 4, plan.height() * 3 / 4));
        writer.of(smaller).writeFrame(index, folder);
    }
}
