package org.stook.imaging.codec.raw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.sun.jna.Pointer;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of one who asks when the process that unpacks goes wrong. Needs no library. */
class RawFilesTest {
    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void write() throws IOException {
        file = Files.write(folder.resolve("a.dng"), new byte[100]);
    }

    /** A fault in native code: the machine ends the process. */
    static final class Crashing {
        public static void main(String[] args) {
            new Pointer(8).getByte(0);
        }
    }

    /** Never answers. */
    static final class Hanging {
        public static void main(String[] args) throws InterruptedException {
            Thread.sleep(60_000);
        }
    }

    /** Never comes to an end. */
    static final class Busy {
        public static void main(String[] args) {
            for (long spins = 0; spins >= 0; spins++) Thread.onSpinWait();
        }
    }

    /** Asks for more than it may have. */
    static final class Greedy {
        public static void main(String[] args) throws IOException {
            long pointer = com.sun.jna.Native.malloc(8L << 30);
            try (DataOutputStream out = new DataOutputStream(System.out)) {
                Answer.size(new RawSize(pointer == 0 ? 1 : 2, 1), out);
            }
        }
    }

    /** A machine without the library. */
    static final class Bare {
        public static void main(String[] args) throws IOException {
            try (DataOutputStream out = new DataOutputStream(System.out)) {
                Answer.refusal(Unpacker.noLibrary(), out);
            }
        }
    }

    private RawRefusal refusal(Class<?> program) {
        return catchThrowableOfType(
                RawRefusal.class, () -> new RawFiles(program, limits(Duration.ofSeconds(50))).size(file, false));
    }

    private static RawFiles.Limits limits(Duration wall) {
        return new RawFiles.Limits(1, wall, 4L << 20);
    }

    @Test
    void crashCostsTheFrameAndSaysSo() {
        RawRefusal refusal = refusal(Crashing.class);
        assertThat(refusal.why()).isEqualTo(RawRefusal.Cause.DAMAGED);
        assertThat(refusal.found()).startsWith("a raw file of which unpacking crashed on it (exit code ");
    }

    @Test
    void whatNeverEndsIsStoppedByItsProcessorTime() {
        assertThat(refusal(Busy.class).found()).contains("was not done with it after 1 s of processor time");
    }

    @Test
    void whatHangsIsNoFaultOfTheFile() {
        assertThatThrownBy(() -> new RawFiles(Hanging.class, limits(Duration.ofMillis(1))).size(file, false))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("not unpacked within");
    }

    @Test
    void memoryBeyondTheLimitIsNotGiven() throws Exception {
        assertThat(new RawFiles(Greedy.class, limits(Duration.ofSeconds(50)))
                        .size(file, false)
                        .width())
                .isEqualTo(1);
    }

    @Test
    void withoutTheLibraryItSaysWhatToInstall() {
        RawRefusal refusal = refusal(Bare.class);
        assertThat(refusal.why()).isEqualTo(RawRefusal.Cause.NO_LIBRARY);
        assertThat(refusal.expected()).contains("apt-get install libraw20").contains("a JPEG of the same name");
    }
}
