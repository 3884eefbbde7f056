package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stook.imaging.frame.Samples;

/** What every frame reader promises. A new reader gives its samples and inherits the rest. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class FrameReaderContract {
    private static final int CUTS = 40;
    private static final int FLIPS = 120;

    @TempDir
    Path folder;

    /**
     * A file of the format.
     *
     * @param truth what was written
     * @param tolerance mean difference of code values that the format may cause; 0 for a lossless one
     */
    record SampleFile(String name, byte[] bytes, Samples truth, double tolerance) {
        @Override
        public String toString() {
            return name;
        }
    }

    abstract FrameReader reader();

    abstract List<SampleFile> files() throws Exception;

    /** How many damaged copies are read; fewer where each takes a process. */
    int damagedCopies() {
        return FLIPS;
    }

    @ParameterizedTest
    @MethodSource("files")
    void isKnownByItsBytesUnderAnyName(SampleFile file) throws Exception {
        Path disguised = write("notes.txt", file.bytes());
        assertThat(FrameReaders.recognise(disguised).format()).isEqualTo(reader().format());
        assertThat(FrameReaders.header(disguised).format()).isEqualTo(reader().format());
    }

    @ParameterizedTest
    @MethodSource("files")
    void readsWhatWasWritten(SampleFile file) throws Exception {
        Path path = write("frame", file.bytes());
        Samples read = reader().read(path);
        FrameHeader header = reader().header(path);
        assertThat(new int[] {read.width(), read.height(), read.channels(), read.bitsPerSample()})
                .containsExactly(header.width(), header.height(), header.channels(), header.bitsPerSample())
                .containsExactly(
                        file.truth().width(),
                        file.truth().height(),
                        file.truth().channels(),
                        file.truth().bitsPerSample());
        assertThat(TestPicture.meanDifference(read, file.truth())).isLessThanOrEqualTo(file.tolerance());
    }

    @ParameterizedTest
    @MethodSource("files")
    void readsTheSameAgain(SampleFile file) throws Exception {
        Path path = write("frame", file.bytes());
        assertThat(TestPicture.codes(reader().read(path))).isEqualTo(TestPicture.codes(reader().read(path)));
    }

    @ParameterizedTest
    @MethodSource("files")
    void reducedSamplesAreMeansOfCells(SampleFile file) throws Exception {
        Path path = write("frame", file.bytes());
        Samples full = reader().read(path);
        Samples reduced = reader().readReduced(path, 3);
        assertThat(reduced.bitsPerSample()).isEqualTo(16);
        assertThat(reduced.width()).isEqualTo(full.width() / 3);
        assertThat(reduced.height()).isEqualTo(full.height() / 3);
        int lastX = reduced.width() - 1;
        int lastY = reduced.height() - 1;
        double sum = 0;
        for (int i = 0; i < 9; i++) sum += full.code(3 * lastX + i % 3, 3 * lastY + i / 3, 0);
        double scale = 65535.0 / full.maxCode();
        assertThat((double) reduced.code(lastX, lastY, 0)).isCloseTo(scale * sum / 9, within(0.5001));
    }

    @ParameterizedTest
    @MethodSource("files")
    void refusesFileThatIsCutAnywhere(SampleFile file) throws Exception {
        int length = file.bytes().length;
        for (int i = 0; i <= CUTS; i++) {
            int cut = i == CUTS ? length - 1 : (int) ((long) length * i / CUTS);
            Path path = write("cut.frame", Arrays.copyOf(file.bytes(), cut));
            UnreadableFrame fromHeader = catchThrowableOfType(UnreadableFrame.class, () -> reader().header(path));
            UnreadableFrame fromRead = catchThrowableOfType(UnreadableFrame.class, () -> reader().read(path));
            assertThat(fromHeader).as("header of %d of %d bytes", cut, length).hasMessageContaining("cut.frame");
            assertThat(fromRead).as("read of %d of %d bytes", cut, length).hasMessageContaining("expected");
            if (cut >= 8) assertThat(fromHeader.reason()).isEqualTo(UnreadableFrame.Reason.INCOMPLETE);
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void acceptsBytesBehindThePicture(SampleFile file) throws Exception {
        byte[] longer = Arrays.copyOf(file.bytes(), file.bytes().length + 5000);
        Path path = write("frame", longer);
        assertThat(TestPicture.meanDifference(reader().read(path), file.truth()))
                .isLessThanOrEqualTo(file.tolerance());
    }

    @ParameterizedTest
    @MethodSource("files")
    void flippedBitsNeverDoMoreThanMakeItUnreadable(SampleFile file) throws Exception {
        Random random = new Random(20261125);
        for (int i = 0; i < damagedCopies(); i++) {
            byte[] damaged = file.bytes().clone();
            // Half of the flips hit the first 700 bytes, where the structure is.
            int reach = i % 2 == 0 ? Math.min(700, damaged.length) : damaged.length;
            for (int flips = 1 + i % 3; flips > 0; flips--) {
                damaged[random.nextInt(reach)] ^= (byte) (1 << random.nextInt(8));
            }
            Path path = write("flipped", damaged);
            try {
                FrameHeader header = reader().header(path);
                Samples read = reader().read(path);
                assertThat(read.width()).isEqualTo(header.width());
                assertThat(read.height()).isEqualTo(header.height());
            } catch (UnreadableFrame refused) {
                assertThat(refused).hasMessageContaining("flipped").hasMessageContaining("expected");
            }
        }
    }

    @Test
    void refusesEmptyFilesAndText() throws Exception {
        for (byte[] bytes : List.of(new byte[0], "Harrow Cabinet, drawer 4\n".getBytes(StandardCharsets.UTF_8))) {
            Path path = write("frame.jpg", bytes);
            assertThatThrownBy(() -> FrameReaders.recognise(path)).isInstanceOf(UnreadableFrame.class);
            assertThatThrownBy(() -> reader().header(path)).isInstanceOf(UnreadableFrame.class);
            assertThatThrownBy(() -> reader().read(path)).isInstanceOf(UnreadableFrame.class);
        }
    }

    @Test
    void missingFileIsNoUnreadableFrame() {
        assertThatThrownBy(() -> reader().read(folder.resolve("gone"))).isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> reader().header(folder.resolve("gone"))).isInstanceOf(NoSuchFileException.class);
    }

    Path write(String name, byte[] bytes) throws IOException {
        return Files.write(folder.resolve(name), bytes);
    }

    static org.assertj.core.data.Offset<Double> within(double tolerance) {
        return org.assertj.core.data.Offset.offset(tolerance);
    }
}
