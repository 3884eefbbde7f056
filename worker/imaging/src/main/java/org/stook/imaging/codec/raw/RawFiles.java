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
    /**
     * What a process may take. Processor time, not time on the clock, decides on a file: however busy the machine is, the same file
     * comes to the same end.
     *
     * @param cpuSeconds a frame of 24 MP takes one
     * @param wall after which whoever asked need not wait longer, as when a share hangs
     * @param addressesKb addresses, not memory in use: a frame of 150 MP needs 1.6 GB, the Java runtime reserves about 1
     */
    record Limits(int cpuSeconds, Duration wall, long addressesKb) {
        static final Limits USUAL = new Limits(60, Duration.ofMinutes(10), 4L << 20);
    }

    /** How a shell reports the end of a process by SIGXCPU. */
    private static final int OUT_OF_CPU_TIME = 128 + 24;

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
    private final Limits limits;

    public RawFiles() {
        this(Unpacker.class, Limits.USUAL);
    }

    RawFiles(Class<?> program, Limits limits) {
        this.program = program;
        this.limits = limits;
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
        Executor later = CompletableFuture.delayedExecutor(limits.wall().toMillis(), TimeUnit.MILLISECONDS);
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

    /** @throws IOException if it did not come to an end of its own: that may pass */
    private RawRefusal stopped(Process process, boolean late) throws IOException {
        if (late) {
            throw new IOException("a raw file was not unpacked within " + limits.wall());
        }
        try {
            int code = process.waitFor();
            String how = code == OUT_OF_CPU_TIME
                    ? "was not done with it after " + limits.cpuSeconds() + " s of processor time"
                    : "crashed on it (exit code " + code + ")";
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
            String limit = "ulimit -v %d; ulimit -S -t %d; exec \"$0\" \"$@\""
                    .formatted(limits.addressesKb(), limits.cpuSeconds());
            command.addAll(List.of("/bin/sh", "-c", limit));
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
                "-Djna.tmpdir=" + System.getProperty("java.io.tmpdir"),
                "-cp",
                ClassPathOf.get(program),
                program.getName(),
                depth.name(),
                String.valueOf(limits.wall().toMillis())));
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
