package org.stook.scenes.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A camera that writes a file into a folder: the file appears, grows and is complete. The caller sets the pace, call by
 * call, so that tests need no clock. For one thread.
 */
public final class CameraDrop {
    private final Path file;
    private final Supplier<byte[]> source;
    private final int steps;
    private byte @Nullable [] content;
    private int done;

    /**
     * @param file where; must not exist
     * @param source the bytes of the file, asked for once, at the first step
     * @param steps in how many pieces it grows, at least 1
     */
    public CameraDrop(Path file, Supplier<byte[]> source, int steps) {
        if (steps < 1) throw new IllegalArgumentException("a file grows in at least one step, got " + steps);
        this.file = file;
        this.source = source;
        this.steps = steps;
    }

    /** File {@code index} of a bracket as it drops into {@code folder}. */
    public static CameraDrop of(BracketWriter writer, int index, Path folder, int steps) {
        return new CameraDrop(folder.resolve(writer.fileName(index)), () -> writer.frame(index), steps);
    }

    /** Writes the next piece. @return whether the file is complete now; nothing happens once it is */
    public boolean step() throws IOException {
        if (complete()) return true;
        byte[] bytes = content == null ? source.get() : content;
        content = bytes;
        int from = position(bytes.length, done);
        int to = position(bytes.length, done + 1);
        StandardOpenOption how = done == 0 ? StandardOpenOption.CREATE_NEW : StandardOpenOption.APPEND;
        Files.write(file, Arrays.copyOfRange(bytes, from, to), how, StandardOpenOption.WRITE);
        done++;
        if (complete()) content = null;
        return complete();
    }

    private int position(int length, int step) {
        return (int) ((long) length * step / steps);
    }

    /** Whether all is written. */
    public boolean complete() {
        return done == steps;
    }

    /** The file that grows. */
    public Path file() {
        return file;
    }
}
