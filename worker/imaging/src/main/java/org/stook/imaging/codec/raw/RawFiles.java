package org.stook.imaging.codec.raw;

import com.sun.jna.Native;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import org.stook.imaging.codec.raw.RawRefusal.Cause;
import org.stook.imaging.frame.Samples;

/** Unpacks raw files, each in a process of its own that may take so much time and memory and no more. For any number of threads. */
public final class RawFiles {
    /** A frame of 60 MP takes about 3 s on a slow machine. */
    private static final Duration USUAL_LIMIT = Duration.ofSeconds(60);
    /** Addresses, not memory in use: a frame of 150 MP needs 1.6 GB, the Java runtime reserves about 1. */
    private static final String ADDRESSES_KB = String.valueOf(4L << 20);

    private static final int INPUT = 1 << 16;

    /** How much of a file is asked for. */
    enum Depth {
        /** What its head says. */
        SIZE,
        /** All of it is unpacked, to see whether it can be. */
        CHECK,
        /** The counts. */
        MOSAIC
    }

    private interface Reading<T> {
        T from(DataInputStream in) throws RawRefusal, IOException;
    }

    private final Class<?> program;
    private final Duration limit;

    public RawFiles() {
        this(Unpacker.class, USUAL_LIMIT);
    }

    RawFiles(Class<?> program, Duration limit) {
        this.program = program;
        this.limit = limit;
    }

    /** Whether the library is on this machine. */
    public boolean hasLibrary() throws IOException {
        try {
            size(Path.of("/dev/null"), false);
            return true;
        } catch (RawRefusal refusal) {
            return refusal.why() != Cause.NO_LIBRARY;
        }
    }

    /**
     * The size of its picture.
     *
     * @param thorough whether to unpack the file, so that a damaged one is refused
     */
    public RawSize size(Path file, boolean thorough) throws RawRefusal, IOException {
        return ask(file, thorough ? Depth.CHECK : Depth.SIZE, Answer::size);
    }

    /** The picture as stored, its orientation not applied: 16 bit, red green blue, sRGB (see {@link Development}). */
    public Samples.Sixteen picture(Path file) throws RawRefusal, IOException {
        return Development.of(ask(file, Depth.MOSAIC, in -> Answer.mosaic(Answer.size(in), in)));
    }

    private <T> T ask(Path file, Depth depth, Reading<T> reading) throws RawRefusal, IOException {
        try (var found =
                Files.newByteChannel(file)) { // gone, or not ours to read: said before a process is started for it
            found.size();
        }
        Process process = new ProcessBuilder(command(depth))
                .directory(new java.io.File(System.getProperty("java.io.tmpdir")))
                .redirectInput(file.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        Executor later = CompletableFuture.delayedExecutor(limit.toMillis(), TimeUnit.MILLISECONDS);
        CompletableFuture<Boolean> end =
                CompletableFuture.supplyAsync(() -> process.destroyForcibly().isAlive(), later);
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(process.getInputStream(), INPUT))) {
            return reading.from(in);
        } catch (IOException broken) { // it ended, or says what an ending runtime says

            throw stopped(process, end.isDone());
        } finally {
            end.cancel(false);
            process.destroyForcibly();
        }
    }

    private RawRefusal stopped(Process process, boolean late) throws IOException {
        try {
            String how = late
                    ? "was not done with it after " + limit.toSeconds() + " s"
                    : "crashed on it (exit code " + process.waitFor() + ")";
            return new RawRefusal(
                    Cause.DAMAGED,
                    "a raw file of which unpacking " + how,
                    "one that LibRaw can read; the others go on");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while a raw file was unpacked", e);
        }
    }

    private List<String> command(Depth depth) {
        List<String> command = new ArrayList<>();
        if (Files.isExecutable(Path.of("/bin/sh"))) {
            command.addAll(List.of("/bin/sh", "-c", "ulimit -v \"$0\"; exec \"$@\"", ADDRESSES_KB));
        }
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx48m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-XX:CompressedClassSpaceSize=32m",
                "-XX:-UsePerfData",
                "-XX:ErrorFile=/dev/null",
                "-XX:-CreateCoredumpOnCrash",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                ClassPathOf.get(program),
                program.getName(),
                depth.name(),
                String.valueOf(limit.toMillis())));
        return command;
    }

    /** Found once: in a server's jar, it means copying. */
    private static final class ClassPathOf {
        private static final ClassValue<String> KNOWN = new ClassValue<>() {
            @Override
            protected String computeValue(Class<?> program) {
                return ChildClassPath.of(program, RawFiles.class, Native.class);
            }
        };

        static String get(Class<?> program) {
            return KNOWN.get(program);
        }
    }
}
