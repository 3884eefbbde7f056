package org.stook.imaging.composite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.frame.Samples;

class DecodedFramesTest {
    private static final int WIDTH = 4400;
    private static final int HEIGHT = 3000;

    private final DecodedFrames frames = new DecodedFrames();

    @TempDir
    Path folder;

    @AfterEach
    void close() {
        frames.close();
    }

    @Test
    void lendsAFrameAgainThatWasLookedAtLately() throws Exception {
        Path file = jpeg("a.jpg", 1, 40, 30);
        Samples first = frames.read(file);
        frames.done(file, first);
        assertThat(frames.read(file)).isSameAs(first);
    }

    @Test
    void keepsAllOfASmallStack() throws Exception {
        List<Path> files = List.of(jpeg("a.jpg", 1, 40, 30), jpeg("b.jpg", 2, 40, 30), jpeg("c.jpg", 3, 40, 30));
        List<Samples> first = readAll(files);
        assertThat(readAll(files))
                .usingElementComparator((a, b) -> a == b ? 0 : 1)
                .isEqualTo(first);
    }

    /** 40 MB each: of three, two are within what is kept, and the third is decoded into the array of the oldest. */
    @Test
    void usesTheArraysOfLargeFramesAgain() throws Exception {
        List<Path> files = List.of(
                jpeg("a.jpg", 1, WIDTH, HEIGHT), jpeg("b.jpg", 2, WIDTH, HEIGHT), jpeg("c.jpg", 3, WIDTH, HEIGHT));
        List<Samples> read = readAll(files);
        assertThat(codes(read.get(2))).isSameAs(codes(read.get(0)));
        assertThat(frames.read(files.get(1))).isSameAs(read.get(1));
        Samples again = frames.read(files.get(0));
        assertThat(again.code(5, 7, 0))
                .isEqualTo(FrameReaders.read(files.get(0)).code(5, 7, 0));
    }

    /** The file is gone: what comes back was not decoded again. */
    @Test
    void readsBackAFrameThatMemoryHadNoRoomFor() throws Exception {
        List<Path> files = List.of(
                jpeg("a.jpg", 1, WIDTH, HEIGHT), jpeg("b.jpg", 2, WIDTH, HEIGHT), jpeg("c.jpg", 3, WIDTH, HEIGHT));
        byte[] first = {};
        for (Path file : files) {
            Samples samples = frames.readOrRefuse(file);
            if (first.length == 0) first = codes(samples).clone();
            frames.done(file, samples);
        }
        Files.delete(files.get(0));
        assertThat(codes(frames.read(files.get(0)))).isEqualTo(first);
    }

    @Test
    void aFileThatCannotBeDecodedTakesNoRoom() throws Exception {
        Path broken = Files.writeString(folder.resolve("broken.jpg"), "nothing");
        for (int i = 0; i < 5; i++) {
            assertThatThrownBy(() -> frames.read(broken))
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("broken.jpg");
        }
        lendsAFrameAgainThatWasLookedAtLately();
    }

    private List<Samples> readAll(List<Path> files) throws IOException {
        List<Samples> read = new ArrayList<>();
        for (Path file : files) {
            Samples samples = frames.read(file);
            frames.done(file, samples);
            read.add(samples);
        }
        return read;
    }

    private static byte[] codes(Samples samples) {
        return ((Samples.EightLumaChroma) samples).codes();
    }

    private Path jpeg(String name, long seed, int width, int height) throws IOException {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(seed);
        for (int i = 0; i < 50; i++) picture.setRGB(random.nextInt(40), random.nextInt(30), random.nextInt(1 << 24));
        Path file = folder.resolve(name);
        ImageIO.write(picture, "jpg", file.toFile());
        return file;
    }
}
